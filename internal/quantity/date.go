package quantity

import (
	"fmt"
	"strings"
	"time"

	"tenthpoint/internal/message"
)

// Date is a calendar day without time or time zone: the day an edition begins, the day a retained
// sample may be thrown out. The zero Date means no date and is before every other. Dates are
// comparable with ==.
type Date struct {
	year  int16
	month int8
	day   int8
}

// NewDate makes a date of the Gregorian calendar, years 1900 to 2999.
func NewDate(year, month, day int) (Date, error) {
	if year < 1900 || year > 2999 {
		return Date{}, message.Invalid.Errorf("year %d is outside 1900 to 2999; write all four digits of the year", year)
	}
	if month < 1 || month > 12 {
		return Date{}, message.NotFound.Errorf("there is no month %d; write the date as year-month-day, like 2025-10-31", month)
	}
	if last := daysInMonth(year, month); day < 1 || day > last {
		return Date{}, message.NotFound.Errorf("there is no day %d in %d-%02d, which ends on the %d", day, year, month, last)
	}
	return Date{int16(year), int8(month), int8(day)}, nil
}

// ParseDate reads an ISO 8601 date, "2025-10-31". Nothing else is taken: 4/5
// is April in one country and May in another.
func ParseDate(text string) (Date, error) {
	text = strings.TrimSpace(text)
	if len(text) != len("2025-10-31") || text[4] != '-' || text[7] != '-' {
		return Date{}, message.Invalid.Errorf("%.20q is not a date; write year-month-day, like 2025-10-31", text)
	}
	year, okYear := digits(text[0:4])
	month, okMonth := digits(text[5:7])
	day, okDay := digits(text[8:10])
	if !okYear || !okMonth || !okDay {
		return Date{}, message.Invalid.Errorf("%q is not a date; write year-month-day, like 2025-10-31", text)
	}
	return NewDate(year, month, day)
}

// MustDate is ParseDate for dates written in the program's own text. It panics
// when the text is not a date.
func MustDate(text string) Date {
	d, err := ParseDate(text)
	if err != nil {
		panic("quantity.MustDate: " + err.Error())
	}
	return d
}

func digits(text string) (n int, ok bool) {
	for _, r := range text {
		if r < '0' || r > '9' {
			return 0, false
		}
		n = n*10 + int(r-'0')
	}
	return n, true
}

// IsZero reports whether there is no date.
func (d Date) IsZero() bool { return d == Date{} }

// Year, Month and Day are the parts as written.
func (d Date) Year() int { return int(d.year) }

// Month is 1 for January.
func (d Date) Month() int { return int(d.month) }

// Day is the day of the month, from 1.
func (d Date) Day() int { return int(d.day) }

// String is the ISO date, or nothing for no date.
func (d Date) String() string {
	if d.IsZero() {
		return ""
	}
	return fmt.Sprintf("%04d-%02d-%02d", d.year, d.month, d.day)
}

// Cmp is -1, 0 or +1 as d is before, the same as or after e.
func (d Date) Cmp(e Date) int {
	switch a, b := d.sortKey(), e.sortKey(); {
	case a < b:
		return -1
	case a > b:
		return 1
	}
	return 0
}

func (d Date) sortKey() int { return (int(d.year)*100+int(d.month))*100 + int(d.day) }

// Before reports whether d is an earlier day than e.
func (d Date) Before(e Date) bool { return d.Cmp(e) < 0 }

// After reports whether d is a later day than e.
func (d Date) After(e Date) bool { return d.Cmp(e) > 0 }

// Between reports whether d is from first to last, both days included. No
// first day means since ever, no last day means without end.
func (d Date) Between(first, last Date) bool {
	return !d.Before(first) && (last.IsZero() || !d.After(last))
}

// AddDays is the date so many days later, or earlier when n is below zero.
func (d Date) AddDays(n int) Date {
	year, month, day := time.Date(d.Year(), time.Month(d.month), d.Day()+n, 0, 0, 0, 0, time.UTC).Date()
	return Date{int16(year), int8(month), int8(day)}
}

// AddMonths is the same day so many months later, or the last day of that month where it has no
// such day: a month after 31 January is 28 or 29 February.
func (d Date) AddMonths(n int) Date {
	first := time.Date(d.Year(), time.Month(d.Month()+n), 1, 0, 0, 0, 0, time.UTC)
	year, month := first.Year(), int(first.Month())
	return Date{int16(year), int8(month), int8(min(d.Day(), daysInMonth(year, month)))}
}

// DaysUntil returns the number of days from d to e, negative when e is earlier.
func (d Date) DaysUntil(e Date) int { return int((e.midnight() - d.midnight()) / secondsInDay) }

const secondsInDay = 24 * 60 * 60 // in UTC, which has no other days

// midnight is the second in which the day begins, in UTC.
func (d Date) midnight() int64 {
	return time.Date(d.Year(), time.Month(d.month), d.Day(), 0, 0, 0, 0, time.UTC).Unix()
}

// daysInMonth is the day before the first of the next month.
func daysInMonth(year, month int) int {
	return time.Date(year, time.Month(month)+1, 0, 0, 0, 0, 0, time.UTC).Day()
}

// MarshalText writes the ISO date; no date is empty text.
func (d Date) MarshalText() ([]byte, error) { return []byte(d.String()), nil }

// UnmarshalText parses the output of MarshalText.
func (d *Date) UnmarshalText(text []byte) error {
	if len(text) == 0 {
		*d = Date{}
		return nil
	}
	got, err := ParseDate(string(text))
	if err != nil {
		return err
	}
	*d = got
	return nil
}
