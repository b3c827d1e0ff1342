package daysheet

import (
	"slices"
	"tenthpoint/internal/message"
)

// PartOf returns the ticket as far as one grower owns it: the lines are that owner's own part of
// the settlement; moisture, test results and price are the load's. It returns false for a ticket in
// which the grower has no part, even one the grower only drove in.
func (t Ticket) PartOf(grower string) (Ticket, bool) {
	if len(t.Owners) == 0 {
		return t, t.GrowerID == grower
	}
	at := slices.Index(t.Owners, grower)
	if at < 0 {
		return t, false
	}
	if len(t.Owners) > 1 {
		own, err := t.Summary.Of(at + 1)
		if err != nil {
			return t, false
		}
		t.Summary = own
		if at < len(t.Titles) {
			t.Titles = t.Titles[at : at+1]
		}
	}
	part := ""
	if at < len(t.Parts) {
		part = t.Parts[at]
	}
	t.Owners, t.Parts = []string{grower}, []string{part}
	return t, true
}

// share returns the grower's share of a load, in words.
func (t Ticket) share() message.Text {
	if len(t.Parts) == 0 || t.Parts[0] == "" {
		return message.New("all")
	}
	return message.Name(t.Parts[0])
}
