package paysheet

import (
	"testing"

	"tenthpoint/internal/quantity"
)

// A notice covers the grower's grain it names, in the years it names, from its first day through its last.
func TestLienCovers(t *testing.T) {
	day := quantity.MustDate
	corn := Lien{Number: 1, Grower: "103", Holder: "L", Commodity: "corn", CropYear: "2026", Filed: day("2026-05-01"), Until: day("2027-04-30"), By: "M"}
	every := Lien{Number: 2, Grower: "103", Holder: "L", Filed: day("2026-05-01"), Until: day("2027-04-30"), By: "M"}
	ended := every
	ended.Ended = &Voided{Day: day("2026-06-01")}
	for _, c := range []struct {
		name                    string
		lien                    Lien
		grower, commodity, year string
		on                      quantity.Date
		want                    bool
	}{
		{"its grain", corn, "103", "corn", "2026", day("2026-10-01"), true},
		{"no year stated", corn, "103", "corn", "", day("2026-10-01"), true},
		{"another year", corn, "103", "corn", "2025", day("2026-10-01"), false},
		{"another grain", corn, "103", "soybeans", "2026", day("2026-10-01"), false},
		{"another grower", corn, "104", "corn", "2026", day("2026-10-01"), false},
		{"its first day", corn, "103", "corn", "2026", day("2026-05-01"), true},
		{"its last day", corn, "103", "corn", "2026", day("2027-04-30"), true},
		{"the day after", corn, "103", "corn", "2026", day("2027-05-01"), false},
		{"every grain", every, "103", "oats", "2024", day("2026-10-01"), true},
		{"ended", ended, "103", "oats", "2024", day("2026-10-01"), false},
	} {
		if got := c.lien.Covers(c.grower, c.commodity, c.year, c.on); got != c.want {
			t.Errorf("%s: covered %v", c.name, got)
		}
	}
	if !every.IsPaid([]string{"someone", " l "}) || every.IsPaid([]string{"someone"}) || every.IsPaid(nil) {
		t.Error("who is paid jointly is told otherwise")
	}
}
