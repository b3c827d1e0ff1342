package main

import (
	"tenthpoint/internal/office"
	"tenthpoint/internal/scalehouse"
)

// reprintCommand prints another copy.
type reprintCommand struct {
	bookFlags
	whoFlags
	Ticket ticketNumber `arg:"" help:"Number of the ticket."`
	paperFlags
	JSON bool `help:"Print for programs: every figure as text."`
}

func (reprintCommand) Help() string {
	return `Each copy is counted and says which it is; void and corrected tickets print with their marks.

    tenth reprint 1042
    tenth reprint 1042 --out slips --each-owner`
}

func (c reprintCommand) Run(t *terminal) error {
	return c.at(t, writing, c.Who, func(p *post) error {
		copyNo, err := scalehouse.RecordPrint(p, p.Desk, int64(c.Ticket))
		if err != nil {
			return err
		}
		l, err := office.Ticket(p, p.Desk, int64(c.Ticket))
		if err != nil {
			return err
		}
		return p.hand(l, copyNo, c.paperFlags, c.JSON)
	})
}
