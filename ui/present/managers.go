package present

import (
	"tenthpoint/internal/house"
	"tenthpoint/ui/model"
) // managers are the people who may accept, void and correct.
func (f *Frame) managers() []model.Option {
	out := []model.Option{}
	for _, p := range f.Desk.People() {
		if p.Role == house.Manager {
			out = append(out, model.Option{Code: p.Name})
		}
	}
	return out
}

// managerHere is who is signed in, if that is a manager.
func (f *Frame) managerHere() string {
	if who := f.Desk.Who(); who.Role == house.Manager {
		return who.Name
	}
	return ""
}

// as does an act under another person's name and gives the desk back to who
// was there.
func (f *Frame) as(who string, act func() error) error {
	before := f.Desk.Who().Name
	if who == before {
		return act()
	}
	if err := f.Desk.SignIn(who); err != nil {
		return err
	}
	err := act()
	if before == "" {
		return err
	}
	if back := f.Desk.SignIn(before); err == nil {
		err = back
	}
	return err
}
