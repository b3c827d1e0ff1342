package truckscale

import "tenthpoint/internal/quantity"

// Tolerance is the allowed error of a scale in service at a load.
type Tolerance struct {
	At     quantity.Amount
	Source string
	// Confirmed is false where the rule was not read in its source: it then only hints.
	Confirmed bool
}

// ladder is a tolerance in divisions: one up to 500, and one more for each further
// step or part of it, up to a most.
type ladder struct {
	step, most int64 // most is 0 where there is none
	source     string
	confirmed  bool
}

// Two rule sets, never one constant.
var ladders = map[string]ladder{
	"canada": {800, 22, "SI/98-81 s. 8(3), class IIIHD, in service", true},
	"us":     {500, 0, "NIST Handbook 44, 2.20, table 6, class III L, maintenance: from memory, not read", false},
}

// firstStep is the number of divisions with a tolerance of one.
const firstStep = 500

// ToleranceFor is the tolerance of a vehicle scale in service at a load, in the
// unit of its division; false where the rule set has none.
func ToleranceFor(rules string, load, division quantity.Amount) (Tolerance, bool) {
	l, known := ladders[rules]
	if !known || division.Sign() <= 0 || load.Unit() != division.Unit() {
		return Tolerance{}, false
	}
	divisions := int64(1)
	beyond := load.Div(division).Sub(quantity.Int(firstStep, quantity.Plain))
	if beyond.Sign() > 0 {
		steps, _ := quantity.To("1", quantity.Up).Apply(beyond.Div(quantity.Int(l.step, quantity.Plain))).Decimal()
		divisions += steps.IntPart()
	}
	if l.most > 0 {
		divisions = min(divisions, l.most)
	}
	return Tolerance{At: division.Mul(quantity.Int(divisions, quantity.Plain)), Source: l.source, Confirmed: l.confirmed}, true
}
