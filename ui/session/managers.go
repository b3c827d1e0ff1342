package session

import (
	"tenthpoint/internal/elevator"
	"tenthpoint/internal/scalehouse"
	"tenthpoint/ui/model"
)

// Managers are the people who may accept, void and correct.
func (f *Session) Managers() []model.Option {
	out := []model.Option{}
	for _, p := range f.Desk.People() {
		if p.Role == elevator.Manager {
			out = append(out, model.Option{Code: p.Name})
		}
	}
	return out
}

// ManagerHere returns the person signed in, if that is a manager.
func (f *Session) ManagerHere() string {
	if who := f.Desk.Who(); who.Role == elevator.Manager {
		return who.Name
	}
	return ""
}

// As runs an act under another person's name and then signs the former person in again.
func (f *Session) As(who string, act func() error) error {
	before := f.Desk.Who().Name
	if who == before {
		return act()
	}
	if err := f.Desk.SignIn(who); err != nil {
		return err
	}
	err := act()
	if err == nil {
		scalehouse.Unprove(f.Desk, who) // the manager goes, the clerk stays at the desk
	}
	if before == "" {
		return err
	}
	if back := f.Desk.SignIn(before); err == nil {
		err = back
	}
	return err
}
