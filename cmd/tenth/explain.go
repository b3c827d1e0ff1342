package main

import (
	"fmt"

	"tenthpoint/internal/load"
	"tenthpoint/internal/office"
)

// explainCommand prints the whole working of a ticket.
type explainCommand struct {
	bookFlags
	Ticket ticketNumber `arg:"" help:"Number of the ticket."`
	Width  int          `help:"Width of the printed working, in letters." default:"76"`
	JSON   bool         `help:"Print for programs: every figure as text."`
}

func (explainCommand) Help() string {
	return `The ticket is settled again from its facts and the edition kept in the book with it, not from the rates of today. Each figure is shown with the arithmetic that made it, its rounding, and the row it came from; rules that took nothing say why.

    tenth explain 1042
    tenth explain 1042 --json`
}

func (c explainCommand) Run(t *terminal) error {
	return c.at(t, reading, "", func(p *post) error {
		l, err := office.Ticket(p, p.Desk, int64(c.Ticket))
		if err != nil {
			return err
		}
		s, err := office.Resettle(p, p.Desk, l)
		if err != nil {
			return err
		}
		if c.JSON {
			return p.asJSON(settlementJSON(s))
		}
		p.speak("%s", standing(l))
		p.speak("Delivered on %s by %s, truck %s.", l.Details.Day, l.Details.Grower.Name, l.Details.Truck.ID)
		p.speak("%s", editionLine(s.Edition))
		p.say("")
		fmt.Fprint(p.out, s.Sheet.TextIn(c.Width, p.workingOf(l)))
		return whatChanged(p, l)
	})
}

// whatChanged tells what a ticket changed of the one whose place it takes, line
// by line.
func whatChanged(p *post, l *load.Load) error {
	if l.InPlaceOf() == 0 {
		return nil
	}
	old, err := office.Ticket(p, p.Desk, l.InPlaceOf())
	if err != nil {
		return err
	}
	p.say("")
	return differences(p, old, l)
}
