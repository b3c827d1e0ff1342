package moisture

import (
	"slices"
	"strings"

	"tenthpoint/internal/fault"
	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
)

// ExclusionRule is a rule under which a test may be left out of the mean.
type ExclusionRule string

const (
	// Spoiled drops a test that went wrong in a way someone saw: grain spilled,
	// the wrong crop set, the cell not filled.
	Spoiled ExclusionRule = "spoiled"
	// FarthestFromMiddle drops the one test farthest from the median of at least
	// three, when the spread is wider than the policy allows.
	FarthestFromMiddle ExclusionRule = "farthest-from-middle"
)

// ExclusionRules lists them.
func ExclusionRules() []ExclusionRule { return []ExclusionRule{Spoiled, FarthestFromMiddle} }

// Message is the rule for people.
func (r ExclusionRule) Message() message.Text {
	switch r {
	case Spoiled:
		return message.New("the test was spoiled")
	case FarthestFromMiddle:
		return message.New("farthest from the middle one, and the spread too wide")
	}
	return message.New("%v", string(r))
}

// String is the rule in English.
func (r ExclusionRule) String() string { return r.Message().String() }

// Exclusion excludes one test from the mean. It stays listed, with the rule and the person.
type Exclusion struct {
	Test   int           `json:"test,string"`
	Rule   ExclusionRule `json:"rule"`
	By     string        `json:"by"`
	Reason string        `json:"reason,omitempty"`
}

// words is the drop for paper.
func (d Exclusion) words() message.Text {
	if d.Reason == "" {
		return message.New("left out by %v: %s", d.By, d.Rule)
	}
	return message.New("left out by %v: %s (%v)", d.By, d.Rule, d.Reason)
}

// checkExclusions lists the exclusions that the tests' figures do not allow, by
// test number.
func (p Policy) checkExclusions(drops []Exclusion, figures map[int]quantity.Amount) []error {
	var faults fault.List
	seen := map[int]bool{}
	byRule := 0
	for _, d := range drops {
		_, tested := figures[d.Test]
		faults.Unless(tested, "test %d is to be left out, but there is no test %d", d.Test, d.Test)
		faults.Unless(!seen[d.Test], "test %d is left out twice", d.Test)
		seen[d.Test] = true
		faults.Unless(strings.TrimSpace(d.By) != "", "test %d is left out by nobody; a person answers for it by name", d.Test)
		if !slices.Contains(p.MayExclude, d.Rule) {
			faults.Add("test %d is left out under %q, which is not a rule of this house; its rules are %q", d.Test, string(d.Rule), p.MayExclude)
			continue
		}
		switch {
		case d.Rule == Spoiled:
			faults.Unless(strings.TrimSpace(d.Reason) != "", "test %d is left out as spoiled; write what was seen to go wrong", d.Test)
		case tested:
			byRule++
			p.checkFarthest(&faults, d, drops, figures)
		}
	}
	faults.Unless(byRule <= 1, "%d tests are left out as farthest from the middle; the rule drops one. Test again", byRule)
	faults.Unless(len(seen) < len(figures), "every test is left out; test again")
	return faults
}

// checkFarthest works on the tests that were not spoiled.
func (p Policy) checkFarthest(faults *fault.List, d Exclusion, drops []Exclusion, figures map[int]quantity.Amount) {
	var rest []quantity.Amount
	for test, m := range figures {
		spoiled := slices.ContainsFunc(drops, func(o Exclusion) bool { return o.Test == test && o.Rule == Spoiled })
		if !spoiled {
			rest = append(rest, m)
		}
	}
	if len(rest) < 3 {
		faults.Add("test %d is left out as farthest from the middle, but of %d tests there is no middle one; make a third", d.Test, len(rest))
		return
	}
	slices.SortFunc(rest, quantity.Amount.Cmp)
	spread := rest[len(rest)-1].Sub(rest[0]).In(quantity.Point)
	faults.Unless(spread.More(p.Spread), "test %d is left out, but the spread of %s is within the %s allowed; all tests count", d.Test, spread, p.Spread)
	far := fromMiddle(rest, figures[d.Test])
	for _, m := range rest {
		if fromMiddle(rest, m).More(far) {
			faults.Add("test %d at %s is left out as farthest from the middle, but %s is farther", d.Test, figures[d.Test], m)
			return
		}
	}
}

// fromMiddle is twice the distance from the median of sorted figures; twice, so
// that the middle of an even number needs no half.
func fromMiddle(sorted []quantity.Amount, m quantity.Amount) quantity.Amount {
	n := len(sorted)
	return apart(m.Add(m), sorted[(n-1)/2].Add(sorted[n/2]))
}
