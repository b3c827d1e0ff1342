package law

import (
	"bufio"
	"fmt"
	"slices"
	"strings"

	"tenthpoint/internal/digest"
	"tenthpoint/internal/message"
)

// Law is the set of files in force together, which a ticket of one day is graded and recorded by.
type Law struct {
	files    []*File
	manifest string
	hash     string
}

func newLaw(files []*File) Law {
	var b strings.Builder
	for _, f := range ofTickets(files) {
		fmt.Fprintf(&b, "%s %s\n", f.Hash, f.ID)
	}
	return Law{files: files, manifest: b.String(), hash: digest.Of(b.String())}
}

// Hash is the SHA-256 of the manifest, in hex; it identifies the law.
func (l Law) Hash() string { return l.hash }

// ManifestID is the name that manifests are kept by in a book.
const ManifestID = "law"

// Manifest lists the files, a hash and an id on each line.
func (l Law) Manifest() string { return l.manifest }

// Files returns the files in force.
func (l Law) Files() []*File { return l.files }

// OfTickets are those files that the manifest lists and a ticket keeps.
func (l Law) OfTickets() []*File { return ofTickets(l.files) }

// besideTickets are the kinds that no ticket is recorded, graded or given its days by.
var besideTickets = []string{"scale-tolerances", Deadlines}

func ofTickets(files []*File) []*File {
	return slices.DeleteFunc(slices.Clone(files), func(f *File) bool { return slices.Contains(besideTickets, f.Kind) })
}

// Find is the file about something; false where there is none.
func (l Law) Find(jurisdiction, kind, subject string) (*File, bool) {
	for _, f := range l.files {
		if f.Jurisdiction == jurisdiction && f.Kind == kind && f.Subject == subject {
			return f, true
		}
	}
	return nil, false
}

// OfKind are the files of one kind, of every jurisdiction and subject.
func (l Law) OfKind(kind string) []*File {
	var out []*File
	for _, f := range l.files {
		if f.Kind == kind {
			out = append(out, f)
		}
	}
	return out
}

// Resolve rebuilds a law from its manifest. text returns the text of a file by its hash, as a book
// has kept it.
func Resolve(manifest string, text func(hash string) (string, error)) (Law, error) {
	return resolve(manifest, func(hash, id string) (*File, error) {
		kept, err := text(hash)
		if err != nil {
			return nil, err
		}
		return Open(id, []byte(kept))
	})
}

func resolve(manifest string, file func(hash, id string) (*File, error)) (Law, error) {
	var files []*File
	lines := bufio.NewScanner(strings.NewReader(manifest))
	for lines.Scan() {
		hash, id, ok := strings.Cut(lines.Text(), " ")
		if !ok {
			return Law{}, message.Storage.Errorf("%q is no line of a list of rules", lines.Text())
		}
		f, err := file(hash, id)
		if err != nil {
			return Law{}, err
		}
		if f.Hash != hash || f.ID != id {
			return Law{}, message.Storage.Errorf("the rules %s were kept under the hash %s and have %s: the text was altered", id, hash, f.Hash)
		}
		files = append(files, f)
	}
	return newLaw(files), lines.Err()
}
