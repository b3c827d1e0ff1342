package yard

import (
	"slices"
	"strconv"

	"tenthpoint/internal/scalehouse"
	"tenthpoint/ui/session"
)

// The names of the yard's texts in its draft.
const (
	HandText  = "load"
	placeText = "place."
)

// takeBack puts trucks where they stood before the program stopped, and answers
// which of them was in hand.
func (y *Yard) takeBack() (hand string) {
	texts := y.session.Drafts().TypedBefore(session.DraftAt{Place: session.InHand, ID: "yard"})
	for place, id := range session.CutAll(texts, placeText) {
		if n, err := strconv.Atoi(place); err == nil && n > 0 && n <= yardPlaces && !slices.Contains(y.places[:], id) {
			y.places[n-1] = id
		}
	}
	return texts[HandText]
}

// formsBack makes the forms on which something was typed before the program
// stopped.
func (y *Yard) formsBack() {
	for _, id := range y.session.Drafts().TypedBeforeAt(scalehouse.DraftOfLoad) {
		if l := y.find(id); l != nil {
			y.form(l)
		}
	}
}

// jot keeps where the trucks stand and which is in hand.
func (y *Yard) jot() {
	texts := map[string]string{}
	for i, id := range y.places {
		if id != "" {
			texts[placeText+strconv.Itoa(i+1)] = id
		}
	}
	if y.hand.id != "" {
		texts[HandText] = y.hand.id
	}
	y.session.Drafts().Jot(session.DraftAt{Place: session.InHand, ID: "yard"}, texts)
}
