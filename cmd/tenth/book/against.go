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
	"tenthpoint/internal/message"
)

// mostOfANote is the number of bytes of a text file searched for a head.
const mostOfANote = 1 << 20

// notedHeads returns the heads to check a book against: those typed, and those found where the flag
// points to.
func (c Verify) notedHeads(p *terminal.Session) ([]journal.Head, error) {
	var heads []journal.Head
	for _, text := range c.Head {
		head, err := journal.ParseHead(text)
		if err != nil {
			return nil, err
		}
		heads = append(heads, head)
	}
	if c.Against == "" {
		return heads, nil
	}
	found, err := headsAt(p, c.Against)
	if err == nil && len(found) == 0 {
		err = terminal.Refusal("Name a backup, the file beside it, or an examiner's folder", "no head of a book stands in %s", c.Against)
	}
	return append(heads, found...), err
}

// headsAt are the heads in a file, or in the text files of a folder.
func headsAt(p *terminal.Session, path string) ([]journal.Head, error) {
	info, err := os.Stat(path)
	if err != nil {
		return nil, terminal.Refusal("Check the path", "the file %s cannot be read", path)
	}
	if !info.IsDir() {
		return headsInFile(p, path)
	}
	notes, err := filepath.Glob(filepath.Join(path, "*.txt"))
	var heads []journal.Head
	for _, note := range notes {
		found, err := headsInFile(p, note)
		if err != nil {
			return nil, err
		}
		heads = append(heads, found...)
	}
	return heads, err
}

// headsInFile is the head of a book, or every head in a text.
func headsInFile(p *terminal.Session, path string) ([]journal.Head, error) {
	f, err := os.Open(path)
	if err != nil {
		return nil, terminal.Refusal("Check the path", "the file %s cannot be read", path)
	}
	defer f.Close()
	text, err := io.ReadAll(io.LimitReader(f, mostOfANote))
	if err != nil {
		return nil, err
	}
	if engines.HoldsBook(text) {
		return headOfBook(p, path)
	}
	return journal.FindHeads(string(text)), nil
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

// heldAgainst adds the problems of the book by heads noted earlier.
func (c Verify) heldAgainst(p *terminal.Session, found *audit.Soundness) error {
	heads, err := c.notedHeads(p)
	if err != nil {
		return err
	}
	for _, head := range heads {
		if err := audit.HoldsHead(p, p.File, head); err != nil {
			found.Problems = append(found.Problems, message.Of(err))
		}
	}
	if len(heads) > 0 && len(found.Problems) == 0 && !c.JSON {
		p.Say("The book holds every fact up to the heads that were noted: %d of %d.", len(heads), len(heads))
	}
	return nil
}
