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
func (c *composer) made() time.Time {
	for _, stamp := range []string{c.l.Issued.At, c.l.Opened.At} {
		if when, err := time.Parse(time.RFC3339, stamp); err == nil {
			return when.UTC()
		}
	}
	return time.Date(2000, time.January, 1, 0, 0, 0, 0, time.UTC)
}

// dayAndHour is a fact's time on the elevator's own clock. Without a zone it is
// written as the fact has it, and says so when that is UTC.
func (c *composer) dayAndHour(stamp string) (day, hour string) {
	when, err := time.Parse(time.RFC3339, stamp)
	if err != nil {
		return "", stamp
	}
	suffix := ""
	switch {
	case c.Zone != nil:
		when = when.In(c.Zone)
	case strings.HasSuffix(stamp, "Z"):
		suffix = " UTC"
	}
	date, err := quantity.ParseDate(when.Format(time.DateOnly))
	if err != nil {
		return "", stamp
	}
	return c.date(date), when.Format("15:04") + suffix
}

// moment is a fact's day and hour.
func (c *composer) moment(stamp string) string {
	day, hour := c.dayAndHour(stamp)
	return Joined(" ", day, hour)
}

// hour is a fact's hour, with its day where that is not the day of the load.
func (c *composer) hour(stamp string) string {
	day, hour := c.dayAndHour(stamp)
	if day == c.date(c.l.Details.Day) {
		return hour
	}
	return Joined(" ", day, hour)
}

// date writes a day the way the elevator writes days: ISO 8601, or in the
// order of its language.
func (c *composer) date(d quantity.Date) string {
	if d.IsZero() || c.House.Dates != "local" {
		return d.String()
	}
	return strings.NewReplacer(
		"y", fmt.Sprintf("%04d", d.Year()),
		"m", fmt.Sprintf("%02d", d.Month()),
		"d", fmt.Sprintf("%02d", d.Day()),
	).Replace(c.w.DateOrder)
}
