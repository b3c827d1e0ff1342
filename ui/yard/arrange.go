package yard

import (
	"slices"

	"tenthpoint/ui/model"
)

// arranging deals the places of the trucks anew. A truck keeps its place, and with it its key, until
// somebody moves it or sorts the yard.
type arranging struct{ *Yard }

// move moves the current truck one place up or down.
func (y arranging) move(by int) {
	if y.places.Move(y.current.id, by) {
		y.saveDraft()
		y.session.Window.Redraw()
	}
}

// sort gives the first key to the truck that has waited longest. Where the trucks stand so already,
// it sorts them by what they wait for, the nearest to its ticket first.
func (y arranging) sort() {
	rows := y.rowsByWait()
	said := y.session.Say("the trucks stand by how long they have waited: their keys are others now.")
	if slices.EqualFunc(rows, y.Rows(), func(a, b model.TruckRow) bool { return a.ID == b.ID }) {
		slices.SortStableFunc(rows, func(a, b model.TruckRow) int { return b.Column - a.Column })
		said = y.session.Say("the trucks stand by what they wait for: their keys are others now.")
	}
	ids := make([]string, len(rows))
	for i, row := range rows {
		ids[i] = row.ID
	}
	y.places.Order(ids)
	y.saveDraft()
	y.session.Window.Redraw()
	y.session.Notify(model.OK, said)
}

// rowsByWait are the trucks, the one that has waited longest first.
func (y arranging) rowsByWait() []model.TruckRow {
	rows := make([]model.TruckRow, len(y.trucks))
	for i, l := range y.trucks {
		rows[i] = y.row(l, "")
	}
	return rows
}
