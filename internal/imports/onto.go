package imports

import (
	"slices"

	"tenthpoint/internal/elevator"
)

// has reports whether a list has a column.
func (l List) has(column string) bool { return slices.Contains(l.Columns, column) }

// GrowerOnto is a grower of the list put onto the card that the book has: what the list has no
// column for stays as it was, and so do farms, former names, and who has taken the card's place.
func (l List) GrowerOnto(was, g elevator.Grower) elevator.Grower {
	onto := was
	onto.ID, onto.Name = g.ID, g.Name
	if l.has("address") {
		onto.Address = g.Address
	}
	if l.has("phone") {
		onto.Phone = g.Phone
	}
	if l.has("shares") && !slices.EqualFunc(was.Shares, g.Shares, samePart) {
		onto.Shares = g.Shares
	}
	return onto
}

// samePart reports whether two shares are one of the grain; a list says nothing of the drying.
func samePart(a, b elevator.Share) bool {
	return a.GrowerID == b.GrowerID && a.Parts.Equal(b.Parts) && a.Of.Equal(b.Of)
}

// TruckOnto is a truck of the list put onto the one that the book has: what the list has no column
// for stays as it was.
func (l List) TruckOnto(was, t elevator.Truck) elevator.Truck {
	onto := was
	onto.ID = t.ID
	if l.has("plate") {
		onto.Plate = t.Plate
	}
	if l.has("trailer") {
		onto.Trailer = t.Trailer
	}
	if l.has("grower") {
		onto.Grower = t.Grower
	}
	if l.has("tare") {
		onto.Tare, onto.Taken = t.Tare, t.Taken
	}
	return onto
}
