package scaleticket

import (
	"testing"
	"time"

	"tenthpoint/internal/elevator"
	"tenthpoint/internal/load"
	"tenthpoint/internal/quantity"
)

func TestTimesAndDates(t *testing.T) {
	day := quantity.MustDate("2026-10-14")
	zone := time.FixedZone("", -5*3600)
	for _, k := range []struct {
		at    string
		zone  *time.Location
		dates string
		hour  string
	}{
		{"2026-10-14T15:02:11Z", zone, "", "10:02"},
		{"2026-10-15T02:02:11Z", zone, "", "21:02"},
		{"2026-10-15T06:02:11Z", zone, "", "2026-10-15 01:02"},
		{"2026-10-14T15:02:11Z", nil, "", "15:02 UTC"},
		{"2026-10-14T10:02:11-05:00", nil, "", "10:02"},
		{"2026-10-15T06:02:11Z", zone, "local", "10/15/2026 01:02"},
		{"yesterday", zone, "", "yesterday"},
	} {
		f := factsOf(Ticket{Zone: k.zone, House: elevator.Profile{Dates: k.dates}, Load: &load.Load{Details: load.Details{Day: day}}})
		if got := f.hour(k.at); got != k.hour {
			t.Errorf("%s is printed %q, want %q", k.at, got, k.hour)
		}
	}
}
