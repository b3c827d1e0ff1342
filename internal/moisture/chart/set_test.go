package chart

import (
	"strings"
	"testing"

	"tenthpoint/internal/message/errortest"
	"tenthpoint/internal/quantity"
)

func TestShelfRefusesChartsThatClash(t *testing.T) {
	base := small(t)
	for _, c := range []struct {
		name    string
		replace []string
		want    errortest.Want // empty: both may be loaded
	}{
		{"same id", []string{`crop = "corn"`, `crop = "sorghum"`}, errortest.Invalid("small.toml", "small")},
		{"same use", []string{`"small"`, `"other"`}, errortest.Invalid("small.toml", "other", "small")},
		{"overlapping a day", []string{`"small"`, `"other"`, `"2025-01-01"`, `"2025-12-31"`, `until = "2025-12-31"`, ""}, errortest.Invalid()},
		{"next year", []string{`"small"`, `"other"`, `"2025-01-01"`, `"2026-01-01"`, `until = "2025-12-31"`, ""}, errortest.Want{}},
		{"another mass", []string{`"small"`, `"other"`, `"250 g"`, `"175 g"`}, errortest.Want{}},
		{"another calibration", []string{`"small"`, `"other"`, `"A-2025"`, `"A-2026"`}, errortest.Want{}},
		{"another crop", []string{`"small"`, `"other"`, `"corn"`, `"sorghum"`}, errortest.Want{}},
	} {
		_, err := NewSet(base, small(t, c.replace...))
		if !c.want.Met(err) {
			t.Errorf("%s: %v; want %v", c.name, err, c.want)
		}
	}
}

func TestShelfFindsChartsDriestFirst(t *testing.T) {
	wet := small(t, `"small"`, `"wet"`, `"250 g"`, `"175 g"`, `low = "10 %"`, `low = "15 %"`)
	shelf, err := NewSet(wet, small(t), small(t, `"small"`, `"next"`, `"2025-01-01"`, `"2026-01-01"`, `until = "2025-12-31"`, ""))
	if err != nil {
		t.Fatal(err)
	}
	found := func(crop, calibration, day string) string {
		var ids []string
		for _, c := range shelf.For(crop, "Example dial meter A", calibration, quantity.MustDate(day)) {
			ids = append(ids, c.ID)
		}
		return strings.Join(ids, " ")
	}
	for _, c := range []struct{ crop, calibration, day, want string }{
		{"corn", "A-2025", "2025-12-31", "small wet"},
		{"corn", "A-2025", "2026-01-01", "next"},
		{"corn", "A-2024", "2025-12-31", ""},
		{"sorghum", "A-2025", "2025-12-31", ""},
	} {
		if got := found(c.crop, c.calibration, c.day); got != c.want {
			t.Errorf("%s, %s on %s: %q, want %q", c.crop, c.calibration, c.day, got, c.want)
		}
	}
	if len(shelf.All()) != 3 {
		t.Errorf("%d charts", len(shelf.All()))
	}
}
