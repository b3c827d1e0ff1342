package terms

import (
	"slices"

	"tenthpoint/internal/book"
	"tenthpoint/internal/law"
	"tenthpoint/internal/load"
	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/settle"
	"tenthpoint/internal/title"
)

// Undecided is one owner's part of a ticket of which nobody has said what becomes of it.
type Undecided struct {
	Ticket    int64
	Delivered quantity.Date
	Owner     string // code
	Commodity string
	Quantity  quantity.Amount // settled
	// Age is the number of days since delivery; Due the last day it may be undecided by the rules of
	// the place, the zero day where none was read.
	Age   int
	Due   quantity.Date
	Rules title.Rules
}

// IsOverdue reports whether the day by which it is to be decided has passed.
func (u Undecided) IsOverdue(on quantity.Date) bool { return !u.Due.IsZero() && u.Due.Before(on) }

// Tickets is the filter for the loads that may be undecided on a day, each with its owners.
func Tickets(day quantity.Date) book.LoadFilter {
	return book.LoadFilter{Phases: []string{string(load.Ticketed)}, ToDay: day.String(), WithOwners: true}
}

// Open is the same filter for the few of them that can have an undecided part.
func Open(day quantity.Date) book.LoadFilter {
	f := Tickets(day)
	f.Undecided = true
	return f
}

// UndecidedIn are the undecided parts among tickets in force, the oldest first, as of a day.
func UndecidedIn(rows []book.LoadRow, laws *law.Set, day quantity.Date) ([]Undecided, error) {
	var out []Undecided
	for _, r := range rows {
		if !IsDelivered(r) {
			continue
		}
		for i, owner := range OwnersOf(r) {
			one, undecided, err := undecidedPart(r, i, laws, day)
			if err != nil {
				return nil, err
			}
			if undecided {
				one.Owner = owner
				out = append(out, one)
			}
		}
	}
	slices.SortStableFunc(out, func(a, b Undecided) int { return a.Delivered.Cmp(b.Delivered) })
	return out, nil
}

// IsDelivered reports whether a ticket is of grain that came.
func IsDelivered(r book.LoadRow) bool { return r.Direction == string(load.Inbound) }

// OwnersOf are the codes of those who have a part of a ticket.
func OwnersOf(r book.LoadRow) []string {
	if len(r.Owners) == 0 {
		return []string{r.Grower}
	}
	return r.Owners
}

// PartOf is an owner's part of a settled load, counted from zero.
func PartOf(r book.LoadRow, owner int) (settle.Part, error) {
	summary, err := r.Recorded().Summary()
	if err != nil {
		return settle.Part{}, message.Errorf("ticket %d: %w", r.Ticket, err)
	}
	if owner < len(summary.Owners) {
		return summary.Owners[owner], nil
	}
	return summary.Part, nil
}

// undecidedPart is an owner's part, counted from zero, if it is undecided. A part with a price was
// sold, whatever an old book says of it.
func undecidedPart(r book.LoadRow, owner int, laws *law.Set, day quantity.Date) (one Undecided, undecided bool, err error) {
	if r.TermsOf(owner).IsDecided() {
		return one, false, nil
	}
	part, err := PartOf(r, owner)
	if err != nil {
		return one, false, err
	}
	if part.Price != nil {
		return one, false, nil
	}
	delivered, err := quantity.ParseDate(r.Day)
	if err != nil {
		return one, false, err
	}
	rules, err := title.RulesIn(laws.On(delivered))
	return Undecided{
		Ticket: r.Ticket, Delivered: delivered, Commodity: r.Commodity, Quantity: part.Quantity,
		Age: delivered.DaysUntil(day), Due: rules.Due(delivered), Rules: rules,
	}, true, err
}
