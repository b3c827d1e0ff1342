package grain

import (
	"maps"
	"slices"
	"testing"

	"pgregory.net/rapid"

	"tenthpoint/internal/quantity"
)

// drawResult draws a figure as measured: most often near one of the factor's
// limits, a fraction of a step to either side.
func drawResult(t *rapid.T, c Commodity, l Limit) quantity.Amount {
	f, _ := c.Factor(l.Factor)
	near, set := l.At(rapid.IntRange(0, len(c.Grades.Names)-1).Draw(t, "grade"))
	if !set || rapid.IntRange(0, 4).Draw(t, "anywhere") == 0 {
		near = quantity.Int(rapid.Int64Range(0, 100).Draw(t, "figure"), f.Unit)
	}
	quarters := rapid.Int64Range(-8, 8).Draw(t, "quarters")
	return within(f, near.Add(quarterStep(f, quarters)))
}

// quarterStep is so many quarters of the step a factor is recorded in; counts
// go by ones.
func quarterStep(f Factor, n int64) quantity.Amount {
	if f.Record.IsExact() {
		return quantity.Int(n, f.Unit)
	}
	return smallest(f).Mul(quantity.Of("0.25", quantity.Plain)).Mul(quantity.Int(n, quantity.Plain))
}

func within(f Factor, a quantity.Amount) quantity.Amount {
	return quantity.Max(f.Min, quantity.Min(f.Max, a))
}

// gradeLines are the lines of a table with the second limits apart.
func gradeLines(c Commodity) []Limit {
	var out []Limit
	for _, l := range c.Grades.Limits {
		out = append(out, l)
		if second, ok := l.And(); ok {
			out = append(out, second)
		}
	}
	return out
}

// drawObservations draws a sample that contradicts itself nowhere: a whole is
// raised to what its parts make, or is left untested.
func drawObservations(t *rapid.T, c Commodity) Observations {
	obs := Observations{}
	untested := rapid.SampledFrom([]int{0, 0, 1, 3}).Draw(t, "untested in ten")
	for _, l := range gradeLines(c) {
		if rapid.IntRange(0, 9).Draw(t, "tested") >= untested {
			obs[l.Factor] = drawResult(t, c, l)
		}
	}
	for _, w := range c.Grades.Wholes {
		fitWhole(c, w, obs)
	}
	return obs
}

func fitWhole(c Commodity, w Whole, obs Observations) {
	whole, tested := obs[w.Factor]
	if !tested {
		return
	}
	f, _ := c.Factor(w.Factor)
	least, parts := w.least(results{commodity: c, measured: obs})
	if !w.Complete || parts < len(w.Parts) {
		least = quantity.Max(least, whole)
	}
	obs[w.Factor] = least
	if least.More(f.Max) {
		delete(obs, w.Factor)
	}
}

func drawGraded(t *rapid.T) Commodity {
	return rapid.SampledFrom(graded()).Draw(t, "commodity")
}

// TestWorseIsNeverBetter: a worse figure for one factor, all else equal, is
// either refused or gives no better grade.
func TestWorseIsNeverBetter(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c := drawGraded(t)
		obs := drawObservations(t, c)
		before := mustGrade(t, c, obs)
		l := rapid.SampledFrom(gradeLines(c)).Draw(t, "line")
		if _, tested := obs[l.Factor]; !tested {
			return
		}
		f, _ := c.Factor(l.Factor)
		by := quarterStep(f, rapid.Int64Range(0, 400).Draw(t, "worse by"))
		if l.Bound == Least {
			by = by.Neg()
		}
		worse := maps.Clone(obs)
		worse[l.Factor] = within(f, obs[l.Factor].Add(by))
		after, err := c.Grade(worse)
		if err == nil && rank(c, after.Best) < rank(c, before.Best) {
			t.Fatalf("%s: %s from %s to %s: %s before, %s after", c.ID, l.Factor, obs[l.Factor], worse[l.Factor], before.Best, after.Best)
		}
	})
}

// TestMoreTestsNeverRaiseTheGrade: what is still open only ever narrows.
func TestMoreTestsNeverRaiseTheGrade(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c := drawGraded(t)
		obs := drawObservations(t, c)
		all := mustGrade(t, c, obs)
		fewer := maps.Clone(obs)
		maps.DeleteFunc(fewer, func(FactorID, quantity.Amount) bool { return rapid.Bool().Draw(t, "dropped") })
		some, err := c.Grade(fewer)
		if err != nil {
			t.Fatal(err)
		}
		if some.Best != "" && rank(c, some.Best) > rank(c, all.Best) {
			t.Fatalf("%s: %s by all tests, %s by some of them", c.ID, all.Best, some.Best)
		}
	})
}

// TestCompleteMeansComplete: once nothing is missing, no further test of an
// untested factor can change the grade; and while something is, no bare grade
// is claimed. A sum is not tested apart from its parts: it is only their sum.
func TestCompleteMeansComplete(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c := drawGraded(t)
		obs := drawObservations(t, c)
		g := mustGrade(t, c, obs)
		if !g.Complete {
			if slices.Contains(c.Grades.Names, g.Grade.String()) {
				t.Fatalf("%s: %q is claimed with %v not tested", c.ID, g.Grade, g.NotTested)
			}
			return
		}
		sums := map[FactorID]bool{}
		for _, w := range c.Grades.Wholes {
			sums[w.Factor] = w.Complete
		}
		for _, l := range gradeLines(c) {
			if _, tested := obs[l.Factor]; tested || sums[l.Factor] {
				continue
			}
			more := maps.Clone(obs)
			more[l.Factor] = drawResult(t, c, l)
			if after, err := c.Grade(more); err == nil && after.Best != g.Best {
				t.Fatalf("%s: %s was complete, %s %s made it %s", c.ID, g.Best, l.Factor, more[l.Factor], after.Best)
			}
		}
	})
}

// TestMoistureClassOnlyRises: wetter grain is never in a drier class.
func TestMoistureClassOnlyRises(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		name := rapid.SampledFrom(MoistureGrains()).Draw(t, "grain")
		draw := func(label string) quantity.Amount {
			return quantity.Int(rapid.Int64Range(300, 6000).Draw(t, label), quantity.Percent).Mul(quantity.Of("0.01", quantity.Plain))
		}
		a, b := draw("a"), draw("b")
		drier, errA := Class(name, quantity.Min(a, b))
		wetter, errB := Class(name, quantity.Max(a, b))
		if errA != nil || errB != nil {
			t.Fatal(errA, errB)
		}
		if slices.Index(classNames, drier.Name) > slices.Index(classNames, wetter.Name) {
			t.Fatalf("%s: %s at %s, %s at %s", name, drier.Name, quantity.Min(a, b), wetter.Name, quantity.Max(a, b))
		}
		if wetter.HasOver && !wetter.Moisture.More(wetter.Over) || wetter.HasUpTo && wetter.Moisture.More(wetter.UpTo) {
			t.Fatalf("%s is not inside %s", wetter.Moisture, wetter.Interval())
		}
	})
}
