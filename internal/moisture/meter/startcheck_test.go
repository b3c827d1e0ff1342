package meter

import (
	"testing"

	"tenthpoint/internal/quantity"
)

func started() StartCheck {
	return StartCheck{
		Day: quantity.MustDate("2026-10-01"), Meter: "D1", By: "Pilar Stensrud", Battery: true, Mark: true,
		Weight: quantity.Int(250, quantity.Gram), Balance: quantity.Of("250.1", quantity.Gram),
		Thermometer: quantity.Of("20.4", quantity.Celsius), Other: quantity.Of("20.1", quantity.Celsius),
	}
}

// The start check is all of it or none; what it finds off is said.
func TestStartCheckOfAMeter(t *testing.T) {
	massWithin := quantity.Of("0.5", quantity.Gram)
	for name, c := range map[string]struct {
		change         func(*StartCheck)
		faults, doubts int
	}{
		"in order":              {func(*StartCheck) {}, 0, 0},
		"battery low":           {func(c *StartCheck) { c.Battery = false }, 1, 0},
		"not nulled":            {func(c *StartCheck) { c.Mark = false }, 1, 0},
		"no balance":            {func(c *StartCheck) { c.Balance = quantity.Amount{} }, 1, 0},
		"balance in pounds":     {func(c *StartCheck) { c.Weight = quantity.Int(1, quantity.Lb) }, 1, 0},
		"one thermometer":       {func(c *StartCheck) { c.Other = quantity.Amount{} }, 1, 0},
		"thermometers unlike":   {func(c *StartCheck) { c.Other = quantity.Of("68", quantity.Fahrenheit) }, 1, 0},
		"balance a gram off":    {func(c *StartCheck) { c.Balance = quantity.Int(251, quantity.Gram) }, 0, 1},
		"balance light":         {func(c *StartCheck) { c.Balance = quantity.Int(249, quantity.Gram) }, 0, 1},
		"thermometer a bit off": {func(c *StartCheck) { c.Thermometer = quantity.Of("21.1", quantity.Celsius) }, 0, 0},
		"thermometer off":       {func(c *StartCheck) { c.Thermometer = quantity.Of("18.9", quantity.Celsius) }, 0, 1},
		"left out for a reason": {func(c *StartCheck) {
			*c = StartCheck{Day: c.Day, Meter: "D1", By: c.By, Skipped: "no second thermometer"}
		}, 0, 0},
		"nothing but a name": {func(c *StartCheck) { *c = StartCheck{Meter: "D1"} }, 6, 0},
	} {
		check := started()
		c.change(&check)
		if got := len(check.Faults()); got != c.faults {
			t.Errorf("%s: %d faults, want %d: %v", name, got, c.faults, check.Faults())
		}
		if c.faults > 0 {
			continue
		}
		if got := check.Doubts(massWithin); len(got) != c.doubts {
			t.Errorf("%s: %d doubts, want %d: %v", name, len(got), c.doubts, got)
		}
	}
	if _, there := StartedOn([]StartCheck{started()}, quantity.MustDate("2026-10-02")); there {
		t.Error("a start check of yesterday counts today")
	}
}
