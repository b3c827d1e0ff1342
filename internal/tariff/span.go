package tariff

import (
	"strconv"
	"strings"

	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/tomlfile"
)

// End is the end of free time or of a band: after so many days or months from day 1, or on
// a day of the calendar. The zero End is no end.
type End struct {
	days, months int
	day          quantity.Date
	source       message.Text
}

// Given reports whether there is an end at all.
func (e End) Given() bool { return !e.source.IsZero() }

// last is the last day up to the end, of grain whose day 1 is given.
func (e End) last(first quantity.Date) quantity.Date {
	switch {
	case !e.day.IsZero():
		return e.day
	case e.months > 0:
		return first.AddMonths(e.months).AddDays(-1)
	}
	return first.AddDays(e.days - 1)
}

// said is the end for people.
func (e End) said() message.Text {
	switch {
	case !e.day.IsZero():
		return message.New("until %s", e.day)
	case e.months > 0:
		return message.New("up to %d months", e.months)
	}
	return message.New("up to day %d", e.days)
}

// the longest time in either unit, so that no end leaves the calendar
const (
	mostDays   = 3660
	mostMonths = 120
)

// readEnd reads an end by its length, "10 days" or "3 months", or by its day; neither is no end.
func readEnd(t *tomlfile.Table, length, day string) End {
	on := t.OptionalDate(day)
	text := t.OptionalText(length)
	switch {
	case t.Has(length) && t.Has(day):
		t.AddProblem(day, message.New("%s has both %v and %v", t.Name(""), length, day), message.New("Keep the one that is posted."))
		return End{}
	case !on.IsZero():
		return End{day: on, source: t.Source(day)}
	case text == "":
		return End{}
	}
	number, unit, _ := strings.Cut(text, " ")
	n, err := strconv.Atoi(number)
	end := End{source: t.Source(length)}
	switch {
	case err == nil && n > 0 && n <= mostDays && (unit == "days" || unit == "day"):
		end.days = n
	case err == nil && n > 0 && n <= mostMonths && (unit == "months" || unit == "month"):
		end.months = n
	default:
		t.AddProblem(length, message.New("%s is %q, which is no time", t.Name(length), text), message.New("Write whole days or months, such as \"10 days\" or \"3 months\"; a day of the calendar is %v.", day))
		return End{}
	}
	return end
}
