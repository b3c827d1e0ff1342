package equipment

import (
	"context"
	"slices"
	"strings"
	"tenthpoint/internal/elevator"
	"tenthpoint/internal/entry"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/scalehouse"
	"tenthpoint/ui/model"
	"tenthpoint/ui/session"
)

// AskScale asks for a scale; an unknown name adds one.
func (g *Equipment) AskScale(id string) {
	s, known := g.session.Desk.Profile().Scale(id)
	if !known {
		unit := g.session.Desk.Profile().WeightUnit()
		s = elevator.Scale{Division: quantity.Int(20, unit), Capacity: quantity.Int(120_000, unit)}
	}
	title := g.session.Say("Scale %s", id)
	if !known {
		title = g.session.Say("Another scale")
	}
	unit := s.Division.Unit().String()
	g.session.Put(model.Ask{
		Draft: "scale", Of: "scale " + s.ID,
		Title: title, Text: g.session.Say("Division and capacity are on the plate. Tickets already issued keep what they print."),
		Fields: []model.AskField{
			{ID: "name", Label: g.session.Say("Name"), Value: s.ID, Chars: 8, Hint: g.session.Say("as on the ticket"), Required: true},
			{ID: "division", Label: g.session.Say("Division"), Unit: unit, Value: s.Division.Figure(), Chars: 8, Figures: true, Required: true},
			{ID: "capacity", Label: g.session.Say("Capacity"), Unit: unit, Value: s.Capacity.Figure(), Chars: 10, Figures: true, Required: true},
			{ID: "link", Label: g.session.Say("Link"), Value: s.Link, Chars: 28, Hint: g.session.Say("tcp://host:port or serial:///dev/name")},
			{ID: "who", Label: g.session.Say("Manager"), Options: g.session.Managers(), Value: g.session.ManagerHere(), Chars: 24, Required: true},
		},
		Yes: g.session.Say("Write down"),
		Check: func(values map[string]string) map[string]string {
			changed, faults := readScale(g.session.Language, s, values)
			if _, taken := g.session.Desk.Profile().Scale(changed.ID); taken && changed.ID != id {
				faults["name"] = g.session.Say("There is a scale %s already. Give this one another name.", changed.ID)
			}
			return faults
		},
		Then: func(values map[string]string) {
			changed, _ := readScale(g.session.Language, s, values)
			g.setScale(id, changed, values["who"])
		},
	})
}

// readScale reads the sheet; the faults are sentences by field.
func readScale(in session.Language, s elevator.Scale, values map[string]string) (elevator.Scale, map[string]string) {
	faults := map[string]string{}
	unit := s.Division.Unit()
	weight := func(id, name string) quantity.Amount {
		a, err := in.ParseFigure(entry.Plate(name, unit), values[id])
		if err != nil {
			faults[id] = in.Sentence(err)
		}
		return a
	}
	s.ID, s.Link = strings.TrimSpace(values["name"]), strings.TrimSpace(values["link"])
	s.Division, s.Capacity = weight("division", in.Say("Division")), weight("capacity", in.Say("Capacity"))
	if err := s.CheckLink(); err != nil {
		faults["link"] = in.Sentence(err)
	}
	return s, faults
}

// setScale records a scale in place of the one with a name, and connects to it.
func (g *Equipment) setScale(id string, s elevator.Scale, who string) {
	p := g.session.Desk.Profile()
	p.Scales = slices.Clone(p.Scales)
	i := slices.IndexFunc(p.Scales, func(other elevator.Scale) bool { return other.ID == id })
	if i < 0 {
		p.Scales = append(p.Scales, s)
	} else {
		p.Scales[i] = s
	}
	err := g.session.As(who, func() error { return scalehouse.SetProfile(context.Background(), g.session.Desk, p) })
	if err != nil {
		g.session.Fail(err)
		return
	}
	g.session.Changed()
	g.relink(g.session.Say("scale %s is written down.", s.ID))
}

// relink opens the link to the scale again and reports the result.
func (g *Equipment) relink(done string) {
	g.onDeck = false
	if g.session.Station != nil {
		if err := g.session.Station.Relink(); err != nil {
			g.session.Notify(model.Warn, session.Join(" ", done, g.session.Sentence(err)))
			g.session.Window.Redraw()
			return
		}
	}
	g.session.Notify(model.OK, done)
	g.session.Window.Redraw()
}

