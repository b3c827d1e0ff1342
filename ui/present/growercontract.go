package present

import (
	"context"
	"strings"

	"tenthpoint/internal/house"
	"tenthpoint/internal/quantity"
	"tenthpoint/ui/model"
)

// AddContract asks for a contract of the chosen grower, in a manager's name.
func (g *Growers) AddContract() {
	one, ok := g.grower()
	if !ok {
		return
	}
	g.frame.Put(model.Ask{
		Draft: "contract", Of: "grower " + one.ID,
		Title: Say("A contract of %s", one.Name),
		Text:  Say("Loads name it under Sold or stored, and take its price."),
		Fields: []model.AskField{
			{ID: "number", Label: Say("Number"), Chars: 10, Required: true},
			{ID: "commodity", Label: Say("Grain"), Options: g.frame.known().commodityOptions, Chars: 24, Required: true},
			{ID: "quantity", Label: Say("Quantity"), Chars: 12, Hint: Say("in the unit its rates settle by: bu, cwt, or t"), Figures: true, Required: true},
			{ID: "price", Label: Say("Price"), Unit: "$", Chars: 9, Figures: true, Required: true},
			{ID: "until", Label: Say("Until"), Chars: 12, Hint: Say("year-month-day"), Required: true},
			{ID: "who", Label: Say("Manager"), Options: g.frame.managers(), Value: g.frame.managerHere(), Chars: 24, Required: true},
		},
		Yes:   Say("Write down"),
		Check: func(values map[string]string) map[string]string { _, faults := g.readContract(values); return faults },
		Then: func(values map[string]string) {
			c, _ := g.readContract(values)
			err := g.frame.as(values["who"], func() error { return g.frame.Desk.SetContract(context.Background(), c) })
			if err != nil {
				g.frame.Fail(err)
				return
			}
			g.took(c.Grower, Say("contract %s is written down: %s at %s.", c.Number, c.Quantity, c.Price))
		},
	})
}

// readContract reads the sheet; the faults are sentences by field.
func (g *Growers) readContract(values map[string]string) (house.ContractTerms, map[string]string) {
	faults := map[string]string{}
	c := house.ContractTerms{Number: strings.TrimSpace(values["number"]), Grower: g.chosen, Commodity: values["commodity"]}
	if old, taken := g.frame.known().contract(c.Number); taken {
		faults["number"] = Say("Contract %s is there already, for %s. Choose another number.", old.Number, grainName(old.Commodity))
	}
	unit := settlesBy(g.frame, c.Commodity)
	var err error
	c.Quantity, err = quantity.Field{Name: Say("Quantity"), Unit: unit, Places: 2, Min: quantity.Of("0.01", unit), Max: quantity.Int(100_000_000, unit)}.Parse(values["quantity"])
	if err != nil {
		faults["quantity"] = sentence(err)
	}
	per := quantity.Dollar.Per(unit)
	c.Price, err = quantity.Field{Name: Say("Price"), Unit: per, Places: 4, Min: quantity.Of("0.0001", per), Max: quantity.Int(10_000, per)}.Parse(values["price"])
	if err != nil {
		faults["price"] = sentence(err)
	}
	if c.Until, err = quantity.ParseDate(strings.TrimSpace(values["until"])); err != nil {
		faults["until"] = sentence(err)
	}
	return c, faults
}

// settlesBy is the unit that a grain is settled by under today's rates.
func settlesBy(f *Frame, commodity string) quantity.Unit {
	schedule, _ := f.Desk.Profile().Schedule(commodity)
	e, err := f.Desk.Rates().On(schedule, commodity, f.Desk.Today())
	if err != nil {
		return quantity.Bushel
	}
	return e.Units.Settle
}
