package daysheet

import (
	"fmt"
	"slices"
	"strings"

	"tenthpoint/internal/quantity"
)

// PartOf is the ticket as far as one grower owns it: the lines are that owner's
// own, as the settlement parted them; moisture, test results and price are the
// load's. False is a ticket in which the grower has no part, be it one the
// grower only drove in.
func (t Ticket) PartOf(grower string) (Ticket, bool) {
	if len(t.Owners) == 0 {
		return t, t.GrowerID == grower
	}
	at := slices.Index(t.Owners, grower)
	if at < 0 {
		return t, false
	}
	if len(t.Owners) > 1 {
		t.Figures = t.shareFigures(at + 1)
	}
	part := ""
	if at < len(t.Parts) {
		part = t.Parts[at]
	}
	t.Owners, t.Parts = []string{grower}, []string{part}
	return t, true
}

// shareFigures are the lines of the n-th owner under the names of the whole
// ticket's lines.
func (t Ticket) shareFigures(n int) map[string]quantity.Amount {
	out := map[string]quantity.Amount{}
	prefix := fmt.Sprintf("share.%d.", n)
	for id, a := range t.Figures {
		if own, isShare := strings.CutPrefix(id, prefix); isShare {
			out[own] = a
		} else if id == "moisture" || id == "price" || strings.HasPrefix(id, "factor.") {
			out[id] = a
		}
	}
	return out
}

// share is what the grower has of a load, in words.
func (t Ticket) share() string {
	if len(t.Parts) == 0 || t.Parts[0] == "" {
		return "all"
	}
	return t.Parts[0]
}

// takenOff is everything between net and settled: dockage, water, handling and
// what discounts take in weight.
func (t Ticket) takenOff() quantity.Amount { return t.net().Sub(t.moves()) }