// CanSimulate reports whether a simulated scale may be used: only at an invented elevator.
func (g *Equipment) CanSimulate() bool {
	p := g.session.Desk.Profile()
	return p.Demo && len(p.Scales) > 0
}

// Simulate turns a simulated scale on or off.
func (g *Equipment) Simulate() {
	s, _ := g.session.Scale()
	if s.Link == elevator.SimulatedLink {
		s.Link = ""
	} else {
		s.Link = elevator.SimulatedLink
	}
	g.session.Put(model.Ask{
		Title: g.session.Say("The scale of the invented elevator"), Text: g.session.Say("It is changed in a manager's name."),
		Fields: []model.AskField{{ID: "who", Label: g.session.Say("Manager"), Options: g.session.Managers(), Value: g.session.ManagerHere(), Chars: 24, Required: true}},
		Yes:    g.session.Say("Change it"),
		Then:   func(values map[string]string) { g.setScale(s.ID, s, values["who"]) },
	})
}

// CanRoll reports whether there is a simulated deck.
func (g *Equipment) CanRoll() bool { return g.session.Deck != nil }

// Roll drives a truck on to the simulated deck, or the one there is off it.
func (g *Equipment) Roll() {
	if g.onDeck {
		g.session.Deck.RollOff()
		g.onDeck = false
		g.session.Notify(model.OK, g.session.Say("the truck rolls off."))
		return
	}
	s, _ := g.session.Scale()
	g.session.Put(model.Ask{
		Title:  g.session.Say("Roll a truck on"),
		Text:   g.session.Say("A simulated scale: example - not for trade."),
		Fields: []model.AskField{{ID: "weight", Label: g.session.Say("Weight"), Unit: s.Division.Unit().String(), Value: "52,300", Chars: 9, Figures: true, Required: true}},
		Yes:    g.session.Say("Roll on"),
		Check: func(values map[string]string) map[string]string {
			if _, err := session.ReadTare(g.session, values["weight"]); err != nil {
				return map[string]string{"weight": g.session.Sentence(err)}
			}
			return nil
		},
		Then: func(values map[string]string) {
			weight, _ := session.ReadTare(g.session, values["weight"])
			if err := g.session.Deck.RollOn(weight); err != nil {
				g.session.Fail(err)
				return
			}
			g.onDeck = true
			g.session.Notify(model.OK, g.session.Say("a truck of %s rolls on. Watch it climb, swing, and come to rest.", weight))
		},
	})
}

// offerTruck offers what an invented elevator is best begun with: a truck that rolls on to a simulated
// scale, whose weight one key takes. Where a scale is linked, or no manager is at the desk, it offers
// nothing.
func offerTruck(g *Equipment) {
	s, _ := g.session.Scale()
	manager := g.session.ManagerHere()
	if !g.CanSimulate() || s.Link != "" || manager == "" {
		return
	}
	truck := quantity.Int(52_300, quantity.Lb)
	if s.Division.Unit() != quantity.Lb {
		truck = quantity.Int(23_720, s.Division.Unit())
	}
	g.session.Put(model.Ask{
		Title: g.session.Say("A truck is at the gate"),
		Text:  g.session.Say("Everything here is invented, and the scale can be simulated too: a truck of %s rolls on, and F10 on the yard takes its weight once it is at rest.", truck),
		Yes:   g.session.Say("Roll it on"), No: g.session.Say("Not now"),
		Then: func(map[string]string) {
			s.Link = elevator.SimulatedLink
			g.setScale(s.ID, s, manager)
			if g.session.Deck == nil {
				return // said by the link
			}
			if err := g.session.Deck.RollOn(truck); err != nil {
				g.session.Fail(err)
				return
			}
			g.onDeck = true
			g.session.Go("yard")
			g.session.Notify(model.OK, g.session.Say("a truck of %s rolls on. Type its grower; F10 takes the weight once it is at rest.", truck))
		},
	})
}

// An elevator may have several scales, and a desk at each. Which one a desk weighs on belongs to
// its computer, not to the book.

// CanWeighOn reports whether there is another scale to choose from.
func (g *Equipment) CanWeighOn() bool { return len(g.session.Desk.Profile().Scales) > 1 }

// WeighOn lets this desk weigh on a scale from now on.
func (g *Equipment) WeighOn(id string) {
	s, known := g.session.Desk.Profile().Scale(id)
	if !known {
		return
	}
	g.session.Remember(session.ScaleMemory, s.ID)
	g.session.Changed()
	g.relink(g.session.Say("this desk weighs on scale %s.", s.ID))
}
