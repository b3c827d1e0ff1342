package yard

import (
	"tenthpoint/internal/load"
	"tenthpoint/ui/session"
)

// trailer is the second draft of a truck and its trailer weighed apart; the
// truck's own draft has no name.
const trailer = "trailer"

// draftsAsked are the drafts the form asks for: the truck's own, and that of its
// trailer.
func (f *LoadForm) draftsAsked() []string {
	if f.split {
		return []string{"", trailer}
	}
	return []string{""}
}

// CanSplit reports whether the trailer may still be weighed apart.
func (f *LoadForm) CanSplit() bool { return len(f.form.Drafts()) == 1 }

// Split asks for the weights of a trailer beside those of its truck.
func (f *LoadForm) Split() {
	f.split = true
	f.Work()
	f.jot()
}

// weightHint says where a weight came from, or offers a stored tare.
func (f *LoadForm) weightHint(l *load.Load, which load.Which, of string) string {
	w, ok := l.Weight(which, of)
	switch {
	case ok && w.Source == load.ByHand:
		return session.Say("typed by hand")
	case ok && w.Source == load.StoredTare:
		return session.Say("stored tare of %s", w.Weighing.Taken)
	case ok:
		return session.Say("from scale %s", w.Scale)
	}
	if which == load.Tare && of == "" {
		if t, stored := f.storedTare(); stored {
			return session.Say("stored: %s of %s", t.Tare.Figure(), t.Taken)
		}
	}
	return ""
}
