package lab

import (
	"testing"

	"tenthpoint/internal/law"
	"tenthpoint/internal/moisture/meter"
	"tenthpoint/internal/quantity"
)

func checkOn(day, reference, reading string) meter.Check {
	percent := func(text string) quantity.Amount { return quantity.Of(text, quantity.Percent) }
	return meter.Check{Day: quantity.MustDate(day), Meter: "bench-1", Calibration: "A-2025", Crop: "corn", Name: "R",
		Reference: percent(reference), Reading: percent(reading), Sample: quantity.Int(20, quantity.Celsius), By: "T"}
}

// Ten days, the middle check on the fourth: errors +0.1, -0.3, +0.2 against
// 0.2. The edge is 0.5, so a tenth is 100 thousandths.
func TestErrorChartByHand(t *testing.T) {
	rule, _ := meter.CheckToleranceByID(law.First(), "canada")
	c := meter.NewErrorLog([]meter.Check{checkOn("2026-10-01", "15.0", "15.1"), checkOn("2026-10-05", "15.0", "14.7"), checkOn("2026-10-11", "15.0", "15.2")}, rule, meter.Bias{})
	want := []struct{ x, y int }{{0, 600}, {400, 200}, {1000, 700}}
	for i, p := range c.Points {
		lower, upper := errorHeight(c, p.Limit.Neg()), errorHeight(c, p.Limit)
		if x, y := across(c, i), errorHeight(c, p.Check.Error()); x != want[i].x || y != want[i].y || lower != 300 || upper != 700 {
			t.Errorf("check %d is at %d, %d, want %+v; its limits at %d and %d", i+1, x, y, want[i], lower, upper)
		}
	}
}

func TestErrorChartOfOneDay(t *testing.T) {
	rule, _ := meter.CheckToleranceByID(law.First(), "canada")
	c := meter.NewErrorLog([]meter.Check{checkOn("2026-10-01", "15", "15.1"), checkOn("2026-10-01", "16", "15.9"), checkOn("2026-10-01", "17", "17")}, rule, meter.Bias{})
	for i, want := range []int{250, 500, 750} {
		if got := across(c, i); got != want {
			t.Errorf("check %d stands at %d, want %d", i+1, got, want)
		}
	}
}
