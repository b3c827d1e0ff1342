package session

import (
	"tenthpoint/internal/elevator"
)

// Masthead is the heading over the list of screens.
type Masthead struct {
	Business string
	Example  string // the mark of an invented elevator; empty on a real one
	Who      string // who is signed in
}

// Masthead returns the elevator's name, and the person signed in.
func (f *Session) Masthead() Masthead {
	m := Masthead{Business: f.Desk.Profile().Business, Who: signedIn(f)}
	if f.IsNew() {
		m.Business = Say("New elevator")
	}
	if f.Desk.Profile().Demo {
		m.Example = Say("example - not for trade")
	}
	return m
}

func signedIn(f *Session) string {
	who := f.Desk.Who()
	if who.Name == "" {
		return Say("nobody signed in")
	}
	return Say("%s, %s", who.Name, RoleWord(who.Role))
}

// RoleWord returns the name of a role.
func RoleWord(role elevator.Role) string {
	switch role {
	case elevator.Manager:
		return Say("manager")
	case elevator.Tester:
		return Say("tester")
	}
	return Say("clerk")
}
