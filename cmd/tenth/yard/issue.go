package yard

import (
	"tenthpoint/cmd/tenth/terminal"
	"tenthpoint/internal/office"
	"tenthpoint/internal/scalehouse"
)

// Issue issues a load's ticket.
type Issue struct {
	terminal.BookFlags
	terminal.WhoFlags
	Load loadName `arg:"" help:"The load, such as L12."`
	terminal.ConfirmFlags
	terminal.PaperFlags
	terminal.AnswerFlags
}

func (Issue) Help() string {
	return `    tenth issue L12 --out slips
    tenth issue L12 --confirm moisture="tested again, same result"`
}

func (c Issue) Run(t *terminal.Terminal) error {
	return c.WithBook(t, terminal.ReadWrite, c.Who, func(p *terminal.Session) error {
		number, err := c.issue(p)
		if err != nil {
			return err
		}
		l, err := office.Ticket(p, p.Desk, number)
		if err != nil {
			return err
		}
		return p.HandOut(l, c.PaperFlags, c.AnswerFlags)
	})
}

// issue answers the guards' questions about the load and issues its ticket, both or neither.
func (c Issue) issue(p *terminal.Session) (number int64, err error) {
	l, err := office.Load(p, p.Desk, string(c.Load))
	if err != nil {
		return 0, err
	}
	answers, err := c.ConfirmFlags.Texts()
	if err != nil {
		return 0, err
	}
	form, err := p.Entered(p.Form(l, "", terminal.WeightFlags{}), answers)
	if err != nil {
		return 0, err
	}
	err = p.Batch(p, func(w *scalehouse.Batch) error {
		if _, err := scalehouse.Enter(p, w, l.ID, form.Facts()); err != nil {
			return err
		}
		number, err = scalehouse.Issue(p, w, l.ID)
		return err
	})
	return number, err
}
