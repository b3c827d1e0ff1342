package yard

import (
	"context"

	"tenthpoint/internal/elevator"
	"tenthpoint/internal/entry"
	"tenthpoint/internal/load"
	"tenthpoint/internal/scalehouse"
	"tenthpoint/ui/model"
	"tenthpoint/ui/yard/loadfields"
)

// storedTare is the tare that a truck's loads are settled with unless the truck is
// weighed empty: used for a load, or stored from one.
type storedTare struct{ form *LoadForm }

// tare is the tare of the load, weighed or stored.
func (t storedTare) tare() (load.StampedWeighing, bool) { return t.form.Now.Load.Weight(load.Tare, "") }

// canUse reports whether the load's truck has a stored tare that is not in use
// already.
func (t storedTare) canUse() bool {
	_, stored := loadfields.StoredTare(t.form.session, t.form.Now.Load)
	w, weighed := t.tare()
	return stored && !(weighed && w.Source == load.StoredTare)
}

// use takes the truck's stored tare for this load.
func (t storedTare) use() error {
	if err := t.form.Commit(); err != nil {
		return err
	}
	t.form.typed.forget(string(load.Tare))
	t.form.read()
	if err := t.form.writeDown(map[string]string{string(load.Tare): entry.StoredTareText}); err != nil {
		return err
	}
	truck, _ := loadfields.StoredTare(t.form.session, t.form.Now.Load)
	t.form.session.Notify(model.OK, t.form.session.Say("Stored tare %s of %s is used for truck %s.", truck.Tare, truck.Taken, truck.ID))
	t.form.session.Window.Redraw()
	return nil
}

// canStore reports whether the load's truck has a tare from the scale that could
// be stored for next time.
func (t storedTare) canStore() bool {
	w, weighed := t.tare()
	return weighed && w.Source != load.StoredTare && t.form.Now.Load.Details.Truck.ID != ""
}

// store keeps the tare of this load for the truck's next one.
func (t storedTare) store() error {
	if err := t.form.Commit(); err != nil {
		return err
	}
	f, on := t.form.session, t.form.Now.Load.Details
	w, _ := t.tare()
	truck, known := f.Known().Truck(on.Truck.ID)
	if !known {
		truck = elevator.Truck{ID: on.Truck.ID, Plate: on.Truck.Plate, Trailer: on.Truck.Trailer, Grower: on.Grower.ID}
	}
	tare := w.Weight
	truck.Tare, truck.Taken = &tare, f.Desk.Today()
	if err := scalehouse.SetTruck(context.Background(), f.Desk, truck); err != nil {
		return err
	}
	f.Notify(model.OK, t.form.session.Say("tare %s is stored for truck %s.", tare, truck.ID))
	f.Changed()
	return nil
}
