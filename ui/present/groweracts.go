package present

import (
	"context"
	"strings"

	"tenthpoint/internal/house"
	"tenthpoint/internal/load"
	"tenthpoint/ui/model"
)

// Add asks for a grower who has not been here before.
func (g *Growers) Add() { g.askGrower(house.Grower{}, Say("A new grower")) }

// Change asks for another name, address or phone of the chosen grower.
func (g *Growers) Change() {
	if one, ok := g.grower(); ok {
		g.askGrower(one, Say("Change grower %s", one.ID))
	}
}

// askGrower asks for a grower; one without a code is new.
func (g *Growers) askGrower(one house.Grower, title string) {
	isNew := one.ID == ""
	fields := []model.AskField{
		{ID: "name", Label: Say("Name"), Value: one.Name, Chars: 30, Required: true},
		{ID: "address", Label: Say("Address"), Value: one.Address, Chars: 30},
		{ID: "phone", Label: Say("Phone"), Value: one.Phone, Chars: 18},
	}
	if isNew {
		fields = append([]model.AskField{{ID: "code", Label: Say("Code"), Chars: 8, Hint: Say("short; clerks type it"), Required: true}}, fields...)
	}
	g.frame.Put(model.Ask{
		Draft: "grower", Of: "grower " + one.ID,
		Title: title, Text: Say("Tickets already issued keep the name they print."), Fields: fields, Yes: Say("Write down"),
		Check: func(values map[string]string) map[string]string {
			if taken, ok := g.frame.known().grower(strings.TrimSpace(values["code"])); isNew && ok {
				return map[string]string{"code": Say("The code belongs to %s. Choose another.", taken.Name)}
			}
			return nil
		},
		Then: func(values map[string]string) {
			if isNew {
				one.ID = strings.TrimSpace(values["code"])
			}
			one.Name, one.Address, one.Phone = strings.TrimSpace(values["name"]), values["address"], values["phone"]
			g.write(one, Say("%s is written down as %s.", one.Name, one.ID))
		},
	})
}

// write puts a grower into the book and takes it in hand.
func (g *Growers) write(one house.Grower, done string) {
	if err := g.frame.Desk.SetGrower(context.Background(), one); err != nil {
		g.frame.Fail(err)
		return
	}
	g.took(one.ID, done)
}

// took shows what was written down, with a grower in hand.
func (g *Growers) took(code, done string) {
	g.frame.Changed()
	if fits := g.fits(); len(fits) > 0 {
		if _, shown := find(fits, func(one house.Grower) bool { return one.ID == code }); !shown {
			g.line = ""
		}
	}
	g.accountOf = ""
	g.Choose(code)
	g.frame.Say(model.OK, done)
	g.frame.window.Redraw()
}

// Shares asks who shares in the loads of the chosen grower.
func (g *Growers) Shares() {
	one, ok := g.grower()
	if !ok {
		return
	}
	g.frame.Put(model.Ask{
		Draft: "shares", Of: "grower " + one.ID,
		Title:  Say("Who shares in the loads of %s?", one.Name),
		Text:   Say("Leave all owners out when the grower has all of it. The parts must make a whole. Tickets already issued keep their shares."),
		Fields: ShareFields(g.frame, g.frame.known().owners(one)), Yes: Say("Write down"),
		Check: func(values map[string]string) map[string]string {
			_, faults := ReadShares(g.frame, values)
			return faults
		},
		Then: func(values map[string]string) {
			owners, _ := ReadShares(g.frame, values)
			one.Shares = sharesOf(owners)
			g.write(one, Say("the shares of %s are written down.", one.Name))
		},
	})
}

// sharesOf are owners as a grower keeps them.
func sharesOf(owners []load.Owner) []house.Share {
	var out []house.Share
	for _, o := range owners {
		out = append(out, house.Share{GrowerID: o.ID, Parts: o.Parts, Of: o.Of})
	}
	return out
}

// PrintAccount asks for which days the account of the chosen grower is to be
// printed.
func (g *Growers) PrintAccount() { AskStatement(g.frame, g.chosen) }
