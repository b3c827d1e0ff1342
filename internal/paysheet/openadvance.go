package paysheet

import "slices"

// OpenAdvance is an advance that the books before paid, by its number among the opening balances.
type OpenAdvance struct {
	Number int64
	Grower string
	Advance
}

// AdvanceTakenBy is the sheet in force that takes an advance of the books before.
func AdvanceTakenBy(sheets []Sheet, number int64) (Sheet, bool) {
	at := slices.IndexFunc(sheets, func(s Sheet) bool {
		return s.InForce() && slices.ContainsFunc(s.Advances, func(a Advance) bool { return a.Opening == number })
	})
	if at < 0 {
		return Sheet{}, false
	}
	return sheets[at], true
}

// StillOpen are the advances of a grower that no sheet has taken.
func StillOpen(all []OpenAdvance, sheets []Sheet, grower string) []Advance {
	var out []Advance
	for _, a := range all {
		if _, taken := AdvanceTakenBy(sheets, a.Number); a.Grower == grower && !taken {
			a.Opening = a.Number
			out = append(out, a.Advance)
		}
	}
	return out
}
