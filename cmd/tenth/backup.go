package main

import "fmt"

// backupCommand copies the book.
type backupCommand struct {
	bookFlags
	To   string `arg:"" help:"The file to make; one that is there already is never written over." placeholder:"PATH"`
	JSON bool   `help:"Print for programs: every figure as text."`
}

func (backupCommand) Help() string {
	return `The copy is of one moment, also while trucks are weighed, and is checked before it gets its name. It opens like any other book.

    tenth backup /mnt/stick/house-2026-10-01.book`
}

func (c backupCommand) Run(t *terminal) error {
	return c.at(t, reading, "", func(p *post) error {
		if err := p.book.Backup(p, c.To); err != nil {
			return err
		}
		last, _, err := p.book.Head(p)
		if err != nil {
			return err
		}
		if c.JSON {
			return p.asJSON(map[string]string{"copy": c.To, "facts": fmt.Sprint(last.Seq), "hash": last.Hash})
		}
		p.say("Copied to %s and checked. The book is at fact %d, hash %.12s.", c.To, last.Seq, last.Hash)
		return nil
	})
}
