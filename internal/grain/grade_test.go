package grain

import (
	"maps"
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"tenthpoint/internal/message"
	"tenthpoint/internal/message/errortest"
	"tenthpoint/internal/quantity"
)

// seen builds observations from text in each factor's own unit.
func seen(t interface{ Fatal(...any) }, c Commodity, pairs ...string) Observations {
	obs := Observations{}
	for i := 0; i < len(pairs); i += 2 {
		f, ok := c.Factor(FactorID(pairs[i]))
		if !ok {
			t.Fatal(c.ID, " has no ", pairs[i])
		}
		switch pairs[i+1] {
		case "yes":
			obs[f.ID] = Yes
		case "no":
			obs[f.ID] = No
		default:
			obs[f.ID] = quantity.Of(pairs[i+1], f.Unit)
		}
	}
	return obs
}

// perfect meets every limit of the best grade exactly.
func perfect(c Commodity) Observations {
	obs := Observations{}
	for _, l := range c.Grades.Limits {
		obs[l.Factor], _ = l.At(0)
		if second, ok := l.And(); ok {
			obs[second.Factor], _ = second.At(0)
		}
	}
	for _, w := range c.Grades.Wholes { // exactly on every part's limit would break the sum's
		for _, part := range w.Parts {
			if f, _ := c.Factor(part); w.Complete {
				obs[part] = quantity.Zero(f.Unit)
			} else if whole, ok := obs[w.Factor]; ok {
				obs[part] = quantity.Min(obs[part], whole)
			}
		}
	}
	return obs
}

func graded() []Commodity {
	return slices.DeleteFunc(All(), func(c Commodity) bool { return c.Grades == nil })
}

func mustGrade(t interface{ Fatal(...any) }, c Commodity, obs Observations) GradeResult {
	g, err := c.Grade(obs)
	if err != nil {
		t.Fatal(c.ID, ": ", err)
	}
	return g
}

func TestCornGradeNamesWhatHeldItDown(t *testing.T) {
	c := mustCommodity(t, "corn")
	g := mustGrade(t, c, seen(t, c, "test-weight", "53.9", "heat-damage", "0.2", "damage", "6.9", "bcfm", "2.1"))
	want := GradeResult{
		Grade: message.Words("U.S. No. 3"), Best: "U.S. No. 3", Complete: true,
		HeldDown: []Breach{
			{Factor: "Test weight", Result: "53.9 lb/bu", Limit: "54.0 lb/bu", Bound: Least, Grade: "U.S. No. 2"},
			{Factor: "Damaged kernels, total", Result: "6.9 %", Limit: "5.0 %", Bound: Most, Grade: "U.S. No. 2"},
		},
		SpecialNotTested: []string{"Flint", "Flint and dent", "Waxy", "Infested"},
		NotJudged:        "Weathering, stones, glass, harmful seeds and filth are not judged here: the desk has no place for them with this grain.",
		Advisory:         "Advice only: an official grade is given only by a licensed inspector.",
		Source:           "7 CFR 810.404 (60 FR 61196, 1995)",
	}
	if diff := cmp.Diff(want, g); diff != "" {
		t.Error(diff)
	}
}

func TestSampleGradeGivesItsReasons(t *testing.T) {
	c := mustCommodity(t, "corn")
	g := mustGrade(t, c, seen(t, c, "bcfm", "7.1", "damage", "16"))
	if !g.Sample || g.Grade.String() != "U.S. Sample grade" || !g.Complete {
		t.Errorf("%+v", g)
	}
	want := []string{
		"Damaged kernels, total 16.0 % is over 15.0 %, the most for U.S. No. 5",
		"Broken corn and foreign material 7.1 % is over 7.0 %, the most for U.S. No. 5",
	}
	if diff := cmp.Diff(want, heldDown(g)); diff != "" {
		t.Error(diff)
	}
}

