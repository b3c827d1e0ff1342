package published

import (
	"cmp"
	"slices"

	"tenthpoint/internal/elevator"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/rates"
)

// Growers are the growers of a site on a day, by code: its own, and in the place of theirs the cards
// of the office.
func Growers(own []elevator.Grower, received []Received, day quantity.Date) []elevator.Grower {
	if len(received) == 0 {
		return own
	}
	all := slices.Clone(own)
	for _, r := range InForce(received, day) {
		if r.Grower == nil {
			continue
		}
		if i := slices.IndexFunc(all, func(g elevator.Grower) bool { return g.ID == r.Grower.ID }); i >= 0 {
			all[i] = *r.Grower
		} else {
			all = append(all, *r.Grower)
		}
	}
	slices.SortStableFunc(all, func(a, b elevator.Grower) int { return cmp.Compare(a.ID, b.ID) })
	return all
}

// Editions are the editions of the office as a site settles by them: each from the day it was
// published for until the day before it was withdrawn. Read reads the text of a hash, which the
// site's book keeps.
func Editions(received []Received, read func(hash string) (*rates.Edition, error)) ([]*rates.Edition, error) {
	var out []*rates.Edition
	for _, r := range received {
		if r.Edition == nil || r.Withdrawn != "" {
			continue
		}
		e, err := read(r.Edition.Hash)
		if err != nil {
			return nil, err
		}
		here := *e
		if here.From.Before(r.From) {
			here.From = r.From
		}
		if end, ends := withdrawal(received, r); ends {
			here.Until = end.AddDays(-1)
		}
		if here.Until.IsZero() || !here.Until.Before(here.From) {
			out = append(out, &here)
		}
	}
	return out, nil
}

// withdrawal is the first day on which an edition holds no longer.
func withdrawal(received []Received, of Received) (day quantity.Date, ends bool) {
	for _, r := range received {
		if r.Of() == of.Of() && r.Withdrawn != "" && (!ends || r.From.Before(day)) {
			day, ends = r.From, true
		}
	}
	return day, ends
}
