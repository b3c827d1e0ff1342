package quantity

import (
	"testing"

	"pgregory.net/rapid"
)

// The Gregorian calendar worked by hand, as day numbers; dates count days with
// the standard library, and this is the second opinion. Years are taken to
// begin in March, which puts the odd day of a leap year last.

// daysInEra is the length of the 400 years after which the calendar repeats.
const daysInEra = 146097

// dayNumber counts days from 1 March of the year 0.
func (d Date) dayNumber() int {
	year, month := int(d.year), int(d.month)-3
	if month < 0 {
		year, month = year-1, month+12
	}
	return daysBefore(year) + (153*month+2)/5 + int(d.day) - 1
}

// daysBefore counts the days before 1 March of a year not below zero.
func daysBefore(year int) int { return 365*year + year/4 - year/100 + year/400 }

// dateOfDay is the date with a day number.
func dateOfDay(n int) Date {
	year := n * 400 / daysInEra
	for daysBefore(year+1) <= n {
		year++
	}
	for daysBefore(year) > n {
		year--
	}
	rest := n - daysBefore(year)
	month := (5*rest + 2) / 153
	day := rest - (153*month+2)/5 + 1
	if month += 3; month > 12 {
		year, month = year+1, month-12
	}
	return Date{int16(year), int8(month), int8(day)}
}

// Two calendars agree on every day there can be.
func TestCalendarByHand(t *testing.T) {
	first, last := MustDate("1900-01-01"), MustDate("2999-12-31")
	n := first.dayNumber()
	for d := first; !d.After(last); d = d.AddDays(1) {
		if dateOfDay(n) != d || d.dayNumber() != n {
			t.Fatalf("day %d is %s, by hand %s", n, d, dateOfDay(n))
		}
		if _, err := NewDate(d.Year(), d.Month(), d.Day()); err != nil {
			t.Fatalf("%s is refused: %v", d, err)
		}
		if next := d.AddDays(1); next.Month() != d.Month() {
			if _, err := NewDate(d.Year(), d.Month(), d.Day()+1); err == nil {
				t.Fatalf("the day after %s is taken as one of the same month", d)
			}
		}
		n++
	}
	rapid.Check(t, func(t *rapid.T) {
		days := rapid.IntRange(0, last.dayNumber()-first.dayNumber())
		a, b := first.AddDays(days.Draw(t, "a")), first.AddDays(days.Draw(t, "b"))
		if got, want := a.DaysUntil(b), b.dayNumber()-a.dayNumber(); got != want || a.AddDays(got) != b {
			t.Fatalf("%s to %s: %d days, by hand %d", a, b, got, want)
		}
	})
}

// A month later is the same day of the next month, or its last where that is shorter.
func TestAddMonths(t *testing.T) {
	for _, c := range []struct {
		from   string
		months int
		want   string
	}{
		{"2026-10-01", 4, "2027-02-01"}, {"2027-01-31", 1, "2027-02-28"}, {"2028-01-31", 1, "2028-02-29"},
		{"2026-12-15", 1, "2027-01-15"}, {"2026-08-31", 13, "2027-09-30"}, {"2027-03-31", -1, "2027-02-28"}, {"2026-05-05", 0, "2026-05-05"},
	} {
		if got := MustDate(c.from).AddMonths(c.months); got != MustDate(c.want) {
			t.Errorf("%d months after %s is %s, not %s", c.months, c.from, got, c.want)
		}
	}
}
