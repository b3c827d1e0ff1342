package present

import (
	"context"
)

// offer fills in what usually follows from a grower or a truck: the other of
// the two, and the commodity that came last time. Only fields nobody has
// filled are offered anything.
func (f *LoadForm) offer(after string) {
	switch after {
	case "grower":
		f.offerTruck(f.Text("grower"))
	case "truck":
		if t, ok := f.frame.known().truck(f.Text("truck")); ok {
			f.fill("grower", t.Grower)
		}
	default:
		return
	}
	if f.Text("commodity") != "" {
		return
	}
	last, found, err := f.frame.Desk.LastLoad(context.Background(), f.Text("grower"), f.Text("truck"))
	if err != nil || !found {
		return
	}
	if _, taken := f.frame.Desk.Profile().Schedule(last.Details.Commodity); taken {
		f.fill("commodity", last.Details.Commodity)
	}
}

// offerTruck fills in the truck of a grower who has only one.
func (f *LoadForm) offerTruck(grower string) {
	only := ""
	for _, t := range f.frame.known().trucks {
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
		f.put(id, text)
	}
}
