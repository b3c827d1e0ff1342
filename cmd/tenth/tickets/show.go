// Package tickets holds the commands about tickets that were issued: showing and
// explaining them, copies, corrections, disputes.
package tickets

import (
	"fmt"

	"tenthpoint/cmd/tenth/terminal"
	"tenthpoint/internal/office"
	"tenthpoint/internal/scaleticket/sheet"
)

// Show is the command that prints a ticket on the terminal; that counts as no copy.
type Show struct {
	terminal.BookFlags
	Ticket terminal.TicketNumber `arg:"" help:"Number of the ticket."`
	Owner  int                   `help:"Show the slip of this owner, counted from 1." placeholder:"N"`
	Roll   bool                  `help:"Set the text for a three-inch roll."`
	JSON   bool                  `help:"Print for programs: every figure as text."`
}

func (Show) Help() string {
	return `The slip is shown as it was last printed, void and corrected tickets with their marks. No copy is counted: use "tenth reprint" for one to hand out.

    tenth show 1042
    tenth show 1042 --owner 2
    tenth show 1042 --json`
}

func (c Show) Run(t *terminal.Terminal) error {
	return c.WithBook(t, terminal.ReadOnly, "", func(p *terminal.Session) error {
		l, err := office.Ticket(p, p.Desk, int64(c.Ticket))
		if err != nil {
			return err
		}
		if c.JSON {
			out, err := p.TicketJSON(l)
			if err != nil {
				return err
			}
			return p.PrintJSON(out)
		}
		if c.Owner < 0 || c.Owner > len(l.Details.Shares) {
			return terminal.Refusal("Leave --owner out for the whole load", "ticket %d has %d owners, no owner %d", l.Number, len(l.Details.Shares), c.Owner)
		}
		doc, err := p.Slip(l, max(l.Copies-1, 0), c.Owner)
		if err != nil {
			return err
		}
		width := sheet.PageColumns
		if c.Roll {
			width = sheet.RollColumns
		}
		fmt.Fprint(p.Stdout, sheet.Text(doc, width))
		return nil
	})
}