// TestMaltingBarleyHasNoSampleGrade: below its last grade it is barley of
// another kind, not sample grade.
func TestMaltingBarleyHasNoSampleGrade(t *testing.T) {
	for _, id := range []string{"barley-malting-six", "barley-malting-two"} {
		c := mustCommodity(t, id)
		g := mustGrade(t, c, seen(t, c, "wild-oats", "3.1"))
		if g.Sample || g.Grade.String() != "below U.S. No. 4 of malting barley" {
			t.Errorf("%s: %+v", id, g)
		}
	}
}

func TestNeverClaimedAboveWhatWasTested(t *testing.T) {
	c := mustCommodity(t, "corn")
	obs := Observations{}
	for _, step := range []struct{ factor, value, grade, line string }{
		{"moisture", "15.0", "not graded", "not graded; not tested: Test weight, Heat-damaged kernels, Damaged kernels, total, Broken corn and foreign material"},
		{"test-weight", "54.0", "no better than U.S. No. 2", "no better than U.S. No. 2; not tested: Heat-damaged kernels, Damaged kernels, total, Broken corn and foreign material"},
		{"bcfm", "1.0", "no better than U.S. No. 2", "no better than U.S. No. 2; not tested: Heat-damaged kernels, Damaged kernels, total"},
		{"damage", "0.4", "no better than U.S. No. 2", "no better than U.S. No. 2; not tested: Heat-damaged kernels"},
		{"heat-damage", "0.1", "U.S. No. 2", "U.S. No. 2"},
	} {
		maps.Copy(obs, seen(t, c, step.factor, step.value))
		g := mustGrade(t, c, obs)
		if g.Grade.String() != step.grade || g.String() != step.line {
			t.Errorf("after %s: %q, %q", step.factor, g.Grade, g)
		}
	}
}

// TestAWholeOfZeroSettlesItsParts: no damage means no heat damage, and a
// total of zero other material means no stones and no glass.
func TestAWholeOfZeroSettlesItsParts(t *testing.T) {
	c := mustCommodity(t, "wheat-hrw")
	g := mustGrade(t, c, seen(t, c, "test-weight", "60.5", "damage", "0.0", "foreign-material", "0.2", "shrunken-broken", "1.5",
		"wheat-of-other-classes", "0.5", "stones", "0", "other-material", "0", "insect-damaged", "0"))
	if g.Grade.String() != "U.S. No. 1" || len(g.NotTested) != 0 {
		t.Errorf("%s: %+v", g, g.NotTested)
	}
}

func TestDefectsAreTheSumOfTheirParts(t *testing.T) {
	c := mustCommodity(t, "wheat-hrw")
	g := mustGrade(t, c, seen(t, c, "damage", "1.24", "foreign-material", "0.3", "shrunken-broken", "1.5"))
	if len(g.HeldDown) != 0 || g.Best != "U.S. No. 1" {
		t.Errorf("1.24 + 0.3 + 1.5 = 3.04 is recorded as 3.0, within 3.0: %+v", g)
	}
	g = mustGrade(t, c, seen(t, c, "damage", "1.25", "foreign-material", "0.3", "shrunken-broken", "1.5"))
	if want := []string{"Defects, total 3.1 % is over 3.0 %, the most for U.S. No. 1"}; !cmp.Equal(want, heldDown(g)) {
		t.Errorf("1.25 + 0.3 + 1.5 = 3.05 is recorded as 3.1: %v", heldDown(g))
	}
}

