package session

import (
	"fmt"
	"strings"
	"tenthpoint/internal/quantity"
)

// The settings under which days are written: year, month and day in figures, or
// as people here say them.
const (
	IsoDates   = "iso"
	LocalDates = "local"
)

// Date formats a day as the elevator has set it: 2025-10-31, or with the month in letters, which
// cannot be confused with the day.
func (f *Session) Date(d quantity.Date) string {
	if d.IsZero() || f.Desk.Profile().Dates != LocalDates {
		return d.String()
	}
	return InLetters(f.Language, d)
}

// InLetters formats a day with the name of its month.
func InLetters(in Language, d quantity.Date) string {
	return in.Say("%s %d, %d", monthName(in, d.Month()), d.Day(), d.Year())
}

// monthName is the short name of a month from 1.
func monthName(in Language, month int) string {
	names := [...]string{
		in.Say("Jan"), in.Say("Feb"), in.Say("Mar"), in.Say("Apr"), in.Say("May"), in.Say("Jun"),
		in.Say("Jul"), in.Say("Aug"), in.Say("Sep"), in.Say("Oct"), in.Say("Nov"), in.Say("Dec"),
	}
	if month < 1 || month > len(names) {
		return fmt.Sprint(month)
	}
	return names[month-1]
}

func DateOrNone(text string) (quantity.Date, error) {
	if strings.TrimSpace(text) == "" {
		return quantity.Date{}, nil
	}
	return quantity.ParseDate(text)
}

// DateOr is a day as the desk writes it, or words where there is none.
func (f *Session) DateOr(d quantity.Date, otherwise string) string {
	if d.IsZero() {
		return otherwise
	}
	return f.Date(d)
}
