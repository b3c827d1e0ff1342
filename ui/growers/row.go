package growers

import (
	"strings"

	"tenthpoint/internal/elevator"
	"tenthpoint/ui/model"
	"tenthpoint/ui/session"
)

// row is one grower of the list with the trucks that come for them.
type row struct {
	elevator.Grower
	session *session.Session
	trucks  []elevator.Truck
	note    model.Status
}

func rowOf(f *session.Session, one elevator.Grower) row {
	trucks := trucksOf(f, one.ID)
	return row{one, f, trucks, oldTares(f, trucks)}
}

// trucksOf are the trucks that come for a grower.
func trucksOf(f *session.Session, code string) []elevator.Truck {
	var out []elevator.Truck
	for _, t := range f.Known().Trucks {
		if t.Grower == code && code != "" {
			out = append(out, t)
		}
	}
	return out
}

// shares are the parts a grower's loads come in: "2/3, 1/3".
func (r row) shares() string {
	text := ""
	for _, o := range session.UsualShares(r.session, r.Grower) {
		text = session.Join(", ", text, o.Part().String())
	}
	return text
}

func (r row) truckNumbers() string {
	ids := make([]string, len(r.trucks))
	for i, t := range r.trucks {
		ids[i] = t.ID
	}
	return strings.Join(ids, ", ")
}

// oldTareDays is the age from which a stored tare gets a warning. It is a choice of this program,
// not of a law: mud, fuel and tarps change an empty truck within a month.
const oldTareDays = 30

// oldTares says which of the trucks' stored tares are old.
func oldTares(f *session.Session, trucks []elevator.Truck) model.Status {
	var old []string
	for _, t := range trucks {
		if isOldTare(f, t) {
			old = append(old, t.ID)
		}
	}
	switch len(old) {
	case 0:
		return model.Status{}
	case 1:
		return model.Status{State: model.Warn, Text: f.Say("tare of %s is old", old[0])}
	}
	return model.Status{State: model.Warn, Text: f.Say("%d tares are old", len(old))}
}

// isOldTare reports whether a truck's stored tare was taken too long ago.
func isOldTare(f *session.Session, t elevator.Truck) bool {
	return t.Tare != nil && t.Taken.DaysUntil(f.Desk.Today()) > oldTareDays
}
