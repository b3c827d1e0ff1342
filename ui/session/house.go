package session

import (
	"context"

	"tenthpoint/internal/elevator"
	"tenthpoint/internal/entry"
	"tenthpoint/internal/load"
	"tenthpoint/internal/office"
	"tenthpoint/ui/model"
)

// House is the elevator as forms of loads see it: the desk, with the lists that
// the window has read already.
func House(f *Session) entry.House {
	return atDesk{office.NewEntering(context.Background(), f.Desk), f}
}

type atDesk struct {
	*office.Entering
	session *Session
}

func (h atDesk) Growers() ([]elevator.Grower, error) { return h.session.Known().Growers, nil }
func (h atDesk) Trucks() ([]elevator.Truck, error)   { return h.session.Known().Trucks, nil }
func (h atDesk) Bins() ([]elevator.Bin, error)       { return h.session.Known().Bins, nil }
func (h atDesk) Contracts() ([]elevator.ContractTerms, error) {
	return h.session.Known().Contracts, nil
}

// UsualShares are a grower's usual shares as a ticket keeps them.
func UsualShares(f *Session, g elevator.Grower) []load.Owner {
	owners, _ := entry.UsualShares(House(f), g) // the list is read already
	return owners
}

// FieldMessages are the messages beside the fields of a form.
type FieldMessages map[string]model.Status

// Say adds a message to a field; the first one stays, unless the later one is graver.
func (r FieldMessages) Say(field string, state model.State, text string) {
	if old, taken := r[field]; taken && (old.State == model.Stop || state != model.Stop) {
		return
	}
	r[field] = model.Status{State: state, Text: text}
}
