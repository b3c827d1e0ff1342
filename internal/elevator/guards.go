package elevator

import (
	"slices"

	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
)

// GuardAct is the action taken when a guard finds something.
type GuardAct string

// A remark is only shown. A question keeps the ticket back until somebody has
// answered it; one for a manager is answered by a manager.
const (
	GuardOff      GuardAct = "off"
	GuardRemark   GuardAct = "remark"
	GuardQuestion GuardAct = "question"
	GuardManager  GuardAct = "manager"
)

// GuardActs are all of them, from the least.
func GuardActs() []GuardAct { return []GuardAct{GuardOff, GuardRemark, GuardQuestion, GuardManager} }

// GuardRule is an elevator's setting for one guard: for everything, or for one commodity or factor.
// Unset values default to those of package guard.
type GuardRule struct {
	Guard     string   `json:"guard"`
	Commodity string   `json:"commodity,omitempty"`
	Factor    string   `json:"factor,omitempty"`
	Act       GuardAct `json:"act,omitempty"`
	// From and To are the range that passes without a warning, both inclusive: percent, money,
	// weight, or a count of minutes or days.
	From *quantity.Amount `json:"from,omitempty"`
	To   *quantity.Amount `json:"to,omitempty"`
	// Reasons are the answers to choose from.
	Reasons []string `json:"reasons,omitempty"`
}

// GuardRules are all rules of the elevator.
type GuardRules []GuardRule

// For is the elevator's rule about a guard for a commodity and a factor, each of which may be
// empty. A rule for one of them goes before a rule for all, and a later rule before an earlier one.
func (all GuardRules) For(guard, commodity, factor string) GuardRule {
	out := GuardRule{Guard: guard, Commodity: commodity, Factor: factor}
	for _, particular := range []bool{false, true} {
		for _, r := range all {
			holds := r.Guard == guard && (r.Commodity == "" || r.Commodity == commodity) && (r.Factor == "" || r.Factor == factor)
			if holds && particular == (r.Commodity != "" || r.Factor != "") {
				out.take(r)
			}
		}
	}
	return out
}

// take fills unset values from another rule about the same thing.
func (r *GuardRule) take(o GuardRule) {
	if o.Act != "" {
		r.Act = o.Act
	}
	if o.From != nil {
		r.From = o.From
	}
	if o.To != nil {
		r.To = o.To
	}
	if len(o.Reasons) > 0 {
		r.Reasons = o.Reasons
	}
}

// With are the rules with one more: a rule about the same thing is completed by it.
func (all GuardRules) With(rule GuardRule) GuardRules {
	out := slices.Clone(all)
	for i, r := range out {
		if r.Guard == rule.Guard && r.Commodity == rule.Commodity && r.Factor == rule.Factor {
			out[i].take(rule)
			return out
		}
	}
	return append(out, rule)
}

// Check returns what is wrong with the rule, or nil.
func (r GuardRule) Check() error {
	if r.Act != "" && !slices.Contains(GuardActs(), r.Act) {
		return message.Invalid.Errorf("%q is not what a guard can do. Choose off, remark, question or manager", string(r.Act))
	}
	if r.From != nil && r.To != nil && (r.From.Unit() != r.To.Unit() || r.From.More(*r.To)) {
		return message.Invalid.Errorf("the limits %s and %s are no range. Write the lower one first, both in one unit", *r.From, *r.To)
	}
	return nil
}

// Compulsory is something an elevator may require of every load before its ticket.
type Compulsory string

const (
	BinCompulsory      Compulsory = "bin"
	MeterCompulsory    Compulsory = "meter"
	SampleCompulsory   Compulsory = "sample"
	CropYearCompulsory Compulsory = "crop-year"
)

// Compulsories are all of them.
func Compulsories() []Compulsory {
	return []Compulsory{BinCompulsory, MeterCompulsory, SampleCompulsory, CropYearCompulsory}
}

// usualManualReasons are the default reasons for typed weights.
var usualManualReasons = []string{
	"read from the indicator", "indicator or link out of order", "weighed on another certified scale", "copied from the weight printed by the scale",
}

// WhyManual returns the elevator's reasons for a typed weight.
func (p Profile) WhyManual() []string {
	if len(p.ManualReasons) > 0 {
		return p.ManualReasons
	}
	return usualManualReasons
}
