package book

import (
	"fmt"

	"tenthpoint/cmd/tenth/terminal"
)

// Backup copies the book.
type Backup struct {
	terminal.BookFlags
	To   string `arg:"" help:"The file to make; one that is there already is never written over." placeholder:"PATH"`
	JSON bool   `help:"Print for programs: every figure as text."`
}

func (Backup) Help() string {
	return `The copy is of one moment, also while trucks are weighed, and is checked before it gets its name: all of it in a folder without other copies and once a week, else what was entered since the last copy there. It opens like any other book.

    tenth backup /mnt/stick/house-2026-10-01.book`
}

func (c Backup) Run(t *terminal.Terminal) error {
	return c.WithBook(t, terminal.ReadOnly, "", func(p *terminal.Session) error {
		if err := p.File.Backup(p, c.To, p.HeadText); err != nil {
			return err
		}
		last, _, err := p.File.Head(p)
		if err != nil {
			return err
		}
		if c.JSON {
			return p.PrintJSON(map[string]string{"copy": c.To, "facts": fmt.Sprint(last.Seq), "hash": last.Hash})
		}
		p.Say("Copied to %s and checked. The book is at fact %d, hash %.12s.", c.To, last.Seq, last.Hash)
		return nil
	})
}
