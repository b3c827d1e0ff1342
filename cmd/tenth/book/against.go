package book

import (
	"io"
	"os"
	"path/filepath"

	"tenthpoint/cmd/tenth/terminal"
	"tenthpoint/internal/audit"
	"tenthpoint/internal/book"
	"tenthpoint/internal/book/engines"
	"tenthpoint/internal/journal"
	"tenthpoint/internal/keyring"
	"tenthpoint/internal/message"
	"tenthpoint/internal/signing"
)

// mostOfANote is the number of bytes of a text file searched for a head.
const mostOfANote = 1 << 20

// notes are what was noted outside a book: heads, and signatures of heads.
type notes struct {
	heads  []journal.Head
	signed []signing.Note
}

func (n *notes) add(more notes) {
	n.heads, n.signed = append(n.heads, more.heads...), append(n.signed, more.signed...)
}

// noted returns the heads to check a book against: those typed, and those found where the flag
// points to.
func (c Verify) noted(p *terminal.Session) (n notes, err error) {
	for _, text := range c.Head {
		head, err := journal.ParseHead(text)
		if err != nil {
			return n, err
		}
		n.heads = append(n.heads, head)
	}
	if c.Against == "" {
		return n, nil
	}
	found, err := notesAt(p, c.Against)
	if err == nil && len(found.heads) == 0 {
		err = terminal.Refusal("Name a backup, the file beside it, or an examiner's folder", "no head of a book stands in %s", c.Against)
	}
	n.add(found)
	return n, err
}

// notesAt are the heads in a file, or in the text files of a folder.
func notesAt(p *terminal.Session, path string) (n notes, err error) {
	info, err := os.Stat(path)
	if err != nil {
		return n, terminal.Refusal("Check the path", "the file %s cannot be read", path)
	}
	if !info.IsDir() {
		return notesInFile(p, path)
	}
	files, err := filepath.Glob(filepath.Join(path, "*.txt"))
	for _, file := range files {
		found, err := notesInFile(p, file)
		if err != nil {
			return n, err
		}
		n.add(found)
	}
	return n, err
}

// notesInFile is the head of a book, or every head in a text.
func notesInFile(p *terminal.Session, path string) (n notes, err error) {
	f, err := os.Open(path)
	if err != nil {
		return n, terminal.Refusal("Check the path", "the file %s cannot be read", path)
	}
	defer f.Close()
	text, err := io.ReadAll(io.LimitReader(f, mostOfANote))
	if err != nil {
		return n, err
	}
	if engines.HoldsBook(text) {
		n.heads, err = headOfBook(p, path)
		return n, err
	}
	return notes{journal.FindHeads(string(text)), signing.FindNotes(string(text))}, nil
}

func headOfBook(p *terminal.Session, path string) ([]journal.Head, error) {
	other, err := engines.Open(path, book.Options{ReadOnly: true})
	if err != nil {
		return nil, err
	}
	defer other.Close()
	last, some, err := other.Head(p)
	if err != nil || !some {
		return nil, err
	}
	return []journal.Head{journal.HeadOf(last)}, nil
}

// heldAgainst adds the problems of the book by heads noted earlier, and those of their signatures.
func (c Verify) heldAgainst(p *terminal.Session, found *audit.Soundness) error {
	noted, err := c.noted(p)
	if err != nil {
		return err
	}
	for _, head := range noted.heads {
		if err := audit.HoldsHead(p, p.File, head); err != nil {
			found.Problems = append(found.Problems, message.Of(err))
		}
	}
	if err := signedAgainst(p, noted.signed, found); err != nil {
		return err
	}
	if n := len(noted.heads); n > 0 && len(found.Problems) == 0 && !c.JSON {
		p.Say("The book holds every fact up to the heads that were noted: %d of %d.", n, n)
	}
	return nil
}

// signedAgainst tells who signed the heads noted, and adds the problems of forged signatures.
func signedAgainst(p *terminal.Session, signed []signing.Note, found *audit.Soundness) error {
	if len(signed) == 0 {
		return nil
	}
	keys, err := keyring.Read(p, p.File)
	if err != nil {
		return err
	}
	for _, n := range signed {
		c, err := keys.VerifyNote(n)
		if err != nil {
			found.Problems = append(found.Problems, message.Of(err))
			continue
		}
		found.Remarks = append(found.Remarks, message.New("The head at fact %d that was noted is signed by the computer %v (%v).", n.Head.Seq, c.Computer, c.Key.ID()))
	}
	return nil
}
