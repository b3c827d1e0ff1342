package session

import (
	"strconv"
	"strings"

	"tenthpoint/internal/quantity"
	"tenthpoint/internal/textsearch"
)

// NoFigure is shown in a list where there is no figure.
const NoFigure = "–"

// Counted formats a number with thousands separators.
func Counted(n int64) string { return quantity.Int(n, quantity.Plain).Figure() }

// FigureIn is a figure of a list in a column of a unit: the figure alone, or
// with its unit where that is another one; a dash where there is none.
func FigureIn(a quantity.Amount, known bool, column quantity.Unit, places int32) string {
	switch {
	case !known:
		return NoFigure
	case a.Unit() != column:
		return a.FixedString(places)
	}
	return a.Fixed(places)
}

// ShortDay is a day without its year when that is this year.
func (f *Session) ShortDay(day string) string {
	d, err := quantity.ParseDate(day)
	if err != nil {
		return day
	}
	year := strconv.Itoa(f.Desk.Today().Year())
	text := strings.TrimPrefix(f.Date(d), year+"-")
	return strings.TrimSuffix(text, ", "+year)
}

// HasAll reports whether a text has every word of a line.
func HasAll(text, line string) bool {
	for _, word := range strings.Fields(line) {
		if !textsearch.Contains(text, word) {
			return false
		}
	}
	return true
}

// Number reads a whole number as people type it: "1042" or "1,042".
func Number(text string) (int64, bool) {
	n, err := strconv.ParseInt(strings.ReplaceAll(text, ",", ""), 10, 64)
	return n, err == nil && n > 0
}
