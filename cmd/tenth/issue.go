package main

import (
	"tenthpoint/internal/office"
	"tenthpoint/internal/scalehouse"
)

// issueCommand gives a load its ticket.
type issueCommand struct {
	bookFlags
	whoFlags
	Load loadName `arg:"" help:"The load, such as L12."`
	paperFlags
	JSON bool `help:"Print for programs: every figure as text."`
}

func (issueCommand) Help() string {
	return `    tenth issue L12 --out slips`
}

func (c issueCommand) Run(t *terminal) error {
	return c.at(t, writing, c.Who, func(p *post) error {
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
		return p.hand(l, copyNo, c.paperFlags, c.JSON)
	})
}
