package moisture

import (
	"slices"

	"tenthpoint/internal/fault"
	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
)

// MoistureRounding records moisture to 0.1 % half-up: 7 CFR 810.104.
var MoistureRounding = quantity.To("0.1", quantity.HalfUp)

var moistureRoundingSource = message.Words("moisture to 0.1 %, half-up: 7 CFR 810.104")

// Policy is the number of tests of a sample and how far they may differ.
type Policy struct {
	// Crop is the commodity's id; empty serves every crop without its own.
	Crop string `json:"crop"`
	// Count is the number of tests a sample needs, from 1.
	Count int `json:"count,string"`
	// Spread is the most the highest and lowest test may differ, in points.
	Spread quantity.Amount `json:"spread"`
	// Near is the distance to a limit, in points to either side, within which NearCount tests are
	// needed.
	Near      quantity.Amount `json:"near"`
	NearCount int             `json:"near_count,string"`
	// MayExclude are the rules under which a person may drop a test.
	MayExclude []ExclusionRule `json:"may_drop"`
	// Blocks are the reasons under this policy that stop a ticket, besides those that the elevator
	// stops on for every crop ([Trust.Blocks]).
	Blocks []Code `json:"blocks,omitempty"`
}

// DefaultPolicy tests once, and three times within 0.5 points of a limit (Canadian Grain
// Commission, Official Grain Grading Guide, chapter 2). The largest spread of 0.5 points is an
// elevator's choice, not a published one.
func DefaultPolicy() Policy {
	return Policy{
		Count: 1, Spread: quantity.Of("0.5", quantity.Point),
		Near: quantity.Of("0.5", quantity.Point), NearCount: 3,
		MayExclude: []ExclusionRule{Spoiled, FarthestFromMiddle},
	}
}

// PolicyFor is the policy for a crop: its own, else the one for every crop,
// else the default.
func PolicyFor(policies []Policy, crop string) Policy {
	for _, name := range []string{crop, ""} {
		if i := slices.IndexFunc(policies, func(p Policy) bool { return p.Crop == name }); i >= 0 {
			return policies[i]
		}
	}
	return DefaultPolicy()
}

// Check lists everything wrong with the policy.
func (p Policy) Check() []error {
	var faults fault.List
	name := message.New("%v", p.Crop)
	if p.Crop == "" {
		name = message.New("every crop")
	}
	faults.Unless(p.Count >= 1, "the policy for %s asks for %d tests; a sample needs at least one", name, p.Count)
	faults.Unless(p.NearCount >= p.Count, "the policy for %s asks for %d tests near a limit and %d away from it; near a limit it cannot be fewer", name, p.NearCount, p.Count)
	faults.Unless(p.Spread.Unit() == quantity.Point && p.Spread.Sign() > 0, "the policy for %s allows a spread of %s; write points above zero, such as 0.5 pt", name, p.Spread)
	faults.Unless(p.Near.Unit() == quantity.Point && p.Near.Sign() >= 0, "the policy for %s takes %s as near a limit; write points, such as 0.5 pt, or 0 pt for never", name, p.Near)
	for _, rule := range p.MayExclude {
		faults.Unless(slices.Contains(ExclusionRules(), rule), "the policy for %s lets tests be dropped by %q, which is no rule; the rules are %q", name, rule, ExclusionRules())
	}
	return faults
}
