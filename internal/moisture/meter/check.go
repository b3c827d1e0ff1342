package meter

import (
	"cmp"
	"slices"

	"tenthpoint/internal/fault"
	"tenthpoint/internal/quantity"
)

// Check is one reference sample read on a meter: grain of a moisture known from an oven test, and
// the meter's reading.
type Check struct {
	// Seq orders the checks of one day.
	Seq         int           `json:"seq,string"`
	Day         quantity.Date `json:"day"`
	Meter       string        `json:"meter"`
	Calibration string        `json:"calibration"`
	Crop        string        `json:"crop"`
	// Name is the reference sample's own number.
	Name      string          `json:"name,omitempty"`
	Reference quantity.Amount `json:"reference"` // by oven, in %
	Reading   quantity.Amount `json:"reading"`   // by the meter, in %
	// Dial is what a dial meter showed of Mass grams, and Chart the chart that Reading was read
	// from; TestWeight is needed by charts with a second table.
	Dial       quantity.Amount `json:"dial,omitzero"`
	Mass       quantity.Amount `json:"mass,omitzero"`
	TestWeight quantity.Amount `json:"test_weight,omitzero"`
	Chart      string          `json:"chart,omitempty"`
	// Sample is the temperature of the reference sample.
	Sample quantity.Amount `json:"sample_temperature"`
	By     string          `json:"by"`
}

// Error is the meter's reading less the reference, in points: above zero when
// the meter reads high.
func (c Check) Error() quantity.Amount { return c.Reading.Sub(c.Reference).In(quantity.Point) }

// Faults lists everything wrong with the check as recorded.
func (c Check) Faults() []error {
	var faults fault.List
	faults.Unless(!c.Day.IsZero(), "the check has no day")
	faults.Unless(c.Meter != "", "the check names no meter; choose the meter that was checked")
	faults.Unless(c.Calibration != "", "the check names no calibration; read it from the meter")
	faults.Unless(c.Crop != "", "the check names no crop; a meter is checked grain by grain")
	faults.Unless(c.By != "", "the check has no person; write who read the meter")
	for _, m := range []struct {
		name string
		a    quantity.Amount
	}{{"reference", c.Reference}, {"reading", c.Reading}} {
		faults.Unless(IsMoisture(m.a), "the %s is %s; type a moisture above 0 %% and below 100 %%", m.name, m.a)
	}
	faults.Unless(!quantity.Recorded(c.Sample) || quantity.IsTemperature(c.Sample), "the sample temperature is %s; type it in °F or °C", c.Sample)
	return faults
}

// ChecksOf returns a meter's checks under its calibration up to a day, oldest first. A new
// calibration is a new instrument: earlier checks do not count.
func ChecksOf(m Meter, checks []Check, day quantity.Date) []Check {
	var out []Check
	for _, c := range checks {
		if c.Meter == m.ID && c.Calibration == m.Calibration && !c.Day.After(day) {
			out = append(out, c)
		}
	}
	slices.SortStableFunc(out, func(a, b Check) int {
		return cmp.Or(a.Day.Cmp(b.Day), cmp.Compare(a.Seq, b.Seq))
	})
	return out
}

// CropsOf are the crops of checks, in the order they first came.
func CropsOf(checks []Check) []string {
	var out []string
	for _, c := range checks {
		if !slices.Contains(out, c.Crop) {
			out = append(out, c.Crop)
		}
	}
	return out
}

// OfCrop are the checks with one crop.
func OfCrop(checks []Check, crop string) []Check {
	var out []Check
	for _, c := range checks {
		if c.Crop == crop {
			out = append(out, c)
		}
	}
	return out
}

// Withdrawal takes a check back that was written down by mistake, such as a figure typed wrong. The
// check stays in the book and counts nowhere.
type Withdrawal struct {
	Meter  string        `json:"meter"`
	Seq    int           `json:"seq,string"` // of the check
	Day    quantity.Date `json:"day"`
	By     string        `json:"by"`
	Reason string        `json:"reason"`
}

// InForce are the checks that were not withdrawn.
func InForce(checks []Check, withdrawn []Withdrawal) []Check {
	return slices.DeleteFunc(slices.Clone(checks), func(c Check) bool {
		return slices.ContainsFunc(withdrawn, func(w Withdrawal) bool { return w.Meter == c.Meter && w.Seq == c.Seq })
	})
}
