package yard

import (
	"context"
	"tenthpoint/internal/elevator"
	"tenthpoint/internal/entry"
	"tenthpoint/internal/scalehouse"

	"tenthpoint/internal/load"
	"tenthpoint/ui/model"
	"tenthpoint/ui/session"
)

// storedTare is the load's truck, if it has a tare stored in the unit of the
// scale.
func (f *LoadForm) storedTare() (elevator.Truck, bool) {
	t, ok, _ := entry.StoredTare(session.House(f.session), f.Now.Load.Details.Truck) // the lists are read already
	return t, ok
}

// CanUseStoredTare reports whether the load's truck has a stored tare that is
// not in use already.
func (f *LoadForm) CanUseStoredTare() bool {
	_, stored := f.storedTare()
	w, weighed := f.Now.Load.Weight(load.Tare, "")
	return stored && !(weighed && w.Source == load.StoredTare)
}

// UseStoredTare takes the truck's stored tare for this load.
func (f *LoadForm) UseStoredTare() error {
	if err := f.Commit(); err != nil {
		return err
	}
	delete(f.Typed, string(load.Tare))
	if err := f.writeDown(map[string]string{string(load.Tare): entry.StoredTareText}); err != nil {
		return err
	}
	t, _ := f.storedTare()
	f.session.Say(model.OK, session.Say("Stored tare %s of %s is used for truck %s.", t.Tare, t.Taken, t.ID))
	f.session.Window.Redraw()
	return nil
}

// CanStoreTare reports whether the load's truck has a tare from the scale that
// could be stored for next time.
func (f *LoadForm) CanStoreTare() bool {
	w, weighed := f.Now.Load.Weight(load.Tare, "")
	return weighed && w.Source != load.StoredTare && f.Now.Load.Details.Truck.ID != ""
}

// StoreTare keeps the tare of this load for the truck's next one.
func (f *LoadForm) StoreTare() error {
	if err := f.Commit(); err != nil {
		return err
	}
	l := f.Now.Load
	w, _ := l.Weight(load.Tare, "")
	t, known := f.session.Known().Truck(l.Details.Truck.ID)
	if !known {
		t = elevator.Truck{ID: l.Details.Truck.ID, Plate: l.Details.Truck.Plate, Trailer: l.Details.Truck.Trailer, Grower: l.Details.Grower.ID}
	}
	tare := w.Weight
	t.Tare, t.Taken = &tare, f.session.Desk.Today()
	if err := scalehouse.SetTruck(context.Background(), f.session.Desk, t); err != nil {
		return err
	}
	f.session.Say(model.OK, session.Say("tare %s is stored for truck %s.", tare, t.ID))
	f.session.Changed()
	return nil
}
