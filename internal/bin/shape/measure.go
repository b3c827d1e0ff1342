package shape

import (
	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
)

// Measure is the readings in a bin with tape and scale: how deep the grain stands at the wall,
// how high it is heaped, what a bushel of it weighs, how much it is packed.
type Measure struct {
	// Depth is the level depth at the wall, from the lowest point of the bin. A pile has none.
	Depth quantity.Amount `json:"depth,omitzero"`
	// Peak is the height of the heap above the level in the middle, below zero where it was
	// drawn down into a cone. Not measured, the peak of dry clean grain is taken where PeakGuessed.
	Peak quantity.Amount `json:"peak,omitzero"`
	// PeakGuessed takes the official height of a peak that nobody could measure.
	PeakGuessed bool            `json:"peak_guessed,omitempty"`
	TestWeight  quantity.Amount `json:"test_weight"`
	// Pack is the gain in density of grain in the bin over the tester's kettle, in percent, by
	// the table that PackSource names.
	Pack       quantity.Amount `json:"pack,omitzero"`
	PackSource string          `json:"pack_source,omitempty"`
}

// Result is a measure worked out, line by line.
type Result struct {
	Level, Peaked quantity.Amount // room below the level, and above it
	Room, Bulk    quantity.Amount
	Loose, Packed quantity.Amount // weight without pack, and with it
}

// guessed are the heights of the peak of dry clean grain in parts of the radius.
var guessed = map[string]quantity.Amount{
	"corn":     quantity.Of("0.4", quantity.Plain),
	"soybeans": quantity.Of("0.5", quantity.Plain),
}

// mostPack is more than any table of pack gives.
var mostPack = quantity.Int(20, quantity.Percent)

// Work works a measure out for a commodity. It fails for what cannot be in this bin.
func (s Shape) Work(m Measure, commodity string) (Result, error) {
	if s.IsZero() {
		return Result{}, message.Refused.Errorf("the bin was never measured; write its form and size down first, with tenth bin add")
	}
	if err := s.checkMeasure(m); err != nil {
		return Result{}, err
	}
	peak := s.or0(m.Peak)
	if m.PeakGuessed {
		part, known := guessed[commodity]
		if !known || s.Form == Flat || s.Form == Pile {
			return Result{}, message.Refused.Errorf("no height of a peak was read for %s in a bin of the form %q; measure it", message.Words(commodity), string(s.Form))
		}
		peak = s.Diameter.Mul(half).Mul(part)
	}
	r := Result{Level: s.Level(s.or0(m.Depth)), Peaked: s.Above(peak)}
	if s.Form == Pile {
		r.Level = s.pile(peak)
	}
	r.Room = r.Level.Add(r.Peaked)
	if r.Room.Sign() < 0 {
		return Result{}, message.Invalid.Errorf("a hole of %s is deeper than grain standing %s; measure again", peak, m.Depth)
	}
	r.Bulk = Bulk(r.Room)
	var err error
	if r.Loose, err = Weight(r.Room, m.TestWeight); err != nil {
		return r, err
	}
	r.Packed = r.Loose
	if quantity.Recorded(m.Pack) {
		hundred := quantity.Int(100, quantity.Percent)
		r.Packed = r.Loose.Mul(hundred.Add(m.Pack)).Div(hundred)
	}
	return r, nil
}

func (s Shape) checkMeasure(m Measure) error {
	for _, length := range []quantity.Amount{m.Depth, m.Peak} {
		if quantity.Recorded(length) && length.Unit() != s.unit() {
			return message.Invalid.Errorf("%s is not in %s, in which the bin is measured", length, s.unit().String())
		}
	}
	depth := s.or0(m.Depth)
	switch {
	case s.Form == Pile && (quantity.Recorded(m.Depth) || m.Peak.Sign() <= 0):
		return message.Invalid.Errorf("a pile is measured by its height alone; write it as the peak")
	case depth.Sign() < 0 || s.Form != Pile && depth.More(s.Height()):
		return message.Invalid.Errorf("grain stands %s deep and the bin is %s high to the eave; measure again", depth, s.Height())
	case s.Form == Pile && m.Peak.More(s.Peak):
		return message.Invalid.Errorf("the pile is %s high and its full height is %s; write the size of the pile down anew", m.Peak, s.Peak)
	case m.PeakGuessed && quantity.Recorded(m.Peak):
		return message.Invalid.Errorf("the peak is measured, %s, and is not to be guessed as well", m.Peak)
	case m.TestWeight.Sign() <= 0:
		return message.Invalid.Errorf("a measure needs the test weight of the grain, such as 56 lb/bu")
	case quantity.Recorded(m.Pack) && (m.Pack.Unit() != quantity.Percent || m.Pack.Sign() < 0 || m.Pack.More(mostPack)):
		return message.Invalid.Errorf("a pack of %s cannot be; it lies from 0 %% to %s", m.Pack, mostPack)
	case quantity.Recorded(m.Pack) && m.PackSource == "":
		return message.Invalid.Errorf("a pack of %s is of some table; name it, for no table is built in", m.Pack)
	}
	return nil
}
