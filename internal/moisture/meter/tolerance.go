package meter

import (
	"slices"

	"tenthpoint/internal/law"
	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
)

// CheckTolerance is a rule for how far a meter may be off and how often it must be
// shown not to be.
type CheckTolerance struct {
	ID, Name string
	// OfHouse is a rule the elevator has set itself, which no law says.
	OfHouse bool
	// Source is the document; a rule not read there is not Confirmed, and then hints but never
	// fails a meter.
	Source    string
	Confirmed bool
	// EveryDays is the longest time between checks; 0 when the authority states none and the
	// elevator sets its own.
	EveryDays int
	// OfMean applies the limit to the mean error of a day's references with one crop; otherwise it
	// applies to each.
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

// Stated is the document of the rule; that of a published one is to be confirmed.
func (a CheckTolerance) Stated() message.Text {
	if a.OfHouse {
		return message.Words(a.Source)
	}
	return law.ToConfirm(message.Words(a.Source))
}

// at is the largest error at a reference moisture.
func (l ErrorLimit) at(reference quantity.Amount) quantity.Amount {
	if quantity.Recorded(l.Fixed) {
		return l.Fixed
	}
	return quantity.Max(reference.Mul(l.Share).In(quantity.Point), l.AtLeast)
}

// Allowed returns the largest error with a crop at a reference moisture, in points; false when the
// authority has none for the crop.
func (a CheckTolerance) Allowed(crop string, reference quantity.Amount) (quantity.Amount, bool) {
	for _, l := range a.Limits {
		if len(l.Crops) == 0 || slices.Contains(l.Crops, crop) {
			return l.at(reference), true
		}
	}
	return quantity.Amount{}, false
}

// KindTolerances is the kind of file that has such rules.
const KindTolerances = "meter-tolerances"

// CheckTolerances are the published rules of a law; an elevator may set its own.
func CheckTolerances(l law.Law) ([]CheckTolerance, error) {
	var out []CheckTolerance
	for _, f := range l.OfKind(KindTolerances) {
		rules, err := ReadTolerances(f)
		if err != nil {
			return nil, err
		}
		out = append(out, rules...)
	}
	return out, nil
}

// CheckToleranceByID finds a published rule; false when the law has none of the
// id.
func CheckToleranceByID(l law.Law, id string) (CheckTolerance, bool) {
	rules, _ := CheckTolerances(l) // errors were reported when it was loaded
	for _, a := range rules {
		if a.ID == id {
			return a, true
		}
	}
	return CheckTolerance{}, false
}
