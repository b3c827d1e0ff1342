package tickets

import (
	"tenthpoint/cmd/tenth/terminal"
	"tenthpoint/internal/office"
)

// Reprint prints another copy.
type Reprint struct {
	terminal.BookFlags
	terminal.WhoFlags
	Ticket terminal.TicketNumber `arg:"" help:"Number of the ticket."`
	terminal.PaperFlags
	JSON bool `help:"Print for programs: every figure as text."`
}

func (Reprint) Help() string {
	return `Each copy is counted and says which it is; void and corrected tickets print with their marks.

    tenth reprint 1042
    tenth reprint 1042 --out slips --each-owner`
}

func (c Reprint) Run(t *terminal.Terminal) error {
	return c.WithBook(t, terminal.ReadWrite, c.Who, func(p *terminal.Session) error {
		l, err := office.Ticket(p, p.Desk, int64(c.Ticket))
		if err != nil {
			return err
		}
		return p.HandOut(l, c.PaperFlags, terminal.AnswerFlags{Show: true, JSON: c.JSON})
	})
}
