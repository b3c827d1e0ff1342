package bench

import (
	"fmt"
	"slices"
	"strings"

	"tenthpoint/internal/quantity"
)

// DropRule is a rule under which a test may be left out of the mean.
type DropRule string

const (
	// Spoiled drops a test that went wrong in a way someone saw: grain spilled,
	// the wrong crop set, the cell not filled.
	Spoiled DropRule = "spoiled"
	// FarthestFromMiddle drops the one test farthest from the median of at least
	// three, when the spread is wider than the policy allows.
	FarthestFromMiddle DropRule = "farthest-from-middle"
)

// DropRules lists them.
func DropRules() []DropRule { return []DropRule{Spoiled, FarthestFromMiddle} }

// String is the rule for people.
func (r DropRule) String() string {
	switch r {
	case Spoiled:
		return "the test was spoiled"
	case FarthestFromMiddle:
		return "farthest from the middle one, and the spread too wide"
	}
	return string(r)
}

// Drop leaves one test out of the mean. It stays listed, with the rule and the
// person.
type Drop struct {
	Test   int      `json:"test,string"`
	Rule   DropRule `json:"rule"`
	By     string   `json:"by"`
	Reason string   `json:"reason,omitempty"`
}

// words is the drop for paper.
func (d Drop) words() string {
	text := fmt.Sprintf("left out by %s: %s", d.By, d.Rule)
	if d.Reason != "" {
		text += " (" + d.Reason + ")"
	}
	return text
}

// checkDrops lists the drops that cannot stand against the tests' figures, by
// test number.
func (p Policy) checkDrops(drops []Drop, figures map[int]quantity.Amount) []error {
	var faults faults
	seen := map[int]bool{}
	byRule := 0
	for _, d := range drops {
		_, tested := figures[d.Test]
		faults.unless(tested, "test %d is to be left out, but there is no test %d", d.Test, d.Test)
		faults.unless(!seen[d.Test], "test %d is left out twice", d.Test)
		seen[d.Test] = true
		faults.unless(strings.TrimSpace(d.By) != "", "test %d is left out by nobody; a person answers for it by name", d.Test)
		if !slices.Contains(p.MayDrop, d.Rule) {
			faults.unless(false, "test %d is left out under %q, which is not a rule of this house; its rules are %q", d.Test, string(d.Rule), p.MayDrop)
			continue
		}
		switch {
		case d.Rule == Spoiled:
			faults.unless(strings.TrimSpace(d.Reason) != "", "test %d is left out as spoiled; write what was seen to go wrong", d.Test)
		case tested:
			byRule++
			p.checkFarthest(&faults, d, drops, figures)
		}
	}
	faults.unless(byRule <= 1, "%d tests are left out as farthest from the middle; the rule drops one. Test again", byRule)
	faults.unless(len(seen) < len(figures), "every test is left out; test again")
	return faults
}

// checkFarthest works on the tests that were not spoiled.
func (p Policy) checkFarthest(faults *faults, d Drop, drops []Drop, figures map[int]quantity.Amount) {
	var rest []quantity.Amount
	for test, m := range figures {
		spoiled := slices.ContainsFunc(drops, func(o Drop) bool { return o.Test == test && o.Rule == Spoiled })
		if !spoiled {
			rest = append(rest, m)
		}
	}
	if len(rest) < 3 {
		faults.unless(false, "test %d is left out as farthest from the middle, but of %d tests there is no middle one; make a third", d.Test, len(rest))
		return
	}
	slices.SortFunc(rest, quantity.Amount.Cmp)
	spread := rest[len(rest)-1].Sub(rest[0]).In(quantity.Point)
	faults.unless(spread.More(p.Spread), "test %d is left out, but the spread of %s is within the %s allowed; all tests count", d.Test, spread, p.Spread)
	far := fromMiddle(rest, figures[d.Test])
	for _, m := range rest {
		if fromMiddle(rest, m).More(far) {
			faults.unless(false, "test %d at %s is left out as farthest from the middle, but %s is farther", d.Test, figures[d.Test], m)
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
