package signing

import (
	"fmt"
	"regexp"

	"tenthpoint/internal/journal"
)

// Note is a signed head as it is noted outside the book: "38:5f0c... signed 3f2a91c0 ...". It reads
// as the head as well.
type Note struct {
	Head      journal.Head
	By        ID
	Signature Signature
}

// NoteHead signs a head to be noted.
func (k Key) NoteHead(h journal.Head) (Note, error) {
	s, err := k.SignHead(h)
	return Note{Head: h, By: k.Public().ID(), Signature: s}, err
}

// String is the note in one line.
func (n Note) String() string {
	id, _ := n.By.MarshalText() // never fails
	return fmt.Sprintf("%s signed %s %s", n.Head, id, n.Signature)
}

var noteText = regexp.MustCompile(`\b([0-9]+:[0-9a-f]{64})\s+signed\s+([0-9a-f]{8})\s+([A-Za-z0-9_-]{86})`)

// FindNotes returns all signed heads in a text; a paper may have broken their lines.
func FindNotes(text string) []Note {
	var out []Note
	for _, found := range noteText.FindAllStringSubmatch(text, -1) {
		var n Note
		var err error
		if n.Head, err = journal.ParseHead(found[1]); err != nil {
			continue
		}
		if err = n.By.UnmarshalText([]byte(found[2])); err != nil {
			continue
		}
		if n.Signature, err = ParseSignature(found[3]); err == nil {
			out = append(out, n)
		}
	}
	return out
}

// VerifyNote returns why a signed head proves nothing, or nil with the computer that signed it. A
// note has no place in the journal, so it may be by a key that ended since.
func (r *Register) VerifyNote(n Note) (Computer, error) {
	c, known := r.ByID(n.By)
	switch {
	case !known:
		return c, unknownKey(n.By)
	case !c.Key.SignedHead(n.Head, n.Signature):
		return c, notItsSignature(c, n.Head.Seq)
	}
	return c, nil
}
