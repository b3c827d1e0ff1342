package entry

import (
	"slices"
	"strings"

	"tenthpoint/internal/elevator"
	"tenthpoint/internal/load"
	"tenthpoint/internal/message"
)

// StoredTareText in the field of the tare takes the truck's tare of an earlier
// weighing.
const StoredTareText = "stored"

// WeightID is the field of one side of a draft; a single draft has no name.
func WeightID(which load.Which, draft string) string {
	if draft == "" {
		return string(which)
	}
	return string(which) + "." + draft
}

// SideOf is the side and the draft of a weight's field.
func SideOf(id string) (which load.Which, draft string, isWeight bool) {
	side, draft, _ := strings.Cut(id, ".")
	which = load.Which(side)
	return which, draft, which == load.Gross || which == load.Tare
}

// Drafts returns the names of the drafts the load is weighed in: those asked for, those in the
// book, and those typed.
func (f *Form) Drafts() []string {
	names := slices.Concat(f.start.Drafts, f.book().Drafts())
	for _, id := range f.order {
		if _, draft, isWeight := SideOf(id); isWeight {
			names = append(names, draft)
		}
	}
	var drafts []string
	for _, name := range names {
		if !slices.Contains(drafts, name) {
			drafts = append(drafts, name)
		}
	}
	if len(drafts) == 0 || slices.Contains(f.start.Drafts, "") {
		drafts = slices.Concat([]string{""}, slices.DeleteFunc(drafts, func(name string) bool { return name == "" }))
	}
	return drafts
}

// weightFields are one side of every draft.
func (f *Form) weightFields(which load.Which) []Field {
	var out []Field
	for _, draft := range f.Drafts() {
		out = append(out, f.weightField(which, draft))
	}
	return out
}

func (f *Form) weightField(which load.Which, of string) Field {
	label := "Gross"
	if which == load.Tare {
		label = "Tare"
	}
	if of != "" {
		label += ", " + of
	}
	return Field{
		ID: WeightID(which, of), Label: label, Unit: f.house.Profile().WeightUnit(), Kind: Figure, Part: WeightPart,
		shown: func(l *load.Load) string {
			if w, ok := l.Weight(which, of); ok {
				return w.Weight.Figure()
			}
			return ""
		},
		read: func(d *draft, text string) error {
			w, err := f.weighing(d, which, of, label, text)
			if err == nil {
				d.weighed = append(d.weighed, w)
			}
			return err
		},
	}
}

// ErrWeightStays is why a weight in the book cannot be typed away.
var ErrWeightStays = message.Refused.Errorf("A weight once taken can be replaced, not taken away. Type the other weight, or press Escape")

// ErrNoScale is why nothing can be weighed.
var ErrNoScale = message.NotFound.Errorf("No scale is set up. Add one in the set-up")

// weighing reads a typed weight as one of the scale in use.
func (f *Form) weighing(d *draft, which load.Which, of, label, text string) (load.Weighing, error) {
	if which == load.Tare && strings.EqualFold(text, StoredTareText) {
		return f.storedTare(d, of)
	}
	if f.start.Past {
		a, err := ParseWeight(label, text, f.house.Profile().WeightUnit())
		return load.Weighing{Which: which, Draft: of, Weight: a, Source: load.ByHand, Reason: f.start.reason(string(which))}, err
	}
	s, ok := f.scale(d)
	if !ok {
		return load.Weighing{}, ErrNoScale
	}
	if _, weighed := f.book().Weight(which, of); weighed && text == "" {
		return load.Weighing{}, ErrWeightStays
	}
	a, err := ParseScaleWeight(label, text, s)
	return load.Weighing{
		Which: which, Draft: of, Weight: a, Source: load.ByHand, Scale: s.ID,
		Reason: f.start.reason(WeightID(which, of)), DriverOn: f.start.DriverOn,
	}, err
}

// scale is the scale in use: the one typed, the one of the desk, or the first.
func (f *Form) scale(d *draft) (elevator.Scale, bool) {
	p := f.house.Profile()
	for _, id := range []string{d.scale, f.start.Scale} {
		if s, known := p.Scale(id); known {
			return s, true
		}
	}
	if len(p.Scales) == 0 {
		return elevator.Scale{}, false
	}
	return p.Scales[0], true
}

// scaleField names the scale, where there are several.
func (f *Form) scaleField() Field {
	return Field{
		ID: "scale", Label: "Scale", Kind: Find, Part: WeightPart, Seldom: true,
		read: func(d *draft, text string) error {
			if _, known := f.house.Profile().Scale(text); !known && text != "" {
				return Unknown{List: ScaleList, Text: text}
			}
			d.scale = text
			return nil
		},
	}
}

// NoStoredTare is a truck whose tare is not on the list.
type NoStoredTare struct{ Truck string }

// Error says what to do instead.
func (e NoStoredTare) Error() string { return e.Message().String() }

// Message says what to do instead.
func (e NoStoredTare) Message() message.Text {
	return message.New("Truck %v has no stored tare. Weigh it empty", e.Truck)
}

// storedTare is the truck's tare from an earlier weighing, in the unit of the elevator's scales.
func (f *Form) storedTare(d *draft, of string) (load.Weighing, error) {
	t, ok, err := StoredTare(f.house, d.details.Truck)
	if err != nil {
		return load.Weighing{}, err
	}
	if !ok {
		return load.Weighing{}, NoStoredTare{truckCode(d.details.Truck)}
	}
	return load.Weighing{Which: load.Tare, Draft: of, Weight: *t.Tare, Source: load.StoredTare, Taken: t.Taken}, nil
}

// StoredTare returns the truck of a load, if it has a tare stored in the unit of the elevator's
// scales.
func StoredTare(h House, truck load.Truck) (elevator.Truck, bool, error) {
	all, err := h.Trucks()
	for _, t := range all {
		if t.ID == truck.ID && t.Tare != nil && t.Tare.Unit() == h.Profile().WeightUnit() {
			return t, true, nil
		}
	}
	return elevator.Truck{}, false, err
}
