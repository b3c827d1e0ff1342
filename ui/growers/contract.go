package growers

import (
	"context"
	"errors"

	"tenthpoint/internal/elevator"
	"tenthpoint/internal/entry"
	"tenthpoint/internal/office"
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
		Title: g.session.Say("A contract of %s", one.Name),
		Text:  g.session.Say("Loads name it under Sold or stored, and take its price."),
		Fields: []model.AskField{
			{ID: "number", Label: g.session.Say("Number"), Chars: 10, Required: true},
			{ID: "commodity", Label: g.session.Say("Grain"), Options: g.session.Known().CommodityOptions, Chars: 24, Required: true},
			{ID: "quantity", Label: g.session.Say("Quantity"), Chars: 12, Hint: g.session.Say("in the unit its rates settle by: bu, cwt, or t"), Figures: true, Required: true},
			{ID: "price", Label: g.session.Say("Price"), Unit: "$", Chars: 9, Figures: true, Required: true},
			{ID: "until", Label: g.session.Say("Until"), Chars: 12, Hint: g.session.Say("year-month-day"), Required: true},
			{ID: "who", Label: g.session.Say("Manager"), Options: g.session.Managers(), Value: g.session.ManagerHere(), Chars: 24, Required: true},
		},
		Yes: g.session.Say("Write down"),
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
			g.took(c.Grower, g.session.Say("contract %s is written down: %s at %s.", c.Number, c.Quantity, c.Price))
		},
	})
}

// readContract reads the sheet; the faults are sentences by field.
func readContract(f *session.Session, grower string, values map[string]string) (elevator.ContractTerms, map[string]string) {
	c, err := entry.ReadContract(office.NewEntering(context.Background(), f.Desk), entry.ContractTexts{
		Number: values["number"], Grower: grower, Commodity: values["commodity"],
		Quantity: values["quantity"], Price: values["price"], Until: values["until"],
	})
	faults := map[string]string{}
	if several, is := err.(interface{ Unwrap() []error }); is {
		for _, one := range several.Unwrap() {
			var fault entry.Fault
			if errors.As(one, &fault) {
				faults[fault.Field] = f.Sentence(fault.Err)
			}
		}
	}
	return c, faults
}
