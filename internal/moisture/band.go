package moisture

import (
	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
)

// Band is the range of the true moisture: the recorded reading and the meter's tolerance to either
// side.
type Band struct {
	Reading   quantity.Amount // %
	Low, High quantity.Amount // %
}

// BandOf widens a reading by a tolerance in points. An unstated tolerance makes a band of no width;
// see [Band.Stated].
func BandOf(reading, tolerance quantity.Amount) Band {
	if !quantity.Recorded(tolerance) {
		return Band{reading, reading, reading}
	}
	t := tolerance.In(quantity.Percent)
	return Band{reading, reading.Sub(t), reading.Add(t)}
}

// Stated reports whether a tolerance is known.
func (b Band) Stated() bool { return b.High.More(b.Low) }

// Straddles reports whether the limit lies inside the band: the reading alone cannot tell which
// side the grain is on. A reading at the limit counts as below, since limits are highest moistures.
func (b Band) Straddles(limit quantity.Amount) bool {
	return !b.Low.More(limit) && b.High.More(limit)
}

// String is the band for people: "14.2 %, 13.7 % to 14.7 %".
func (b Band) String() string { return b.Message().String() }

// Message is the band for people.
func (b Band) Message() message.Text {
	if !b.Stated() {
		return message.New("%s", b.Reading.FixedString(1))
	}
	return message.New("%s, %s to %s", b.Reading.FixedString(1), b.Low.FixedString(1), b.High.FixedString(1))
}
