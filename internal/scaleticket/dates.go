package scaleticket

import (
	"fmt"
	"strings"
	"time"

	"tenthpoint/internal/quantity"
)

// made is the date of the paper: when the ticket was issued, else when the
// load was opened. A load with neither has the first day of the century, so
// that its slip still comes out the same each time.
func made(t *facts) time.Time {
	for _, stamp := range []string{t.l.Issued.At, t.l.Opened.At} {
		if when, err := time.Parse(time.RFC3339, stamp); err == nil {
			return when.UTC()
		}
	}
	return time.Date(2000, time.January, 1, 0, 0, 0, 0, time.UTC)
}

// dates write the times of facts the way the elevator writes them.
type dates struct {
	// zone is the elevator's own; nil leaves times as the facts have them.
	zone *time.Location
	// local writes days in the order of the elevator's language: "m/d/y".
	local bool
	order string
	// day is the day of the load.
	day quantity.Date
}

// dayAndHour returns a fact's time on the elevator's own clock. Without a time zone it is
// unchanged, and marked when that is UTC.
func (d dates) dayAndHour(stamp string) (day, hour string) {
	when, err := time.Parse(time.RFC3339, stamp)
	if err != nil {
		return "", stamp
	}
	suffix := ""
	switch {
	case d.zone != nil:
		when = when.In(d.zone)
	case strings.HasSuffix(stamp, "Z"):
		suffix = " UTC"
	}
	date, err := quantity.ParseDate(when.Format(time.DateOnly))
	if err != nil {
		return "", stamp
	}
	return d.date(date), when.Format("15:04") + suffix
}

// moment is a fact's day and hour.
func (d dates) moment(stamp string) string {
	day, hour := d.dayAndHour(stamp)
	return Joined(" ", day, hour)
}

// hour is a fact's hour, with its day where that is not the day of the load.
func (d dates) hour(stamp string) string {
	day, hour := d.dayAndHour(stamp)
	if day == d.date(d.day) {
		return hour
	}
	return Joined(" ", day, hour)
}

// date writes a day the way the elevator writes days: ISO 8601, or in the
// order of its language.
func (d dates) date(day quantity.Date) string {
	if day.IsZero() || !d.local {
		return day.String()
	}
	return strings.NewReplacer(
		"y", fmt.Sprintf("%04d", day.Year()),
		"m", fmt.Sprintf("%02d", day.Month()),
		"d", fmt.Sprintf("%02d", day.Day()),
	).Replace(d.order)
}
