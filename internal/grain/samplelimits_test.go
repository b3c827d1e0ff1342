package grain

import (
	"testing"

	"tenthpoint/internal/quantity"
)

// Sample grade by what is found, each figure from the section beside it: at its
// limit a lot keeps its grade, one more and it has none.
func TestSampleGradeByCounts(t *testing.T) {
	tables := shippedOn(t, "2026-12-02")
	for _, c := range []struct{ commodity, factor, keeps, loses, source string }{
		{"corn", "stones", "0.1", "0.2", "7 CFR 810.404(b)"}, {"corn", "glass", "1", "2", "7 CFR 810.404(b)"},
		{"corn", "crotalaria", "2", "3", "7 CFR 810.404(b)"}, {"corn", "castor-beans", "1", "2", "7 CFR 810.404(b)"},
		{"corn", "unknown-substances", "3", "4", "7 CFR 810.404(b)"}, {"corn", "cockleburs", "7", "8", "7 CFR 810.404(b)"},
		{"corn", "animal-filth-weight", "0.20", "0.21", "7 CFR 810.404(b)"}, {"corn", "musty", "0", "1", "7 CFR 810.404(c)"}, {"corn", "low-quality", "0", "1", "7 CFR 810.404(d)"},
		{"rye", "stone-count", "7", "8", "7 CFR 810.1204(b)"}, {"rye", "stones", "0.2", "0.3", "7 CFR 810.1204(b)"},
		{"flaxseed", "animal-filth", "9", "10", "7 CFR 810.604(b)"},
		{"sorghum", "badly-weathered", "0", "1", "7 CFR 810.1404(c)"}, {"soybeans", "musty", "0", "1", "7 CFR 810.1604"},
	} {
		for text, lost := range map[string]bool{c.keeps: false, c.loses: true} {
			if got := clean(t, tables, c.commodity, c.factor, text).Sample; got != lost {
				t.Errorf("%s, %s %s: sample grade is %t, want %t (%s)", c.commodity, c.factor, text, got, lost, c.source)
			}
		}
	}
	// Flaxseed: 8 stones count only where they weigh over 0.2 %.
	for weight, lost := range map[string]bool{"0.2": false, "0.3": true} {
		if got := clean(t, tables, "flaxseed", "stone-count", "8", "stones", weight).Sample; got != lost {
			t.Errorf("8 stones of %s %% in flaxseed: sample grade is %t", weight, got)
		}
	}
}

// clean grades a sample in which nothing was found but what is given.
func clean(t *testing.T, tables *Tables, commodity string, given ...string) GradeResult {
	t.Helper()
	c, err := tables.ByID(commodity)
	if err != nil {
		t.Fatal(err)
	}
	obs := Observations{}
	for _, f := range c.LookedFor() {
		obs[f.ID] = quantity.Zero(f.Unit)
	}
	for i := 0; i < len(given); i += 2 {
		f, ok := c.Factor(FactorID(given[i]))
		if !ok {
			t.Fatalf("%s has no factor %s", commodity, given[i])
		}
		obs[f.ID] = quantity.Of(given[i+1], f.Unit)
	}
	g, err := c.Grade(obs)
	if err != nil {
		t.Fatal(err)
	}
	return g
}

// A sample of which the figures are measured and nothing else was seen is graded
// whole; purple mottled or stained is a word added (7 CFR 810.1605(b)).
func TestGradeIsWholeWhereNothingWasSeen(t *testing.T) {
	tables := shippedOn(t, "2026-12-02")
	for commodity, measured := range map[string][]string{
		"corn":     {"test-weight", "56", "heat-damage", "0", "damage", "2.0", "bcfm", "1.0"},
		"soybeans": {"heat-damage", "0", "damage", "1.0", "foreign-material", "0.5", "splits", "5"},
	} {
		if g := clean(t, tables, commodity, measured...); !g.Complete || g.Grade.String() != "U.S. No. 1" {
			t.Errorf("%s is %s, not tested: %v", commodity, g.Grade, g.NotTested)
		}
	}
	g := clean(t, tables, "soybeans", "purple-stained", "1")
	if len(g.Special) != 1 || g.Special[0] != "Purple mottled or stained" {
		t.Errorf("stained soybeans are %v", g.Special)
	}
}
