package tickets

import (
	"fmt"

	"tenthpoint/cmd/tenth/terminal"
	"tenthpoint/internal/load"
	"tenthpoint/internal/office"
)

// Explain prints the whole working of a ticket.
type Explain struct {
	terminal.BookFlags
	Ticket terminal.TicketNumber `arg:"" help:"Number of the ticket."`
	Width  terminal.Width        `help:"Width of the printed working, in letters." default:"76"`
	JSON   bool                  `help:"Print for programs: every figure as text."`
}

func (Explain) Help() string {
	return `The ticket is settled again from its facts and the edition kept in the book with it, not from the rates of today. Each figure is shown with the arithmetic that made it, its rounding, and the row it came from; rules that took nothing say why.

    tenth explain 1042
    tenth explain 1042 --json`
}

func (c Explain) Run(t *terminal.Terminal) error {
	return c.WithBook(t, terminal.ReadOnly, "", func(p *terminal.Session) error {
		l, err := office.Ticket(p, p.Desk, int64(c.Ticket))
		if err != nil {
			return err
		}
		s, err := office.Resettle(p, p.Desk, l)
		if err != nil {
			return err
		}
		if c.JSON {
			out := terminal.SettlementJSON(s)
			out.Titles = terminal.TitlesJSON(l)
			return p.PrintJSON(out)
		}
		p.Say("%s", terminal.Standing(l))
		p.Say("Delivered on %s by %s, truck %s.", l.Details.Day, l.Details.Grower.Name, l.Details.Truck.ID)
		p.Say("%s", terminal.EditionLine(s.Edition))
		p.Say("")
		fmt.Fprint(p.Stdout, p.Working(s, l, int(c.Width)))
		return whatChanged(p, l)
	})
}

// whatChanged prints the changes of a ticket from the one it replaces, line by line.
func whatChanged(p *terminal.Session, l *load.Load) error {
	if l.InPlaceOf() == 0 {
		return nil
	}
	old, err := office.Ticket(p, p.Desk, l.InPlaceOf())
	if err != nil {
		return err
	}
	p.Say("")
	return differences(p, old, l)
}
