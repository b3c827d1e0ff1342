package shape

import (
	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
)

// Form is the form of a bin.
type Form string

const (
	// Round is a round bin with a flat floor.
	Round Form = "round"
	// Hopper is a round bin whose floor is a cone, point down.
	Hopper Form = "hopper"
	// Pile is a cone of grain on the ground.
	Pile Form = "pile"
	// Flat is a rectangular house.
	Flat Form = "flat"
)

// Forms are all forms, in the order they are offered.
func Forms() []Form { return []Form{Round, Hopper, Pile, Flat} }

// Shape is the form and size of a bin. All lengths are in one unit, feet or metres; those that a
// form does not have are left out. The zero Shape is a bin that nobody measured.
type Shape struct {
	Form     Form            `json:"form,omitempty"`
	Diameter quantity.Amount `json:"diameter,omitzero"` // round, hopper, pile
	Length   quantity.Amount `json:"length,omitzero"`   // flat
	Width    quantity.Amount `json:"width,omitzero"`    // flat
	Wall     quantity.Amount `json:"wall,omitzero"`     // height of the straight wall
	Cone     quantity.Amount `json:"cone,omitzero"`     // depth of the hopper below the wall
	// Peak is the height of grain above the wall in the middle; of a pile, its height.
	Peak quantity.Amount `json:"peak,omitzero"`
}

// IsZero reports whether nobody measured the bin.
func (s Shape) IsZero() bool { return s.Form == "" }

// measure is a length of a shape with its name in sentences.
type measure struct {
	name     message.Text
	length   quantity.Amount
	required bool
}

// measures are the lengths that the form has; the others are to be left out.
func (s Shape) measures() (has, hasNot []measure) {
	diameter := measure{message.New("diameter"), s.Diameter, true}
	wall := measure{message.New("wall"), s.Wall, true}
	peak := measure{message.New("peak"), s.Peak, false}
	cone := measure{message.New("cone"), s.Cone, true}
	length := measure{message.New("length"), s.Length, true}
	width := measure{message.New("width"), s.Width, true}
	switch s.Form {
	case Round:
		return []measure{diameter, wall, peak}, []measure{cone, length, width}
	case Hopper:
		return []measure{diameter, wall, cone, peak}, []measure{length, width}
	case Pile:
		peak.required = true
		return []measure{diameter, peak}, []measure{wall, cone, length, width}
	}
	return []measure{length, width, wall, peak}, []measure{diameter, cone}
}

// longest is more than any bin measures, in either unit.
const longest = 2_000

// Check returns what is wrong with the shape, or nil. A bin that nobody measured is in order.
func (s Shape) Check() error {
	switch s.Form {
	case "":
		if s != (Shape{}) {
			return message.Invalid.Errorf("the form of the bin is not named; write round, hopper, pile or flat")
		}
		return nil
	case Round, Hopper, Pile, Flat:
	default:
		return message.Invalid.Errorf("%q is no form of a bin; write round, hopper, pile or flat", string(s.Form))
	}
	has, hasNot := s.measures()
	for _, m := range hasNot {
		if quantity.Recorded(m.length) {
			return message.Invalid.Errorf("a bin of the form %q has no %s; leave %s out", string(s.Form), m.name, m.length)
		}
	}
	for _, m := range has {
		if err := s.checkLength(m); err != nil {
			return err
		}
	}
	return nil
}

func (s Shape) checkLength(m measure) error {
	unit := s.unit()
	switch {
	case !quantity.Recorded(m.length) && m.required:
		return message.Invalid.Errorf("the %s of the bin is missing; measure it in ft or m", m.name)
	case !quantity.Recorded(m.length):
		return nil
	case m.length.Unit() != quantity.Foot && m.length.Unit() != quantity.Metre:
		return message.Invalid.Errorf("the %s of the bin is %s; write it in ft or m", m.name, m.length)
	case m.length.Unit() != unit:
		return message.Invalid.Errorf("the %s is %s, and another length of the bin is in %s; write all in one unit", m.name, m.length, unit.String())
	case m.length.Sign() <= 0 || m.length.More(quantity.Int(longest, unit)):
		return message.Invalid.Errorf("the %s is %s; a length lies above 0 and up to %s", m.name, m.length, quantity.Int(longest, unit))
	}
	return nil
}

// unit is the unit of the lengths.
func (s Shape) unit() quantity.Unit {
	if s.Form == Flat {
		return s.Length.Unit()
	}
	return s.Diameter.Unit()
}

// cubic is the unit of the shape's room.
func (s Shape) cubic() quantity.Unit {
	u := s.unit()
	return u.Times(u).Times(u)
}

// or0 is a length, or none of it where it was left out.
func (s Shape) or0(length quantity.Amount) quantity.Amount {
	if quantity.Recorded(length) {
		return length
	}
	return quantity.Zero(s.unit())
}
