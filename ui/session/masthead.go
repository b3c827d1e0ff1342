package session

import (
	"slices"

	"tenthpoint/internal/elevator"
	"tenthpoint/internal/entry"
	"tenthpoint/internal/load"
	"tenthpoint/internal/rates"
)

// Masthead is the heading over the list of screens.
type Masthead struct {
	Business string
	Example  string // the mark of an invented elevator or of invented rates; else empty
	Who      string // who is signed in
}

// Masthead returns the elevator's name, and the person signed in.
func (f *Session) Masthead() Masthead {
	m := Masthead{Business: f.Desk.Profile().Business, Who: signedIn(f)}
	if f.IsNew() {
		m.Business = f.Say("New elevator")
	}
	switch {
	case f.Desk.Profile().Demo:
		m.Example = f.Say("badge|example - not for trade")
	case settlesOnExamples(f):
		m.Example = f.Say("badge|example rates - not for trade")
	}
	return m
}

// settlesOnExamples reports whether any grain taken here is settled today under rates
// that are invented.
func settlesOnExamples(f *Session) bool {
	p := f.Desk.Profile()
	return slices.ContainsFunc(p.Grains, func(g elevator.GrainRule) bool {
		e, err := entry.EditionOf(p, f.Desk.Rates(), load.Details{Commodity: g.Commodity, Schedule: g.Schedule, Day: f.Desk.Today()})
		return err == nil && e.Status == rates.Example
	})
}

func signedIn(f *Session) string {
	who := f.Desk.Who()
	if who.Name == "" {
		return f.Say("nobody signed in")
	}
	return f.Say("%s, %s", who.Name, f.RoleWord(who.Role))
}

// RoleWord returns the name of a role.
func (l Language) RoleWord(role elevator.Role) string {
	switch role {
	case elevator.Manager:
		return l.Say("manager")
	case elevator.Tester:
		return l.Say("tester")
	}
	return l.Say("clerk")
}
