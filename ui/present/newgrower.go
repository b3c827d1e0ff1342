package present

import (
	"context"
	"strings"

	"tenthpoint/internal/house"
	"tenthpoint/internal/load"
)

// AskGrower asks for a grower who has not been here before, writes the grower
// down and puts the name on the load.
func (f *LoadForm) AskGrower() {
	f.frame.Put(Ask{
		Title: Say("A new grower"),
		Text:  Say("The code is short; typing it finds the grower from now on."),
		Fields: []AskField{
			{ID: "code", Label: Say("Code"), Chars: 8, Required: true},
			{ID: "name", Label: Say("Name"), Chars: 30, Required: true},
			{ID: "address", Label: Say("Address"), Chars: 30},
			{ID: "phone", Label: Say("Phone"), Chars: 18},
		},
		Yes: Say("Write down"),
		Check: func(values map[string]string) map[string]string {
			if g, taken := f.frame.known().grower(strings.TrimSpace(values["code"])); taken {
				return map[string]string{"code": Say("The code belongs to %s. Choose another.", g.Name)}
			}
			return nil
		},
		Then: f.addGrower,
	})
}

func (f *LoadForm) addGrower(values map[string]string) {
	g := house.Grower{
		ID: strings.TrimSpace(values["code"]), Name: strings.TrimSpace(values["name"]),
		Address: values["address"], Phone: values["phone"],
	}
	if err := f.frame.Desk.SetGrower(context.Background(), g); err != nil {
		f.frame.Fail(err)
		return
	}
	f.frame.lists = nil
	f.Type("grower", g.ID)
	if err := f.Commit(); err != nil {
		f.frame.Fail(err)
		return
	}
	f.frame.Say(OK, Say("%s is written down as %s.", g.Name, g.ID))
	f.frame.Changed()
}

// CanStoreTare reports whether the load's truck has a tare from the scale that
// could be stored for next time.
func (f *LoadForm) CanStoreTare() bool {
	w, weighed := f.now.load.Weight(load.Tare, "")
	return weighed && w.Source != load.StoredTare && f.now.load.Details.Truck.ID != ""
}

// StoreTare keeps the tare of this load for the truck's next one.
func (f *LoadForm) StoreTare() error {
	if err := f.Commit(); err != nil {
		return err
	}
	l := f.now.load
	w, _ := l.Weight(load.Tare, "")
	t, known := f.frame.known().truck(l.Details.Truck.ID)
	if !known {
		t = house.Truck{ID: l.Details.Truck.ID, Plate: l.Details.Truck.Plate, Trailer: l.Details.Truck.Trailer, Grower: l.Details.Grower.ID}
	}
	tare := w.Weight
	t.Tare, t.Taken = &tare, f.frame.Desk.Today()
	if err := f.frame.Desk.SetTruck(context.Background(), t); err != nil {
		return err
	}
	f.frame.Say(OK, Say("tare %s is stored for truck %s.", tare, t.ID))
	f.frame.Changed()
	return nil
}
