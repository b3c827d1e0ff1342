package quantity

import (
	"tenthpoint/internal/message/errortest"
	"testing"
	"time"

	"pgregory.net/rapid"
)

func TestParseDate(t *testing.T) {
	for _, c := range []struct {
		text, want string
		problem    errortest.Want
	}{
		{"2025-10-31", "2025-10-31", errortest.Want{}},
		{" 2024-02-29 ", "2024-02-29", errortest.Want{}},
		{"2025-02-29", "", errortest.NotFound("28")},
		{"1900-02-29", "", errortest.NotFound("28")},
		{"2000-02-29", "2000-02-29", errortest.Want{}},
		{"2025-13-01", "", errortest.NotFound("13")},
		{"2025-00-01", "", errortest.NotFound("0")},
		{"2025-04-31", "", errortest.NotFound("30")},
		{"2025-04-00", "", errortest.NotFound("0")},
		{"0025-04-01", "", errortest.Invalid()},
		{"25-04-01", "", errortest.Invalid()},
		{"4/5/2025", "", errortest.Invalid()},
		{"2025-4-051", "", errortest.Invalid()},
		{"20x5-04-01", "", errortest.Invalid()},
		{"", "", errortest.Invalid()},
	} {
		got, err := ParseDate(c.text)
		if !c.problem.Met(err) || err == nil && got.String() != c.want {
			t.Errorf("ParseDate(%q) = %v, %v; want %s, %v", c.text, got, err, c.want, c.problem)
		}
	}
}

func TestAddDaysOverEnds(t *testing.T) {
	for _, c := range []struct {
		from string
		days int
		want string
	}{
		{"2025-10-31", 1, "2025-11-01"},
		{"2025-12-30", 3, "2026-01-02"},
		{"2024-02-28", 1, "2024-02-29"},
		{"2025-02-28", 1, "2025-03-01"},
		{"2025-11-14", 60, "2026-01-13"},
		{"2025-03-01", -1, "2025-02-28"},
		{"2000-03-01", -1, "2000-02-29"},
	} {
		got := MustDate(c.from).AddDays(c.days)
		if got.String() != c.want {
			t.Errorf("%s + %d days = %s, want %s", c.from, c.days, got, c.want)
		}
		if back := MustDate(c.from).DaysUntil(got); back != c.days {
			t.Errorf("%s to %s is %d days, want %d", c.from, got, back, c.days)
		}
	}
}

func TestBetweenIncludesBothEnds(t *testing.T) {
	first, last := MustDate("2025-09-01"), MustDate("2026-08-31")
	for _, c := range []struct {
		day  string
		want bool
	}{{"2025-08-31", false}, {"2025-09-01", true}, {"2026-08-31", true}, {"2026-09-01", false}} {
		if got := MustDate(c.day).Between(first, last); got != c.want {
			t.Errorf("%s between %s and %s: %v", c.day, first, last, got)
		}
	}
	if !MustDate("2999-12-31").Between(first, Date{}) {
		t.Error("no last day should mean without end")
	}
	if !MustDate("1900-01-01").Between(Date{}, last) {
		t.Error("no first day should mean since ever")
	}
}

func TestNoDate(t *testing.T) {
	var none Date
	if !none.IsZero() || none.String() != "" || !none.Before(MustDate("1900-01-01")) {
		t.Errorf("no date: IsZero %v, text %q", none.IsZero(), none.String())
	}
	back := MustDate("2025-01-01")
	if err := back.UnmarshalText(nil); err != nil || !back.IsZero() {
		t.Errorf("empty text read as %v, %v", back, err)
	}
}

// Dates step, order and read as the standard library's times do.
func TestCalendarAgreesWithStandardLibrary(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a := time.Date(rapid.IntRange(1950, 2900).Draw(t, "year"), time.Month(rapid.IntRange(1, 12).Draw(t, "month")),
			rapid.IntRange(1, 28).Draw(t, "day"), 0, 0, 0, 0, time.UTC)
		n := rapid.IntRange(-15000, 15000).Draw(t, "days")
		d := MustDate(a.Format(time.DateOnly))
		want := a.AddDate(0, 0, n)
		got := d.AddDays(n)
		if got.String() != want.Format(time.DateOnly) {
			t.Fatalf("%s + %d = %s, want %s", d, n, got, want.Format(time.DateOnly))
		}
		if d.DaysUntil(got) != n {
			t.Fatalf("%s to %s: %d days, want %d", d, got, d.DaysUntil(got), n)
		}
		if d.Before(got) != a.Before(want) || d.After(got) != a.After(want) {
			t.Fatalf("order of %s and %s", d, got)
		}
		text, _ := got.MarshalText()
		var back Date
		if err := back.UnmarshalText(text); err != nil || back != got {
			t.Fatalf("%s came back as %s, %v", got, back, err)
		}
	})
}
