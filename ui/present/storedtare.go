package present

import (
	"context"

	"tenthpoint/internal/entry"
	"tenthpoint/internal/house"
	"tenthpoint/internal/load"
	"tenthpoint/ui/model"
)

// storedTare is the load's truck, if it has a tare stored in the unit of the
// scale.
func (f *LoadForm) storedTare() (house.Truck, bool) {
	t, ok, _ := entry.StoredTare(f.frame.house(), f.now.load.Details.Truck) // the lists are read already
	return t, ok
}

// CanUseStoredTare reports whether the load's truck has a stored tare that is
// not in use already.
func (f *LoadForm) CanUseStoredTare() bool {
	_, stored := f.storedTare()
	w, weighed := f.now.load.Weight(load.Tare, "")
	return stored && !(weighed && w.Source == load.StoredTare)
}

// UseStoredTare takes the truck's stored tare for this load.
func (f *LoadForm) UseStoredTare() error {
	if err := f.Commit(); err != nil {
		return err
	}
	delete(f.typed, string(load.Tare))
	if err := f.writeDown(map[string]string{string(load.Tare): entry.StoredTareText}); err != nil {
		return err
	}
	t, _ := f.storedTare()
	f.frame.Say(model.OK, Say("Stored tare %s of %s is used for truck %s.", t.Tare, t.Taken, t.ID))
	f.frame.window.Redraw()
	return nil
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
	f.frame.Say(model.OK, Say("tare %s is stored for truck %s.", tare, t.ID))
	f.frame.Changed()
	return nil
}
