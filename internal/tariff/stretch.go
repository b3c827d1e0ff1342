package tariff

import (
	"strconv"

	"tenthpoint/internal/quantity"
)

// stretch is a run of days, both ends included.
type stretch struct{ first, last quantity.Date }

// days counts them; none where the last lies before the first.
func (s stretch) days() int { return max(0, s.first.DaysUntil(s.last)+1) }

// until cuts a stretch at a day.
func (s stretch) until(last quantity.Date) stretch {
	if s.last.After(last) {
		s.last = last
	}
	return s
}

// months counts the months of a stretch from its first day: those begun, or those complete.
func months(first, last quantity.Date, part Part) int {
	n := 0
	for !first.AddMonths(n + 1).AddDays(-1).After(last) {
		n++
	}
	if part == Begun && !first.AddMonths(n).After(last) {
		n++
	}
	return n
}

// rowName numbers a band on the sheet, from 1.
func rowName(i int) string { return "band" + strconv.Itoa(i+1) }
