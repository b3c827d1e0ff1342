package present

import (
	"context"
	"slices"
	"strings"

	"tenthpoint/internal/house"
	"tenthpoint/internal/quantity"
	"tenthpoint/ui/model"
)

// AskScale asks for a scale; a name that is not known adds one.
func (g *Gear) AskScale(id string) {
	s, known := g.frame.Desk.Profile().Scale(id)
	if !known {
		unit := g.frame.Desk.Profile().WeightUnit()
		s = house.Scale{Division: quantity.Int(20, unit), Capacity: quantity.Int(120_000, unit)}
	}
	title := Say("Scale %s", id)
	if !known {
		title = Say("Another scale")
	}
	unit := s.Division.Unit().String()
	g.frame.Put(model.Ask{
		Draft: "scale", Of: "scale " + s.ID,
		Title: title, Text: Say("Division and capacity are on the plate. Tickets already issued keep what they print."),
		Fields: []model.AskField{
			{ID: "name", Label: Say("Name"), Value: s.ID, Chars: 8, Hint: Say("as on the ticket"), Required: true},
			{ID: "division", Label: Say("Division"), Unit: unit, Value: s.Division.Figure(), Chars: 8, Figures: true, Required: true},
			{ID: "capacity", Label: Say("Capacity"), Unit: unit, Value: s.Capacity.Figure(), Chars: 10, Figures: true, Required: true},
			{ID: "link", Label: Say("Link"), Value: s.Link, Chars: 28, Hint: Say("tcp://host:port or serial:///dev/name")},
			{ID: "who", Label: Say("Manager"), Options: g.frame.managers(), Value: g.frame.managerHere(), Chars: 24, Required: true},
		},
		Yes: Say("Write down"),
		Check: func(values map[string]string) map[string]string {
			changed, faults := readScale(s, values)
			if _, taken := g.frame.Desk.Profile().Scale(changed.ID); taken && changed.ID != id {
				faults["name"] = Say("There is a scale %s already. Give this one another name.", changed.ID)
			}
			return faults
		},
		Then: func(values map[string]string) {
			changed, _ := readScale(s, values)
			g.setScale(id, changed, values["who"])
		},
	})
}

// readScale reads the sheet; the faults are sentences by field.
func readScale(s house.Scale, values map[string]string) (house.Scale, map[string]string) {
	faults := map[string]string{}
	unit := s.Division.Unit()
	weight := func(id, name string) quantity.Amount {
		a, err := quantity.Field{Name: name, Unit: unit, Places: 2, Min: quantity.Of("0.01", unit), Max: quantity.Int(999_999, unit)}.Parse(values[id])
		if err != nil {
			faults[id] = sentence(err)
		}
		return a
	}
	s.ID, s.Link = strings.TrimSpace(values["name"]), strings.TrimSpace(values["link"])
	s.Division, s.Capacity = weight("division", Say("Division")), weight("capacity", Say("Capacity"))
	if err := s.CheckLink(); err != nil {
		faults["link"] = sentence(err)
	}
	return s, faults
}

// setScale writes a scale down in place of the one of a name, and listens to
// it.
func (g *Gear) setScale(id string, s house.Scale, who string) {
	p := g.frame.Desk.Profile()
	p.Scales = slices.Clone(p.Scales)
	i := slices.IndexFunc(p.Scales, func(other house.Scale) bool { return other.ID == id })
	if i < 0 {
		p.Scales = append(p.Scales, s)
	} else {
		p.Scales[i] = s
	}
	err := g.frame.as(who, func() error { return g.frame.Desk.SetProfile(context.Background(), p) })
	if err != nil {
		g.frame.Fail(err)
		return
	}
	g.frame.Changed()
	g.relink(Say("scale %s is written down.", s.ID))
}

// relink listens to the scale anew and says how that went.
func (g *Gear) relink(done string) {
	g.onDeck = false
	if g.frame.Station != nil {
		if err := g.frame.Station.Relink(); err != nil {
			g.frame.Say(model.Warn, join(" ", done, sentence(err)))
			g.frame.window.Redraw()
			return
		}
	}
	g.frame.Say(model.OK, done)
	g.frame.window.Redraw()
}

// CanSimulate reports whether a simulated scale may stand in: only on an
// invented elevator.
func (g *Gear) CanSimulate() bool {
	p := g.frame.Desk.Profile()
	return p.Demo && len(p.Scales) > 0
}

// Simulate lets a simulated scale stand in, or takes it away again.
func (g *Gear) Simulate() {
	s, _ := g.frame.Scale()
	if s.Link == house.SimulatedLink {
		s.Link = ""
	} else {
		s.Link = house.SimulatedLink
	}
	g.frame.Put(model.Ask{
		Title: Say("The scale of the invented elevator"), Text: Say("It is changed in a manager's name."),
		Fields: []model.AskField{{ID: "who", Label: Say("Manager"), Options: g.frame.managers(), Value: g.frame.managerHere(), Chars: 24, Required: true}},
		Yes:    Say("Change it"),
		Then:   func(values map[string]string) { g.setScale(s.ID, s, values["who"]) },
	})
}

// CanRoll reports whether there is a simulated deck.
func (g *Gear) CanRoll() bool { return g.frame.Deck != nil }

// Roll drives a truck on to the simulated deck, or the one there is off it.
func (g *Gear) Roll() {
	if g.onDeck {
		g.frame.Deck.RollOff()
		g.onDeck = false
		g.frame.Say(model.OK, Say("the truck rolls off."))
		return
	}
	s, _ := g.frame.Scale()
	g.frame.Put(model.Ask{
		Title:  Say("Roll a truck on"),
		Text:   Say("A simulated scale: example - not for trade."),
		Fields: []model.AskField{{ID: "weight", Label: Say("Weight"), Unit: s.Division.Unit().String(), Value: "52,300", Chars: 9, Figures: true, Required: true}},
		Yes:    Say("Roll on"),
		Check: func(values map[string]string) map[string]string {
			if _, err := ReadTare(g.frame, values["weight"]); err != nil {
				return map[string]string{"weight": sentence(err)}
			}
			return nil
		},
		Then: func(values map[string]string) {
			weight, _ := ReadTare(g.frame, values["weight"])
			if err := g.frame.Deck.RollOn(weight); err != nil {
				g.frame.Fail(err)
				return
			}
			g.onDeck = true
			g.frame.Say(model.OK, Say("a truck of %s rolls on. Watch it climb, swing, and come to rest.", weight))
		},
	})
}
