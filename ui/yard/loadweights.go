package yard

import (
	"fmt"
	"slices"
	"strings"

	"tenthpoint/internal/load"
	"tenthpoint/internal/quantity"
	"tenthpoint/ui/model"
	"tenthpoint/ui/session"
)

// trailer is the second draft of a truck and its trailer weighed apart; the
// truck's own draft has no name.
const trailer = "trailer"

// weightID is the field of one side of a draft.
func weightID(which load.Which, draft string) string {
	if draft == "" {
		return string(which)
	}
	return string(which) + "." + draft
}

// sideOf is the side and the draft of a weight's field.
func sideOf(id string) (which load.Which, draft string, isWeight bool) {
	side, draft, _ := strings.Cut(id, ".")
	which = load.Which(side)
	return which, draft, which == load.Gross || which == load.Tare
}

// drafts are the names of the drafts the load is weighed in.
func (f *LoadForm) drafts() []string {
	drafts := []string{""}
	if f.split {
		drafts = append(drafts, trailer)
	}
	for _, name := range f.inBook().Drafts() {
		if !slices.Contains(drafts, name) {
			drafts = append(drafts, name)
		}
	}
	return drafts
}

// CanSplit reports whether the trailer may still be weighed apart.
func (f *LoadForm) CanSplit() bool { return len(f.drafts()) == 1 }

// Split asks for the weights of a trailer beside those of its truck.
func (f *LoadForm) Split() {
	f.split = true
	f.Work()
	f.jot()
}

// weightLines are one side of every draft.
func (f *LoadForm) weightLines(which load.Which) []line {
	var lines []line
	for _, draft := range f.drafts() {
		lines = append(lines, f.weightLine(which, draft))
	}
	return lines
}

// missWeights marks what is still to be weighed, draft by draft.
func (f *LoadForm) missWeights() {
	for _, draft := range f.drafts() {
		for _, which := range []load.Which{load.Gross, load.Tare} {
			delete(f.Now.missing, weightID(which, draft))
			if _, weighed := f.Now.Load.Weight(which, draft); !weighed {
				f.Now.missing[weightID(which, draft)] = true
			}
		}
	}
}

func (f *LoadForm) weightLine(which load.Which, of string) line {
	label := session.Say("Gross")
	if which == load.Tare {
		label = session.Say("Tare")
	}
	if of != "" {
		label = session.Say("%s, %s", label, session.Say(of))
	}
	return line{
		ID: weightID(which, of), label: label, unit: f.session.Desk.Profile().WeightUnit().String(),
		kind: model.FigureField, Part: model.WeightPart, chars: 8,
		Shown: func(l *load.Load) string {
			if w, ok := l.Weight(which, of); ok {
				return w.Weight.Figure()
			}
			return ""
		},
		hint: func(l *load.Load) string { return f.weightHint(l, which, of) },
		read: func(text string, d *draft) (string, error) {
			w, err := f.weighing(which, of, label, text)
			if err == nil {
				d.weighed = append(d.weighed, w)
			}
			return "", err
		},
	}
}

// weighing reads a typed weight. It is held against the scale: what the scale
// cannot have shown was not weighed on it.
func (f *LoadForm) weighing(which load.Which, draft, label, text string) (load.Weighing, error) {
	s, ok := f.session.Scale()
	if !ok {
		return load.Weighing{}, fmt.Errorf("%s", session.Say("No scale is set up. Add one in the set-up"))
	}
	if _, weighed := f.inBook().Weight(which, draft); weighed && text == "" {
		return load.Weighing{}, fmt.Errorf("%s", session.Say("A weight once taken can be replaced, not taken away. Type the other weight, or press Escape"))
	}
	unit := s.Division.Unit()
	field := quantity.Field{
		Name: label, Unit: unit, Places: session.WeightPlaces(s),
		Min: quantity.Zero(unit), Max: quantity.Int(9_999_999, unit),
	}
	a, err := field.Parse(text)
	if err != nil {
		return load.Weighing{}, err
	}
	if err := s.CheckWeight(a); err != nil {
		return load.Weighing{}, fmt.Errorf("%s: %w", label, err)
	}
	return load.Weighing{
		Which: which, Draft: draft, Weight: a, Source: load.ByHand, Scale: s.ID,
		Reason: f.reasonFor(weightID(which, draft)), DriverOn: f.driverOn,
	}, nil
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
