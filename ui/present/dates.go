package present

import (
	"fmt"
	"strings"
	"tenthpoint/internal/quantity"
) // The settings under which days are written: year, month and day in figures, or
// as people here say them.
const (
	isoDates   = "iso"
	localDates = "local"
)

// Date is a day as the desk writes it: 2025-10-31, or where the house has set it
// so, with the month in letters, which no reader turns round.
func (f *Frame) Date(d quantity.Date) string {
	if d.IsZero() || f.Desk.Profile().Dates != localDates {
		return d.String()
	}
	return inLetters(d)
}

// inLetters is a day with its month in letters.
func inLetters(d quantity.Date) string {
	return Say("%s %d, %d", monthName(d.Month()), d.Day(), d.Year())
}

// monthName is the short name of a month from 1.
func monthName(month int) string {
	names := [...]string{
		Say("Jan"), Say("Feb"), Say("Mar"), Say("Apr"), Say("May"), Say("Jun"),
		Say("Jul"), Say("Aug"), Say("Sep"), Say("Oct"), Say("Nov"), Say("Dec"),
	}
	if month < 1 || month > len(names) {
		return fmt.Sprint(month)
	}
	return names[month-1]
}

func dateOrNone(text string) (quantity.Date, error) {
	if strings.TrimSpace(text) == "" {
		return quantity.Date{}, nil
	}
	return quantity.ParseDate(text)
}

// dateOr is a day as the desk writes it, or words where there is none.
func (f *Frame) dateOr(d quantity.Date, otherwise string) string {
	if d.IsZero() {
		return otherwise
	}
	return f.Date(d)
}
