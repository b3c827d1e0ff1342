package meter

import (
	"slices"

	"tenthpoint/internal/quantity"
)

// CheckTolerance is a rule for how far a meter may be off and how often it must be
// shown not to be.
type CheckTolerance struct {
	ID, Name string
	// Source is the document; a rule nobody has read there is not Confirmed, and
	// then hints but never fails a meter.
	Source    string
	Confirmed bool
	// EveryDays is the longest time between checks; 0 when the authority states
	// none and the house sets its own.
	EveryDays int
	// OfMean holds the limit against the mean error of a day's references with
	// one crop; otherwise against each.
	OfMean bool
	// Sample is the temperature references must have.
	Sample quantity.Span
	// Limits by crop; the first that names the crop, or names none, applies.
	Limits []ErrorLimit
}

// ErrorLimit is the largest error, in points: Fixed, or Share of the reference
// moisture but at least AtLeast.
type ErrorLimit struct {
	Crops          []string // none means every other crop
	Fixed          quantity.Amount
	Share, AtLeast quantity.Amount
}

// at is the largest error at a reference moisture.
func (l ErrorLimit) at(reference quantity.Amount) quantity.Amount {
	if quantity.Recorded(l.Fixed) {
		return l.Fixed
	}
	return quantity.Max(reference.Mul(l.Share).In(quantity.Point), l.AtLeast)
}

// Allowed is the largest error with a crop at a reference moisture, in points;
// false when the authority says nothing of the crop.
func (a CheckTolerance) Allowed(crop string, reference quantity.Amount) (quantity.Amount, bool) {
	for _, l := range a.Limits {
		if len(l.Crops) == 0 || slices.Contains(l.Crops, crop) {
			return l.at(reference), true
		}
	}
	return quantity.Amount{}, false
}

// CheckTolerances are the published rules known here; a house may set its own.
func CheckTolerances() []CheckTolerance {
	return []CheckTolerance{
		{
			ID: "canada", Name: "Canadian Grain Commission", Confirmed: true,
			Source:    "Canadian Grain Commission: meters checked every two weeks within 0.2 %, samples at 11 to 30 °C",
			EveryDays: 14, Sample: quantity.Span{Low: quantity.Int(11, quantity.Celsius), High: quantity.Int(30, quantity.Celsius)},
			Limits: []ErrorLimit{{Fixed: quantity.Of("0.2", quantity.Point)}},
		},
		{
			ID: "us-official", Name: "U.S. official inspection", Confirmed: true, OfMean: true,
			Source: "7 CFR 801.6: mean deviation of 0.15 % for official meters",
			Limits: []ErrorLimit{{Fixed: quantity.Of("0.15", quantity.Point)}},
		},
		{
			ID: "handbook-44", Name: "NIST Handbook 44", Confirmed: false,
			Source: "NIST Handbook 44, section 5.56(a), T.2.1: from memory, unconfirmed",
			Limits: []ErrorLimit{
				{Crops: []string{"corn", "oats", "sorghum", "sunflower"}, Share: quantity.Of("0.05", quantity.Plain), AtLeast: quantity.Of("0.8", quantity.Point)},
				{Share: quantity.Of("0.04", quantity.Plain), AtLeast: quantity.Of("0.7", quantity.Point)},
			},
		},
	}
}

// CheckToleranceByID finds a published rule.
func CheckToleranceByID(id string) (CheckTolerance, bool) {
	for _, a := range CheckTolerances() {
		if a.ID == id {
			return a, true
		}
	}
	return CheckTolerance{}, false
}
