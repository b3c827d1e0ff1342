package grain

import (
	"testing"

	"tenthpoint/internal/quantity"
)

// smallest is the step a factor is recorded in: the least by which a result
// can miss a limit.
func smallest(f Factor) quantity.Amount {
	if f.Record.IsExact() {
		return quantity.Int(1, f.Unit)
	}
	return quantity.New(f.Record.Step, f.Unit)
}

// TestEveryLimitJustBelowOnAndAbove tests one recorded step inside, on, and one step beyond every
// limit of every table, with only that factor known.
func TestEveryLimitJustBelowOnAndAbove(t *testing.T) {
	for _, c := range graded() {
		for _, l := range c.Grades.Limits {
			for i := range c.Grades.Names {
				if limit, set := l.At(i); set {
					checkLimit(t, c, l, i, limit)
				}
			}
		}
	}
}

func checkLimit(t *testing.T, c Commodity, l Limit, i int, limit quantity.Amount) {
	t.Helper()
	f, _ := c.Factor(l.Factor)
	step := smallest(f)
	if l.Bound == Least {
		step = step.Neg()
	}
	for _, place := range []struct {
		name   string
		at     quantity.Amount
		within bool
	}{
		{"inside", limit.Sub(step), true}, {"on", limit, true}, {"beyond", limit.Add(step), false},
	} {
		if place.at.Less(f.Min) || place.at.More(f.Max) {
			continue
		}
		obs := Observations{f.ID: place.at}
		if second, ok := l.And(); ok { // the companion limit broken, so that this one decides
			obs[second.Factor] = quantity.Int(50, quantity.Percent)
		}
		g, err := c.Grade(obs)
		if err != nil {
			t.Errorf("%s: %v", c.ID, err)
			continue
		}
		if got := rank(c, g.Best) <= i; got != place.within {
			t.Errorf("%s, %s %s the limit of %s for %s: %s", c.ID, f.Name, place.name, limit, c.Grades.Names[i], g.Best)
		}
	}
}

// rank is a grade's place, best first.
func rank(c Commodity, grade string) int {
	for i, name := range c.Grades.Names {
		if name == grade {
			return i
		}
	}
	return len(c.Grades.Names)
}

// TestResultsAreRecordedOnceBeforeTheyAreCompared: the measured figure is rounded by the grain's
// own rule, once, and only then compared with the limit.
func TestResultsAreRecordedOnceBeforeTheyAreCompared(t *testing.T) {
	for _, c := range []struct{ commodity, factor, measured, grade string }{
		{"corn", "test-weight", "55.95", "U.S. No. 1"}, // 56.0
		{"corn", "test-weight", "55.949", "U.S. No. 2"},
		{"barley", "test-weight", "47.4", "U.S. No. 1"}, // 47.0, half pounds, the rest dropped
		{"barley", "test-weight", "46.99", "U.S. No. 2"},
		{"oats", "test-weight", "35.99", "U.S. No. 2"},
		{"corn", "damage", "3.04", "U.S. No. 1"},
		{"corn", "damage", "3.0499", "U.S. No. 1"}, // never by way of 3.05
		{"corn", "damage", "3.05", "U.S. No. 2"},
		{"canola", "ergot", "0.054", "U.S. No. 1"},
		{"canola", "ergot", "0.055", "U.S. Sample grade"},
	} {
		grain := mustCommodity(t, c.commodity)
		if g := mustGrade(t, grain, seen(t, grain, c.factor, c.measured)); g.Best != c.grade {
			t.Errorf("%s %s %s: %s, want %s", c.commodity, c.factor, c.measured, g.Best, c.grade)
		}
	}
}

// TestTestWeightInKgPerHL: 56 lb/bu is 72.08 kg/hL by definition of pound and
// bushel, and the grade is the same whichever way it was read.
func TestTestWeightInKgPerHL(t *testing.T) {
	c := mustCommodity(t, "corn")
	for kgPerHL, want := range map[string]string{"72.08": "U.S. No. 1", "72.01": "U.S. No. 2", "69.51": "U.S. No. 2", "69.4": "U.S. No. 3"} {
		g := mustGrade(t, c, Observations{TestWeight: quantity.Of(kgPerHL, quantity.KgPerHL)})
		if g.Best != want {
			t.Errorf("%s kg/hL: %s, want %s", kgPerHL, g.Best, want)
		}
	}
}

// TestTablesGetLooser: a worse grade never asks more of a factor.
func TestTablesGetLooser(t *testing.T) {
	for _, c := range graded() {
		for _, l := range c.Grades.Limits {
			for i := 1; i < len(c.Grades.Names); i++ {
				better, _ := l.At(i - 1)
				worse, set := l.At(i)
				if set && (l.Bound == Least && worse.More(better) || l.Bound == Most && worse.Less(better)) {
					t.Errorf("%s %s: %s for %s after %s", c.ID, l.Factor, worse, c.Grades.Names[i], better)
				}
			}
		}
	}
}

// TestTablesStandOnTheirCommodity: every line, part and condition is about a
// factor the commodity has, and in its unit.
func TestTablesStandOnTheirCommodity(t *testing.T) {
	need := func(c Commodity, id FactorID) Factor {
		f, ok := c.Factor(id)
		if !ok {
			t.Errorf("%s has no factor %q that its tables speak of", c.ID, id)
		}
		return f
	}
	for _, c := range All() {
		for _, s := range c.Special {
			for _, way := range s.Any {
				for _, condition := range way {
					if f := need(c, condition.Factor); f.Unit != condition.Figure.Unit() {
						t.Errorf("%s %s: %s is in %s", c.ID, s.Name, f.ID, f.Unit)
					}
				}
			}
		}
		if c.Grades == nil {
			continue
		}
		for _, l := range c.Grades.Limits {
			if limit, _ := l.At(0); need(c, l.Factor).Unit != limit.Unit() {
				t.Errorf("%s: the limit of %s is in %s", c.ID, l.Factor, limit.Unit())
			}
			if n := len(l.byGrade); n != 1 && n != len(c.Grades.Names) {
				t.Errorf("%s %s: %d figures for %d grades", c.ID, l.Factor, n, len(c.Grades.Names))
			}
		}
		for _, w := range c.Grades.Wholes {
			for _, part := range append([]FactorID{w.Factor}, w.Parts...) {
				if need(c, part).Unit != need(c, w.Factor).Unit {
					t.Errorf("%s: %s is no part of %s, their units differ", c.ID, part, w.Factor)
				}
			}
		}
	}
}
