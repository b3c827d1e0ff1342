package rule

import (
	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/tomlfile"
)

// ReadBand reads the two ends of a row. "over" and "under" leave the end out,
// "from" and "upto" take it in. A range that cannot be read comes back without
// ends, and is compared with no other.
func ReadBand(t *tomlfile.Table, units ...quantity.Unit) Band {
	low, high := readEnd(t, "from", "over", units), readEnd(t, "upto", "under", units)
	b := Band{
		Low: low.at, LowIn: low.isIn, HasLow: low.found,
		High: high.at, HighIn: high.isIn, HasHigh: high.found,
	}
	switch {
	case low.broken || high.broken:
	case !b.HasLow && !b.HasHigh:
		t.AddProblem("", message.New("%s says no range", t.Name("")), message.New("Give it from or over, and upto or under; only the first row may lack a low end and only the last a high end."))
	case b.HasLow && b.HasHigh && b.Low.Unit() != b.High.Unit():
		t.AddProblem("", message.New("%s runs from %s to %s", t.Name(""), b.Low.Written(), b.High.Written()), message.New("Write both ends in one unit."))
	case b.isEmpty():
		t.AddProblem("", message.New("%s holds no value at all: %s", t.Name(""), b), message.New("Swap the two ends or mend them."))
	default:
		return b
	}
	return Band{}
}

// isEmpty reports whether no value is in the band.
func (b Band) isEmpty() bool {
	if !b.HasLow || !b.HasHigh {
		return false
	}
	c := b.High.Cmp(b.Low)
	return c < 0 || c == 0 && !(b.LowIn && b.HighIn)
}

// rangeEnd is one end of a row as read: broken when it is present but invalid, which has then been
// reported.
type rangeEnd struct {
	at                  quantity.Amount
	isIn, found, broken bool
}

func readEnd(t *tomlfile.Table, in, out string, units []quantity.Unit) rangeEnd {
	closed, hasClosed := t.OptionalAmount(in, units...)
	open, hasOpen := t.OptionalAmount(out, units...)
	switch {
	case hasClosed && hasOpen:
		t.AddProblem(out, message.New("%s has both %v and %v", t.Name(""), in, out), message.New("Keep %v if %s belongs to the row, %v if it does not.", in, closed.Written(), out))
		return rangeEnd{broken: true}
	case hasClosed:
		return rangeEnd{at: closed, isIn: true, found: true}
	case hasOpen:
		return rangeEnd{at: open, found: true}
	}
	return rangeEnd{broken: t.Has(in) || t.Has(out)}
}

// Unit is the unit the band is written in, if it could be read.
func (b Band) Unit() (quantity.Unit, bool) {
	if b.HasHigh {
		return b.High.Unit(), true
	}
	return b.Low.Unit(), b.HasLow
}

// CheckBands requires that rows are in order and that neighbors meet: no gap, no overlap, and every
// end belonging to one row only.
func CheckBands(t *tomlfile.Table, key string, rows []*tomlfile.Table, bands []Band) {
	if len(bands) == 0 && !t.Has(key) {
		t.AddProblem("", message.New("%s has no rows", t.Name("")), message.New("Add at least one row with its range and its figure."))
	}
	for i := 1; i < len(bands); i++ {
		if what := meeting(bands[i-1], bands[i]); !what.IsZero() {
			rows[i].AddProblem("", what, message.New("Write the rows in rising order, and let each begin where the one before ends: \"upto\" then \"over\", or \"under\" then \"from\"."))
		}
	}
}

// meeting is the seam between two rows that could both be read.
func meeting(lower, upper Band) message.Text {
	a, okA := lower.Unit()
	b, okB := upper.Unit()
	switch {
	case !okA || !okB:
		return message.Text{}
	case a != b:
		return message.New("one row is in %s and the next in %s", a, b)
	}
	return seam(lower, upper)
}

// CheckFirst asks that the rows reach down to the moisture they are first
// needed at.
func CheckFirst(rows []*tomlfile.Table, bands []Band, name string, from Cell) {
	if len(bands) == 0 || !bands[0].HasLow || !from.Given() {
		return
	}
	if first := bands[0]; first.Low.More(from.Amount) {
		rows[0].AddProblem("", message.New("the first row begins at %s, above %s, %s: nothing is said between the two", first.Low.Written(), name, from.Amount.Written()), message.New("Let the first row begin there or below, or leave its low end out."))
	}
}
