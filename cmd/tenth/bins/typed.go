package bins

import (
	"tenthpoint/cmd/tenth/terminal"
	"tenthpoint/internal/bin"
	"tenthpoint/internal/entry/moving"
	"tenthpoint/internal/office/binlog"
	"tenthpoint/internal/scalehouse"
)

// moved has the flags of every movement.
type moved struct {
	terminal.BookFlags
	terminal.WhoFlags
	Grain  string `help:"Grain that is moved, where more than one lies in the bin." placeholder:"GRAIN"`
	Day    string `help:"Day it was moved. Without it, today." placeholder:"YYYY-MM-DD"`
	Reason string `help:"Why, or what should be known of it." placeholder:"TEXT"`
	JSON   bool   `help:"Print for programs: every figure as text."`
}

// enter makes a movement of the texts of its fields, by their ids, and enters it.
func (c moved) enter(t *terminal.Terminal, what bin.Kind, texts map[string]string) error {
	return c.WithBook(t, terminal.ReadWrite, c.Who, func(p *terminal.Session) error {
		house, err := binlog.House(p, p.Desk, p.Today())
		if err != nil {
			return err
		}
		texts["grain"], texts["day"], texts["reason"] = c.Grain, c.Day, c.Reason
		m, problems := moving.Read(what, texts, house)
		if err := problems.Err(what); err != nil {
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

// say says what was entered and what lies in the bins after it.
func (c moved) say(p *terminal.Session, m bin.Movement) error {
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
