package rule

import (
	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
)

// Band is one row of a table: a range of a factor and the figure that belongs to it. The keys in
// the file say which ends belong to it: "over" and "under" exclude the end, "from" and "upto"
// include it.
type Band struct {
	Low, High     quantity.Amount
	HasLow, LowIn bool // no low end: from the bottom of the scale
	HasHigh       bool // no high end: to the top of the scale
	HighIn        bool
	Cell          Cell
	Direction     Direction // of a discount
	Refuse        bool      // the row turns the load away
}

// Direction says whether a discount takes from the grower or pays.
type Direction string

const (
	// Docks takes from the grower.
	Docks Direction = "discount"
	// Pays is a premium to the grower.
	Pays Direction = "premium"
)

// Contains reports whether a value is in the band.
func (b Band) Contains(a quantity.Amount) bool {
	if b.HasLow {
		if c := a.Cmp(b.Low); c < 0 || c == 0 && !b.LowIn {
			return false
		}
	}
	if b.HasHigh {
		if c := a.Cmp(b.High); c > 0 || c == 0 && !b.HighIn {
			return false
		}
	}
	return true
}

// TakesMore reports whether the row takes more of the grower than another does; a premium takes less
// than nothing. Figures in two units are not compared.
func (b Band) TakesMore(than Band) bool {
	x, y := b.taken(), than.taken()
	switch {
	case !than.Cell.Given():
		return x.Sign() > 0
	case !b.Cell.Given():
		return y.Sign() < 0
	}
	return x.Unit() == y.Unit() && x.More(y)
}

func (b Band) taken() quantity.Amount {
	if b.Direction == Pays {
		return b.Cell.Amount.Neg()
	}
	return b.Cell.Amount
}

// Same reports whether two bands are one row of a table, whose rows do not overlap.
func (b Band) Same(o Band) bool {
	return b.HasLow == o.HasLow && b.HasHigh == o.HasHigh && b.LowIn == o.LowIn && b.HighIn == o.HighIn &&
		(!b.HasLow || b.Low.Equal(o.Low)) && (!b.HasHigh || b.High.Equal(o.High))
}

// String is the range in the words of the file: "over 15 % up to 20 %".
func (b Band) String() string {
	return b.Message().String()
}

// Message is the range.
func (b Band) Message() message.Text {
	low, high := b.Low.Written(), b.High.Written()
	switch {
	case !b.HasLow && !b.HasHigh:
		return message.New("any value")
	case !b.HasLow && b.HighIn:
		return message.New("up to %s", high)
	case !b.HasLow:
		return message.New("under %s", high)
	case !b.HasHigh && b.LowIn:
		return message.New("from %s", low)
	case !b.HasHigh:
		return message.New("over %s", low)
	case b.LowIn && b.HighIn:
		return message.New("from %s up to %s", low, high)
	case b.LowIn:
		return message.New("from %s under %s", low, high)
	case b.HighIn:
		return message.New("over %s up to %s", low, high)
	}
	return message.New("over %s under %s", low, high)
}

// Find returns the band of a value; bands do not overlap.
func Find(bands []Band, a quantity.Amount) (Band, bool) {
	for _, b := range bands {
		if b.Contains(a) {
			return b, true
		}
	}
	return Band{}, false
}

// seam returns what is wrong between two neighboring bands, or nothing.
func seam(lower, upper Band) message.Text {
	switch {
	case !lower.HasHigh || !upper.HasLow:
		return message.New("%s overlaps %s", lower, upper)
	case lower.High.Less(upper.Low):
		return message.New("nothing is said between %s and %s", lower, upper)
	case lower.High.More(upper.Low):
		return message.New("%s overlaps %s", lower, upper)
	case lower.HighIn && upper.LowIn:
		return message.New("%s belongs to both %s and %s", lower.High.Written(), lower, upper)
	case !lower.HighIn && !upper.LowIn:
		return message.New("%s belongs to neither %s nor %s", lower.High.Written(), lower, upper)
	}
	return message.Text{}
}
