package growers

import (
	"context"
	"strings"

	"tenthpoint/internal/elevator"
	"tenthpoint/internal/load"
	"tenthpoint/internal/scalehouse"
	"tenthpoint/ui/model"
	"tenthpoint/ui/session"
	"tenthpoint/ui/session/ask"
)

// Add asks for a grower who has not been here before.
func (g *Growers) Add() { g.askGrower(elevator.Grower{}, g.session.Say("A new grower")) }

// Change asks for another name, address or phone of the chosen grower.
func (g *Growers) Change() {
	if one, ok := g.grower(); ok {
		g.askGrower(one, g.session.Say("Change grower %s", one.ID))
	}
}

// askGrower asks for a grower; one without a code is new.
func (g *Growers) askGrower(one elevator.Grower, title string) {
	isNew := one.ID == ""
	fields := []model.AskField{
		{ID: "name", Label: g.session.Say("Name"), Value: one.Name, Chars: 30, Required: true},
		{ID: "address", Label: g.session.Say("Address"), Value: one.Address, Chars: 30},
		{ID: "phone", Label: g.session.Say("Phone"), Value: one.Phone, Chars: 18},
	}
	if isNew {
		fields = append([]model.AskField{{ID: "code", Label: g.session.Say("Code"), Chars: 8, Hint: g.session.Say("short; clerks type it"), Required: true}}, fields...)
	}
	g.session.Put(model.Ask{
		Draft: "grower", Of: "grower " + one.ID,
		Title: title, Text: g.session.Say("Tickets already issued keep the name they print."), Fields: fields, Yes: g.session.Say("Write down"),
		Check: func(values map[string]string) map[string]string {
			if taken, ok := g.session.Known().Grower(strings.TrimSpace(values["code"])); isNew && ok {
				return map[string]string{"code": g.session.Say("The code belongs to %s. Choose another.", taken.Name)}
			}
			return nil
		},
		Then: func(values map[string]string) {
			if isNew {
				one.ID = strings.TrimSpace(values["code"])
			}
			one.Name, one.Address, one.Phone = strings.TrimSpace(values["name"]), values["address"], values["phone"]
			g.write(one, g.session.Say("%s is written down as %s.", one.Name, one.ID))
		},
	})
}

// write records a grower and chooses it.
func (g *Growers) write(one elevator.Grower, done string) {
	if err := scalehouse.SetGrower(context.Background(), g.session.Desk, one); err != nil {
		g.session.Fail(err)
		return
	}
	g.took(one.ID, done)
}

// took shows the recorded change, with a grower chosen.
func (g *Growers) took(code, done string) {
	g.session.Changed()
	if fits := g.fits(); len(fits) > 0 {
		if _, shown := session.Find(fits, func(one elevator.Grower) bool { return one.ID == code }); !shown {
			g.line = ""
		}
	}
	g.season.forget()
	g.Choose(code)
	g.session.Notify(model.OK, done)
	g.session.Window.Redraw()
}

// Shares asks who shares in the loads of the chosen grower.
func (g *Growers) Shares() {
	one, ok := g.grower()
	if !ok {
		return
	}
	g.session.Put(model.Ask{
		Draft: "shares", Of: "grower " + one.ID,
		Title:  g.session.Say("Who shares in the loads of %s?", one.Name),
		Text:   g.session.Say("Leave all owners out when the grower has all of it. The parts must make a whole. Tickets already issued keep their shares."),
		Fields: ask.ShareFields(g.session, session.UsualShares(g.session, one)), Yes: g.session.Say("Write down"),
		Check: func(values map[string]string) map[string]string {
			_, faults := ask.ReadShares(g.session, values)
			return faults
		},
		Then: func(values map[string]string) {
			owners, _ := ask.ReadShares(g.session, values)
			one.Shares = sharesOf(owners)
			g.write(one, g.session.Say("the shares of %s are written down.", one.Name))
		},
	})
}

// sharesOf are owners as a grower keeps them.
func sharesOf(owners []load.Owner) []elevator.Share {
	var out []elevator.Share
	for _, o := range owners {
		out = append(out, elevator.Share{GrowerID: o.ID, Parts: o.Parts, Of: o.Of, Drying: o.Drying})
	}
	return out
}

// PrintAccount asks for the period of the chosen grower's account and prints it.
func (g *Growers) PrintAccount() { ask.Statement(g.session, g.chosen) }
