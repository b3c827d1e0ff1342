package main

import (
	"fmt"

	"tenthpoint/internal/office"
	"tenthpoint/internal/scaleticket"
)

// showCommand shows a ticket; showing is no copy.
type showCommand struct {
	bookFlags
	Ticket ticketNumber `arg:"" help:"Number of the ticket."`
	Owner  int          `help:"Show the slip of this owner, counted from 1." placeholder:"N"`
	Roll   bool         `help:"Set the text for a three-inch roll."`
	JSON   bool         `help:"Print for programs: every figure as text."`
}

func (showCommand) Help() string {
	return `The slip is shown as it was last printed, void and corrected tickets with their marks. No copy is counted: use "tenth reprint" for one to hand out.

    tenth show 1042
    tenth show 1042 --owner 2
    tenth show 1042 --json`
}

func (c showCommand) Run(t *terminal) error {
	return c.at(t, reading, "", func(p *post) error {
		l, err := office.Ticket(p, p.Desk, int64(c.Ticket))
		if err != nil {
			return err
		}
		if c.JSON {
			out, err := p.ticketJSON(l)
			if err != nil {
				return err
			}
			return p.asJSON(out)
		}
		if c.Owner < 0 || c.Owner > len(l.Details.Shares) {
			return refusal("Leave --owner out for the whole load", "ticket %d has %d owners, no owner %d", l.Number, len(l.Details.Shares), c.Owner)
		}
		doc, err := p.slip(l, max(l.Copies-1, 0), c.Owner)
		if err != nil {
			return err
		}
		width := scaleticket.PageColumns
		if c.Roll {
			width = scaleticket.RollColumns
		}
		fmt.Fprint(p.out, doc.Text(width))
		return nil
	})
}
