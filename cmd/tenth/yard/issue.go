package yard

import (
	"tenthpoint/cmd/tenth/terminal"
	"tenthpoint/internal/office"
	"tenthpoint/internal/scalehouse"
)

// Issue gives a load its ticket.
type Issue struct {
	terminal.BookFlags
	terminal.WhoFlags
	Load loadName `arg:"" help:"The load, such as L12."`
	terminal.PaperFlags
	terminal.AnswerFlags
}

func (Issue) Help() string {
	return `    tenth issue L12 --out slips`
}

func (c Issue) Run(t *terminal.Terminal) error {
	return c.WithBook(t, terminal.ReadWrite, c.Who, func(p *terminal.Session) error {
		number, err := scalehouse.Issue(p, p.Desk, string(c.Load))
		if err != nil {
			return err
		}
		copyNo, err := scalehouse.RecordPrint(p, p.Desk, number)
		if err != nil {
			return err
		}
		l, err := office.Ticket(p, p.Desk, number)
		if err != nil {
			return err
		}
		return p.HandOut(l, copyNo, c.PaperFlags, c.AnswerFlags)
	})
}
