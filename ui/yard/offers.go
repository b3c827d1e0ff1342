package yard

import (
	"context"
	"strings"
	"tenthpoint/internal/elevator"
	"tenthpoint/internal/office"
	"tenthpoint/internal/scalehouse"
	"tenthpoint/ui/model"
	"tenthpoint/ui/session"
)

// offer fills in what usually follows from a grower or a truck: the other of
// the two, and the commodity that came last time. Only fields nobody has
// filled are offered anything.
func (f *LoadForm) offer(after string) {
	switch after {
	case "grower":
		f.offerTruck(f.Text("grower"))
	case "truck":
		if t, ok := f.session.Known().Truck(f.Text("truck")); ok {
			f.fill("grower", t.Grower)
		}
	default:
		return
	}
	if f.Text("commodity") != "" {
		return
	}
	last, found, err := office.LastLoad(context.Background(), f.session.Desk, f.Text("grower"), f.Text("truck"))
	if err != nil || !found {
		return
	}
	if _, taken := f.session.Desk.Profile().Schedule(last.Details.Commodity); taken {
		f.fill("commodity", last.Details.Commodity)
	}
}

// offerTruck fills in the truck of a grower who has only one.
func (f *LoadForm) offerTruck(grower string) {
	only := ""
	for _, t := range f.session.Known().Trucks {
		if t.Grower == grower && grower != "" {
			if only != "" {
				return
			}
			only = t.ID
		}
	}
	f.fill("truck", only)
}

// fill types into a field that is empty.
func (f *LoadForm) fill(id, text string) {
	if text != "" && f.Text(id) == "" {
		f.Put(id, text)
	}
}

// AskGrower asks for a grower who has not been here before, writes the grower
// down and puts the name on the load.
func (f *LoadForm) AskGrower() {
	f.session.Put(model.Ask{
		Draft: "new grower",
		Title: session.Say("A new grower"),
		Text:  session.Say("The code is short; typing it finds the grower from now on."),
		Fields: []model.AskField{
			{ID: "code", Label: session.Say("Code"), Chars: 8, Required: true},
			{ID: "name", Label: session.Say("Name"), Chars: 30, Required: true},
			{ID: "address", Label: session.Say("Address"), Chars: 30},
			{ID: "phone", Label: session.Say("Phone"), Chars: 18},
		},
		Yes: session.Say("Write down"),
		Check: func(values map[string]string) map[string]string {
			if g, taken := f.session.Known().Grower(strings.TrimSpace(values["code"])); taken {
				return map[string]string{"code": session.Say("The code belongs to %s. Choose another.", g.Name)}
			}
			return nil
		},
		Then: f.addGrower,
	})
}

func (f *LoadForm) addGrower(values map[string]string) {
	g := elevator.Grower{
		ID: strings.TrimSpace(values["code"]), Name: strings.TrimSpace(values["name"]),
		Address: values["address"], Phone: values["phone"],
	}
	if err := scalehouse.SetGrower(context.Background(), f.session.Desk, g); err != nil {
		f.session.Fail(err)
		return
	}
	f.session.Lists = nil
	f.Type("grower", g.ID)
	if err := f.Commit(); err != nil {
		f.session.Fail(err)
		return
	}
	f.session.Say(model.OK, session.Say("%s is written down as %s.", g.Name, g.ID))
	f.session.Changed()
}
