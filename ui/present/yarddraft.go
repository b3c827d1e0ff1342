package present

import (
	"slices"
	"strconv"

	"tenthpoint/internal/desk"
)

// inHand is the draft of what is in hand at a screen, and where things stand.
const inHand = "in hand"

// The names of the yard's texts in its draft.
const (
	handText  = "load"
	placeText = "place."
)

// takeBack puts trucks where they stood before the program stopped, and answers
// which of them was in hand.
func (y *Yard) takeBack() (hand string) {
	texts := y.frame.Drafts().typedBefore(draftAt{inHand, "yard"})
	for place, id := range cutAll(texts, placeText) {
		if n, err := strconv.Atoi(place); err == nil && n > 0 && n <= yardPlaces && !slices.Contains(y.places[:], id) {
			y.places[n-1] = id
		}
	}
	return texts[handText]
}

// formsBack makes the forms on which something was typed before the program
// stopped.
func (y *Yard) formsBack() {
	for _, id := range y.frame.Drafts().typedBeforeAt(desk.DraftOfLoad) {
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
		texts[handText] = y.hand.id
	}
	y.frame.Drafts().jot(draftAt{inHand, "yard"}, texts)
}
