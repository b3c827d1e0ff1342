package present

import (
	"fmt"

	"tenthpoint/internal/house"
	"tenthpoint/internal/load"
	"tenthpoint/internal/quantity"
)

// scale is the scale loads are weighed on here.
func (f *Frame) scale() (house.Scale, bool) {
	scales := f.Desk.Profile().Scales
	if len(scales) == 0 {
		return house.Scale{}, false
	}
	return scales[0], true
}

func (f *LoadForm) weightLine(which load.Which) line {
	label := Say("Gross")
	if which == load.Tare {
		label = Say("Tare")
	}
	return line{
		id: string(which), label: label, unit: f.frame.Desk.Profile().WeightUnit().String(),
		kind: FigureField, part: WeightPart, chars: 8,
		shown: func(l *load.Load) string {
			if w, ok := l.Weight(which, ""); ok {
				return w.Weight.Figure()
			}
			return ""
		},
		hint: func(l *load.Load) string { return f.weightHint(l, which) },
		read: func(text string, d *draft) (string, error) {
			w, err := f.weighing(which, label, text)
			if err == nil {
				d.weighed = append(d.weighed, w)
			}
			return "", err
		},
	}
}

// weighing reads a typed weight. It is held against the scale: what the scale
// cannot have shown was not weighed on it.
func (f *LoadForm) weighing(which load.Which, label, text string) (load.Weighing, error) {
	s, ok := f.frame.scale()
	if !ok {
		return load.Weighing{}, fmt.Errorf("%s", Say("No scale is set up. Add one in the set-up"))
	}
	if _, weighed := f.inBook().Weight(which, ""); weighed && text == "" {
		return load.Weighing{}, fmt.Errorf("%s", Say("A weight once taken can be replaced, not taken away. Type the other weight, or press Escape"))
	}
	unit := s.Division.Unit()
	field := quantity.Field{
		Name: label, Unit: unit, Places: weightPlaces(s),
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
		Which: which, Weight: a, Source: load.ByHand, Scale: s.ID,
		Reason: f.reasonFor(which),
	}, nil
}

// weightHint says where a weight came from, or offers a stored tare.
func (f *LoadForm) weightHint(l *load.Load, which load.Which) string {
	w, ok := l.Weight(which, "")
	switch {
	case ok && w.Source == load.ByHand:
		return Say("typed by hand")
	case ok && w.Source == load.StoredTare:
		return Say("stored tare of %s", w.Weighing.Taken)
	case ok:
		return Say("from scale %s", w.Scale)
	}
	if which == load.Tare {
		if t, stored := f.storedTare(); stored {
			return Say("stored: %s of %s", t.Tare.Figure(), t.Taken)
		}
	}
	return ""
}

// storedTare is the load's truck, if it has a tare stored in the unit of the
// scale.
func (f *LoadForm) storedTare() (house.Truck, bool) {
	t, ok := f.frame.known().truck(f.now.load.Details.Truck.ID)
	unit := f.frame.Desk.Profile().WeightUnit()
	return t, ok && t.Tare != nil && t.Tare.Unit() == unit
}

// CanUseStoredTare reports whether the load's truck has a stored tare that is
// not in use already.
func (f *LoadForm) CanUseStoredTare() bool {
	_, stored := f.storedTare()
	w, weighed := f.now.load.Weight(load.Tare, "")
	return stored && !(weighed && w.Source == load.StoredTare)
}

// UseStoredTare takes the truck's stored tare for this load.
func (f *LoadForm) UseStoredTare() error {
	if err := f.Commit(); err != nil {
		return err
	}
	t, ok := f.storedTare()
	if !ok {
		return fmt.Errorf("%s", Say("Truck %s has no stored tare. Weigh it empty", truckText(f.now.load.Details.Truck)))
	}
	delete(f.typed, string(load.Tare))
	_, err := f.write(&draft{weighed: []load.Weighing{{
		Which: load.Tare, Weight: *t.Tare, Source: load.StoredTare, Taken: t.Taken,
	}}})
	if err != nil {
		return err
	}
	f.frame.Say(OK, Say("Stored tare %s of %s is used for truck %s.", t.Tare, t.Taken, t.ID))
	f.frame.window.Redraw()
	return f.Reload()
}

// weightPlaces is how many decimals a weight of the scale may have: as many as
// its division.
func weightPlaces(s house.Scale) int32 {
	step, whole := s.Division.Decimal()
	if !whole {
		return 0
	}
	return quantity.Rounding{Step: step, Rule: quantity.Down}.Places()
}
