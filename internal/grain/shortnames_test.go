package grain

import "testing"

// What a tester writes is understood for each grain that has the factor, and for no
// other.
func TestShortNames(t *testing.T) {
	for _, c := range []struct {
		commodity, typed string
		want             FactorID
	}{
		{"corn", "tw", TestWeight}, {"corn", "DKT", Damage}, {"corn", "ht", HeatDamage}, {"corn", "bcfm", BrokenCorn},
		{"sorghum", "BCFM", BrokenSorghum}, {"sorghum", "bnfm", BrokenSorghum}, {"soybeans", "fm", ForeignMaterial},
		{"wheat-hrw", "SBK", ShrunkenBroken}, {"wheat-hrw", "dkg", Dockage}, {"corn", "Test weight", TestWeight},
		{"corn", "TEST-WEIGHT", TestWeight},
	} {
		grain, err := ByID(c.commodity)
		if err != nil {
			t.Fatal(err)
		}
		if f, ok := grain.FactorCalled(c.typed); !ok || f.ID != c.want {
			t.Errorf("%s, %q: %q %v, want %q", c.commodity, c.typed, f.ID, ok, c.want)
		}
	}
	soybeans, _ := ByID("soybeans")
	if f, ok := soybeans.FactorCalled("bcfm"); ok {
		t.Errorf("soybeans have no bcfm: %q", f.ID)
	}
}

// Every short name belongs to a factor that some grain has.
func TestShortNamesAreOfFactors(t *testing.T) {
	for short, ids := range shortNames {
		for _, id := range ids {
			known := false
			for _, c := range All() {
				_, has := c.Factor(id)
				known = known || has
			}
			if !known {
				t.Errorf("%s is short for %q, which no grain has", short, id)
			}
		}
	}
	if got := ShortName(HeatDamage); got != "HT" {
		t.Errorf("heat damage is %q", got)
	}
}
