package bins

import (
	"strings"

	"tenthpoint/cmd/tenth/terminal"
	"tenthpoint/internal/bin"
	"tenthpoint/internal/entry"
	"tenthpoint/internal/office/binlog"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/scalehouse"
)

// length reads a length, in feet unless it says metres; none where it is left out.
func length(name, text string) (quantity.Amount, error) {
	text = strings.TrimSpace(text)
	if text == "" {
		return quantity.Amount{}, nil
	}
	unit := quantity.Foot
	if strings.HasSuffix(text, quantity.Metre.String()) {
		unit = quantity.Metre
	}
	return quantity.Field{Name: name, Unit: unit, Places: 3, Min: quantity.Int(-2000, unit), Max: quantity.Int(2000, unit)}.Parse(text)
}

// hours reads hours above zero.
func hours(text string) (quantity.Amount, error) {
	return figure("Hours", text, quantity.Hour)
}

// figure reads a figure in one of several units, the first where it says none; none where it is
// left out.
func figure(name, text string, units ...quantity.Unit) (quantity.Amount, error) {
	text = strings.TrimSpace(text)
	if text == "" {
		return quantity.Amount{}, nil
	}
	unit := units[0]
	for _, u := range units {
		if strings.HasSuffix(text, u.String()) {
			unit = u
		}
	}
	return quantity.Field{Name: name, Unit: unit, Places: 3, Min: quantity.Zero(unit), Max: quantity.Int(10_000_000, unit)}.Parse(text)
}

// weight reads a weight in the unit of the house's scale.
func weight(p *terminal.Session, name, text string) (quantity.Amount, error) {
	return entry.ParseWeight(name, text, p.Profile().WeightUnit())
}

// moving is what every movement has.
type moving struct {
	terminal.BookFlags
	terminal.WhoFlags
	Grain  string `help:"Grain that is moved, where more than one lies in the bin." placeholder:"GRAIN"`
	Day    string `help:"Day it was moved. Without it, today." placeholder:"YYYY-MM-DD"`
	Reason string `help:"Why, or what should be known of it." placeholder:"TEXT"`
	JSON   bool   `help:"Print for programs: every figure as text."`
}

// enter reads what all movements have, lets fill say the rest, and enters the movement. The grain is
// the one in the bin named first.
func (c moving) enter(t *terminal.Terminal, what bin.Kind, name string, fill func(*terminal.Session, *bin.Movement) error) error {
	return c.WithBook(t, terminal.ReadWrite, c.Who, func(p *terminal.Session) error {
		m := bin.Movement{What: what, Reason: c.Reason}
		var err error
		if m.Day, err = entry.ParseDay("Day", c.Day, p.Today()); err != nil {
			return err
		}
		if m.Commodity, err = c.grainIn(p, name); err != nil {
			return err
		}
		if err := fill(p, &m); err != nil {
			return err
		}
		for _, caution := range what.Cautions() {
			p.Say("%s", caution.Said())
		}
		m, err = scalehouse.MoveGrain(p, p.Desk, m)
		if err != nil {
			return err
		}
		return c.say(p, m)
	})
}

// grainIn is the grain named, or the only one that lies in a bin.
func (c moving) grainIn(p *terminal.Session, name string) (string, error) {
	if c.Grain != "" {
		known, err := entry.Commodity(c.Grain)
		return known.ID, err
	}
	b, err := binlog.One(p, p.Desk, name, p.Today())
	if err != nil {
		return "", err
	}
	switch {
	case len(b.Grain) == 1:
		return b.Grain[0].Commodity, nil
	case len(b.Grain) == 0 && b.Commodity != "":
		return b.Commodity, nil
	case len(b.Grain) == 0:
		return "", terminal.Refusal("Name the grain with --grain", "nothing lies in %v", name)
	}
	return "", terminal.Refusal("Name the grain with --grain", "%d grains lie in %v", len(b.Grain), name)
}

// say says what was entered and what lies in the bins after it.
func (c moving) say(p *terminal.Session, m bin.Movement) error {
	if c.JSON {
		return p.PrintJSON(m)
	}
	if note := binlog.Note(m); note.IsZero() {
		p.Say("No. %d: %s.", m.Number, m.What.Name())
	} else {
		p.Say("No. %d: %s. %s", m.Number, m.What.Name(), note)
	}
	all, err := binlog.Bins(p, p.Desk, p.Today())
	if err != nil {
		return err
	}
	named := map[string]bool{}
	for _, id := range m.Bins() {
		named[id] = true
	}
	for _, b := range all {
		for _, h := range b.Grain {
			if named[b.ID] {
				p.Say("%v: %s of %s.", b.ID, h.Lies(), p.GrainName(h.Commodity))
			}
		}
		if named[b.ID] && len(b.Grain) == 0 {
			p.Say("%v is empty.", b.ID)
		}
	}
	return nil
}

// all is all that lies in a bin of the movement's grain.
func all(p *terminal.Session, m *bin.Movement, name string) (quantity.Amount, error) {
	b, err := binlog.One(p, p.Desk, name, p.Today())
	if err != nil {
		return quantity.Amount{}, err
	}
	for _, h := range b.Grain {
		if h.Commodity == m.Commodity {
			return h.Lies(), nil
		}
	}
	return quantity.Amount{}, terminal.Refusal("Look at the bin with \"tenth bin show\"", "none of this grain lies in %v", name)
}

// weightOrAll reads a weight; without one it is all that lies in the bin.
func weightOrAll(p *terminal.Session, m *bin.Movement, name, text string) (quantity.Amount, error) {
	if strings.TrimSpace(text) == "" {
		return all(p, m, name)
	}
	return weight(p, "Weight", text)
}
