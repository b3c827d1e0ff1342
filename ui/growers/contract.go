package growers

import (
	"context"
	"strings"

	"tenthpoint/internal/elevator"
	"tenthpoint/internal/entry"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/scalehouse"
	"tenthpoint/ui/model"
	"tenthpoint/ui/session"
)

// AddContract asks for a contract of the chosen grower, in a manager's name.
func (g *Growers) AddContract() {
	one, ok := g.grower()
	if !ok {
		return
	}
	g.session.Put(model.Ask{
		Draft: "contract", Of: "grower " + one.ID,
		Title: session.Say("A contract of %s", one.Name),
		Text:  session.Say("Loads name it under Sold or stored, and take its price."),
		Fields: []model.AskField{
			{ID: "number", Label: session.Say("Number"), Chars: 10, Required: true},
			{ID: "commodity", Label: session.Say("Grain"), Options: g.session.Known().CommodityOptions, Chars: 24, Required: true},
			{ID: "quantity", Label: session.Say("Quantity"), Chars: 12, Hint: session.Say("in the unit its rates settle by: bu, cwt, or t"), Figures: true, Required: true},
			{ID: "price", Label: session.Say("Price"), Unit: "$", Chars: 9, Figures: true, Required: true},
			{ID: "until", Label: session.Say("Until"), Chars: 12, Hint: session.Say("year-month-day"), Required: true},
			{ID: "who", Label: session.Say("Manager"), Options: g.session.Managers(), Value: g.session.ManagerHere(), Chars: 24, Required: true},
		},
		Yes: session.Say("Write down"),
		Check: func(values map[string]string) map[string]string {
			_, faults := readContract(g.session, g.chosen, values)
			return faults
		},
		Then: func(values map[string]string) {
			c, _ := readContract(g.session, g.chosen, values)
			err := g.session.As(values["who"], func() error { return scalehouse.SetContract(context.Background(), g.session.Desk, c) })
			if err != nil {
				g.session.Fail(err)
				return
			}
			g.took(c.Grower, session.Say("contract %s is written down: %s at %s.", c.Number, c.Quantity, c.Price))
		},
	})
}

// readContract reads the sheet; the faults are sentences by field.
func readContract(f *session.Session, grower string, values map[string]string) (elevator.ContractTerms, map[string]string) {
	faults := map[string]string{}
	c := elevator.ContractTerms{Number: strings.TrimSpace(values["number"]), Grower: grower, Commodity: values["commodity"]}
	if old, taken := f.Known().Contract(c.Number); taken {
		faults["number"] = session.Say("Contract %s is there already, for %s. Choose another number.", old.Number, session.GrainName(old.Commodity))
	}
	unit := settlesBy(f, c.Commodity)
	var err error
	c.Quantity, err = session.ParseFigure(quantity.Field{Name: session.Say("Quantity"), Unit: unit, Places: 2, Min: quantity.Of("0.01", unit), Max: quantity.Int(100_000_000, unit)}, values["quantity"])
	if err != nil {
		faults["quantity"] = session.Sentence(err)
	}
	c.Price, err = entry.ParsePrice(values["price"], unit)
	if err != nil {
		faults["price"] = session.Sentence(err)
	}
	if c.Until, err = quantity.ParseDate(strings.TrimSpace(values["until"])); err != nil {
		faults["until"] = session.Sentence(err)
	}
	return c, faults
}

// settlesBy is the unit that a grain is settled by under today's rates.
func settlesBy(f *session.Session, commodity string) quantity.Unit {
	schedule, _ := f.Desk.Profile().Schedule(commodity)
	e, err := f.Desk.Rates().On(schedule, commodity, f.Desk.Today())
	if err != nil {
		return quantity.Bushel
	}
	return e.Units.Settle
}
