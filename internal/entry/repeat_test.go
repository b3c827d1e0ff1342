package entry_test

import (
	"maps"
	"testing"

	"tenthpoint/internal/entry"
	"tenthpoint/internal/entrytest"
	"tenthpoint/internal/office"
	"tenthpoint/schedules"
)

// The next truck of a field is entered from the one before it: whose grain, where it goes and under
// what; its weights and results are its own, and so is a price of another day.
func TestRepeatedLoad(t *testing.T) {
	editions, err := schedules.Editions()
	if err != nil {
		t.Fatal(err)
	}
	d := entrytest.Open(t, "guarded", editions)
	last, found, err := office.LastLoad(t.Context(), d, "", "8")
	if err != nil || !found {
		t.Fatal(found, err)
	}
	house := office.NewEntering(t.Context(), d)
	last.Details.Day = d.Today()
	last.Details.Grown.Field, last.Details.Bin = "North 40", "P1"
	today := entry.Repeated(house, last)
	for field, want := range map[string]string{
		"grower": last.Details.Grower.ID, "commodity": last.Details.Commodity, "truck": "8", "bin": last.Details.Bin, "field": "North 40",
	} {
		if want == "" || today[field] != want {
			t.Errorf("%s is %q, want %q", field, today[field], want)
		}
	}
	if today["price"] == "" {
		t.Errorf("a price of the same day is typed again: %v", today)
	}
	for _, own := range []string{"gross", "tare", "moisture", "test-weight", "day", "remark", "driver"} {
		if text, taken := today[own]; taken {
			t.Errorf("%s of the load before is taken: %q", own, text)
		}
	}
	last.Details.Day = d.Today().AddDays(-1)
	tomorrow := entry.Repeated(house, last)
	if _, taken := tomorrow["price"]; taken {
		t.Errorf("a price of the day before is taken: %v", tomorrow)
	}
	maps.DeleteFunc(today, func(field, _ string) bool { return field == "price" || field == "price-source" })
	if !maps.Equal(today, tomorrow) {
		t.Errorf("today %v, tomorrow %v", today, tomorrow)
	}
}
