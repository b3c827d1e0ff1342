package rates

import (
	"fmt"

	"tenthpoint/internal/quantity"
	"tenthpoint/internal/tomlfile"
)

// band reads the two ends of a row. "over" and "under" leave the end out,
// "from" and "upto" take it in.
func band(t *tomlfile.Table, units ...quantity.Unit) Band {
	var b Band
	b.Low, b.LowIn, b.HasLow = end(t, "from", "over", units)
	b.High, b.HighIn, b.HasHigh = end(t, "upto", "under", units)
	if !b.HasLow && !b.HasHigh {
		t.Wrong("", fmt.Sprintf("%s says no range", t.Path()), "Give it from or over, and upto or under; only the first row may lack a low end and only the last a high end.")
		return b
	}
	if b.HasLow && b.HasHigh && (b.High.Less(b.Low) || b.High.Equal(b.Low) && !(b.LowIn && b.HighIn)) {
		t.Wrong("", fmt.Sprintf("%s holds no value at all: %s", t.Path(), b), "Swap the two ends or mend them.")
	}
	return b
}

func end(t *tomlfile.Table, in, out string, units []quantity.Unit) (a quantity.Amount, isIn, has bool) {
	closed, hasClosed := t.OptionalAmount(in, units...)
	open, hasOpen := t.OptionalAmount(out, units...)
	switch {
	case hasClosed && hasOpen:
		t.Wrong(out, fmt.Sprintf("%s has both %s and %s", t.Path(), in, out), fmt.Sprintf("Keep %s if %s belongs to the row, %s if it does not.", in, closed, out))
		return closed, true, true
	case hasClosed:
		return closed, true, true
	case hasOpen:
		return open, false, true
	}
	return quantity.Amount{}, false, false
}

// checkBands asks that rows stand in order and that neighbours meet: no gap, no
// overlap, and every end belonging to one row only.
func checkBands(t *tomlfile.Table, rows []*tomlfile.Table, bands []Band) {
	if len(bands) == 0 {
		t.Wrong("", fmt.Sprintf("%s has no rows", t.Path()), "Add at least one row with its range and its figure.")
	}
	for i := 1; i < len(bands); i++ {
		if sameUnits(bands[i-1], bands[i]) {
			if what := seam(bands[i-1], bands[i]); what != "" {
				rows[i].Wrong("", what, "Write the rows in rising order, and let each begin where the one before ends: \"upto\" then \"over\", or \"under\" then \"from\".")
			}
		}
	}
}

// sameUnits guards the comparison of neighbours when a row has already been
// found wanting.
func sameUnits(a, b Band) bool {
	return !a.HasHigh || !b.HasLow || a.High.Unit() == b.Low.Unit()
}
