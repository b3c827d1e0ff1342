package meter

import (
	"tenthpoint/internal/fault"
	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
)

// StartCheck is the check before the first test of a day: the meter itself, the balance beside it
// and the thermometer.
type StartCheck struct {
	Day   quantity.Date `json:"day"`
	Meter string        `json:"meter"`
	By    string        `json:"by"`
	// Battery is that its battery or supply was found good, Mark that it was set to
	// its mark; a dial meter is nulled.
	Battery bool `json:"battery"`
	Mark    bool `json:"mark"`
	// Weight is a check weight on the balance and Balance what that showed, in g.
	Weight  quantity.Amount `json:"weight"`
	Balance quantity.Amount `json:"balance"`
	// Thermometer is the reading of the bench's thermometer and Other that of another one in the
	// same grain or room.
	Thermometer quantity.Amount `json:"thermometer"`
	Other       quantity.Amount `json:"other_thermometer"`
	// Skipped is why nothing was looked at; the other fields are then empty.
	Skipped string `json:"skipped,omitempty"`
}

// Faults lists what the check lacks: every part is required.
func (c StartCheck) Faults() []error {
	var faults fault.List
	faults.Unless(!c.Day.IsZero(), "the start check has no day")
	faults.Unless(c.Meter != "", "the start check names no meter; choose the meter")
	faults.Unless(c.By != "", "the start check has no person; write who looked")
	if c.Skipped != "" {
		return faults
	}
	faults.Unless(c.Battery, "the battery was not looked at, or is low; charge or change it before a test")
	faults.Unless(c.Mark, "the meter was not set to its mark; set it, or null the dial, before a test")
	faults.Unless(isMass(c.Weight) && isMass(c.Balance), "the balance showed %s for a check weight of %s; write both in g", c.Balance, c.Weight)
	faults.Unless(quantity.IsTemperature(c.Thermometer) && quantity.IsTemperature(c.Other) && c.Thermometer.Unit() == c.Other.Unit(),
		"the thermometers showed %s and %s; write both in °F or both in °C", c.Thermometer, c.Other)
	return faults
}

func isMass(a quantity.Amount) bool { return a.Unit() == quantity.Gram && a.Sign() > 0 }

// How far two thermometers may differ: practice.
var (
	thermometersF = quantity.Int(2, quantity.Fahrenheit)
	thermometersC = quantity.Int(1, quantity.Celsius)
)

// Doubts lists the defects found, given the tolerance of the balance: each must be put right before
// a test.
func (c StartCheck) Doubts(massWithin quantity.Amount) []message.Text {
	if c.Skipped != "" {
		return nil
	}
	var out []message.Text
	if off := c.Balance.Sub(c.Weight); size(off).More(massWithin) {
		out = append(out, message.New("The balance shows %s for a check weight of %s. Set the balance right before a test: a wrong mass reads wrong.", c.Balance, c.Weight))
	}
	within := thermometersF
	if c.Thermometer.Unit() == quantity.Celsius {
		within = thermometersC
	}
	if apart := c.Thermometer.Sub(c.Other); size(apart).More(within) {
		out = append(out, message.New("The thermometers show %s and %s. Use one that can be believed.", c.Thermometer, c.Other))
	}
	return out
}

// StartedOn is the last start check of a meter on a day; false where it has none.
func StartedOn(checks []StartCheck, day quantity.Date) (StartCheck, bool) {
	for i := len(checks) - 1; i >= 0; i-- {
		if checks[i].Day == day {
			return checks[i], true
		}
	}
	return StartCheck{}, false
}