// TestStonesCountOnlyWhenTheyWeigh: soybeans, more than 3 and over 0.1 %.
func TestStonesCountOnlyWhenTheyWeigh(t *testing.T) {
	c := mustCommodity(t, "soybeans")
	base := perfect(c)
	for _, s := range []struct {
		count, percent string
		sample         bool
		missing        string
	}{
		{"3", "5.0", false, ""},
		{"4", "0.1", false, ""},
		{"4", "0.2", true, ""},
		{"4", "", false, "Stones by weight"},
		{"", "0.2", false, "Stones"},
		{"", "0.1", false, ""},
		{"3", "", false, ""},
		{"", "", false, "Stones, Stones by weight"},
	} {
		obs := Observations{}
		for id, a := range base {
			if id != StoneCount && id != Stones && id != OtherMaterial {
				obs[id] = a
			}
		}
		obs[OtherMaterial] = quantity.Int(10, quantity.Count)
		if s.count != "" {
			obs[StoneCount] = quantity.Of(s.count, quantity.Count)
			obs[OtherMaterial] = obs[StoneCount]
		}
		if s.percent != "" {
			obs[Stones] = quantity.Of(s.percent, quantity.Percent)
		}
		g := mustGrade(t, c, obs)
		if g.Sample != s.sample || strings.Join(g.NotTested, ", ") != s.missing {
			t.Errorf("%s stones of %s %%: sample %v, missing %v", s.count, s.percent, g.Sample, g.NotTested)
		}
		if s.sample && g.HeldDown[0].String() != "Stones 4 is over 3, the most for U.S. No. 4, and Stones by weight 0.2 % is over 0.1 %" {
			t.Error(heldDown(g))
		}
	}
}

// TestAnOdourIsSampleGrade: musty, sour, foreign in odor, or heating, whatever
// else it is (7 CFR 810.404, 810.1204, 810.1404).
func TestAnOdourIsSampleGrade(t *testing.T) {
	for _, id := range []string{"corn", "soybeans", "sorghum", "rye"} {
		c := mustCommodity(t, id)
		for _, fault := range []FactorID{Musty, Sour, OffOdor, Heating} {
			obs := perfect(c)
			delete(obs, OtherMaterial) // the sum of what was counted
			obs[fault] = No
			if g := mustGrade(t, c, obs); g.Grade.String() != "U.S. No. 1" || len(g.Faults)+len(g.Cautions) != 0 {
				t.Errorf("%s without %s: %+v", id, fault, g)
			}
			obs[fault] = Yes
			if g := mustGrade(t, c, obs); g.Grade.String() != sampleGrade || !g.Sample || !g.Complete || g.Open || len(g.Faults) != 1 || len(g.Cautions) != 0 {
				t.Errorf("%s with %s: %+v", id, fault, g)
			}
			// Nothing else needs to be tested to know it.
			if g := mustGrade(t, c, Observations{fault: Yes}); g.Grade.String() != sampleGrade || len(g.NotTested) != 0 {
				t.Errorf("%s, only %s: %+v", id, fault, g)
			}
		}
	}
}

// TestAnOdourWithholdsTheGrade: where its rule was not read, it does not make
// sample grade, and no numbered grade is claimed over it either.
func TestAnOdourWithholdsTheGrade(t *testing.T) {
	c := mustCommodity(t, "oats")
	for _, fault := range []FactorID{Musty, Sour, OffOdor, Heating} {
		obs := perfect(c)
		obs[fault] = No
		if g := mustGrade(t, c, obs); g.Grade.String() != "U.S. No. 1" || len(g.Cautions) != 0 {
			t.Errorf("without %s: %+v", fault, g)
		}
		obs[fault] = Yes
		g := mustGrade(t, c, obs)
		if g.Grade.String() != "no better than U.S. No. 1" || g.Sample || len(g.Cautions) != 1 || !strings.Contains(g.Cautions[0].String(), "from memory") {
			t.Errorf("with %s: %+v", fault, g)
		}
	}
}

func TestGradeWithoutATable(t *testing.T) {
	_, err := mustCommodity(t, "peas").Grade(Observations{})
	if !errortest.NotFound("Peas").Met(err) {
		t.Error(err)
	}
}

// heldDown are the limits that a lot exceeded, in words.
func heldDown(g GradeResult) []string {
	out := make([]string, len(g.HeldDown))
	for i, b := range g.HeldDown {
		out[i] = b.String()
	}
	return out
}
