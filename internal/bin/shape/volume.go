package shape

import (
	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
)

// Source names where the constants are from.
const Source = "Iowa Grain Warehouse Bureau, measuring grain"

// The constants of the official measure.
var (
	// Circle is the area of a circle in squares of its diameter.
	Circle = quantity.Of("0.7854", quantity.Plain)
	// BushelsPerCubicFoot are the bushels of grain in a cubic foot.
	BushelsPerCubicFoot = quantity.Of("0.80385", quantity.Bushel.Per(quantity.Foot.Times(quantity.Foot).Times(quantity.Foot)))
	// HLPerCubicMetre is exact.
	HLPerCubicMetre = quantity.Int(10, quantity.Hectolitre.Per(cubicMetre))

	cubicMetre = quantity.Metre.Times(quantity.Metre).Times(quantity.Metre)

	third = quantity.Int(1, quantity.Plain).Div(quantity.Int(3, quantity.Plain))
	half  = quantity.Of("0.5", quantity.Plain)
)

// area is the floor of the straight part.
func (s Shape) area() quantity.Amount {
	if s.Form == Flat {
		return s.Length.Mul(s.Width)
	}
	return s.Diameter.Mul(s.Diameter).Mul(Circle)
}

// Height is the height of level grain above the lowest point in a full bin: cone and wall; of a pile, its
// peak.
func (s Shape) Height() quantity.Amount {
	if s.Form == Pile {
		return s.Peak
	}
	return s.or0(s.Wall).Add(s.or0(s.Cone))
}

// Level is the room below a level depth, measured from the lowest point. Depths beyond the wall
// count as the wall. Of a pile it is that of a pile so high on the same slope.
func (s Shape) Level(depth quantity.Amount) quantity.Amount {
	if s.Form == Pile {
		return s.pile(quantity.Min(depth, s.Peak))
	}
	depth = quantity.Min(depth, s.Height())
	cone := s.or0(s.Cone)
	if depth.Less(cone) {
		return s.inCone(depth)
	}
	room := s.area().Mul(depth.Sub(cone))
	if s.Form == Hopper {
		room = room.Add(s.inCone(cone))
	}
	return room
}

// inCone is the room of the hopper up to a depth: a cone with the hopper's slope.
func (s Shape) inCone(depth quantity.Amount) quantity.Amount {
	share := depth.Div(s.Cone)
	return s.area().Mul(depth).Mul(third).Mul(share).Mul(share)
}

// pile is a cone on the ground of the pile's slope, so high.
func (s Shape) pile(height quantity.Amount) quantity.Amount {
	share := height.Div(s.Peak)
	return s.area().Mul(height).Mul(third).Mul(share).Mul(share)
}

// Above is the room of grain heaped above the level: a cone in a round bin, a ridge over the length
// of a flat house.
func (s Shape) Above(peak quantity.Amount) quantity.Amount {
	switch s.Form {
	case Pile:
		return quantity.Zero(s.cubic())
	case Flat:
		return s.area().Mul(peak).Mul(half)
	}
	return s.area().Mul(peak).Mul(third)
}

// Room is all that the bin holds: to the wall, and heaped to the peak.
func (s Shape) Room() quantity.Amount { return s.Level(s.Height()).Add(s.Above(s.or0(s.Peak))) }

// Filled is the height of a volume, in thousandths of the height to the wall: 1000 is full and
// level, more is not told. It is rounded down.
func (s Shape) Filled(room quantity.Amount) int {
	low, high := 0, thousand
	for low < high {
		middle := (low + high + 1) / 2
		depth := s.Height().Mul(quantity.Int(int64(middle), quantity.Plain)).Div(quantity.Int(thousand, quantity.Plain))
		if s.Level(depth).More(room) {
			high = middle - 1
		} else {
			low = middle
		}
	}
	return low
}

const thousand = 1000

// Bulk is a volume as grain is counted by it: bushels of volume for feet, hectolitres for metres.
func Bulk(room quantity.Amount) quantity.Amount {
	if room.Unit() == cubicMetre {
		return room.Mul(HLPerCubicMetre)
	}
	return room.Mul(BushelsPerCubicFoot)
}

// Weight is the weight of a volume of grain at a test weight, in lb or kg. It fails unless the test
// weight is in lb/bu for feet, or in kg/hL for metres.
func Weight(room, testWeight quantity.Amount) (quantity.Amount, error) {
	bulk := Bulk(room)
	want := quantity.LbPerBushel
	if bulk.Unit() == quantity.Hectolitre {
		want = quantity.KgPerHL
	}
	density, err := quantity.TestWeight(testWeight, want)
	if err != nil {
		return quantity.Amount{}, message.Errorf("a test weight of %s: %w", testWeight, err)
	}
	return bulk.Mul(density), nil
}

// RoomOf is the room that a weight of grain takes in the bin at a test weight.
func (s Shape) RoomOf(weight, testWeight quantity.Amount) (quantity.Amount, error) {
	one := quantity.Int(1, s.cubic())
	per, err := Weight(one, testWeight)
	if err != nil {
		return one, err
	}
	factor, err := quantity.MassFactor(weight.Unit(), per.Unit())
	if err != nil {
		return one, err
	}
	return one.Mul(weight.Mul(factor).Div(per)), nil
}
