package growers

import (
	"tenthpoint/internal/elevator"
	"tenthpoint/ui/session/ask"
)

// AddContract asks for a contract of the chosen grower, in a manager's name.
func (g *Growers) AddContract() {
	one, ok := g.grower()
	if !ok {
		return
	}
	ask.Contract(g.session, one.ID, func(c elevator.ContractTerms) {
		g.took(c.Grower, g.session.Say("contract %s is written down: %s at %s.", c.Number, c.Quantity, c.PriceText()))
	})
}

// SettleUp opens the settlement of the chosen grower.
func (g *Growers) SettleUp() { g.session.Open("settle", g.chosen) }
