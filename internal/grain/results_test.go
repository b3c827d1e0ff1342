package grain

import (
	"strings"
	"testing"

	"tenthpoint/internal/quantity"
)

func TestRecordRefusesWhatDoesNotBelong(t *testing.T) {
	wheat, corn := mustCommodity(t, "wheat-hrs"), mustCommodity(t, "corn")
	for name, c := range map[string]struct {
		commodity Commodity
		obs       Observations
		want      []string
	}{
		"strange factor": {corn, seen(t, mustCommodity(t, "soybeans"), "splits", "5"),
			[]string{`Corn has no factor called "splits"; leave it out`}},
		"wrong unit": {corn, Observations{Damage: quantity.Int(3, quantity.Point)},
			[]string{"Damaged kernels, total is in %, but was written down as 3 pt; write it down again in %"}},
		"out of scale": {corn, seen(t, corn, "damage", "100.1", "moisture", "2.9", "bcfm", "-0.1", "test-weight", "90.1"),
			[]string{
				"Broken corn and foreign material -0.1 % is outside 0 % to 100 %; check the figure and write it down again",
				"Damaged kernels, total 100.1 % is outside 0 % to 100 %; check the figure and write it down again",
				"Moisture 2.9 % is outside 3 % to 60 %; check the figure and write it down again",
				"Test weight 90.1 lb/bu is outside 10 lb/bu to 90 lb/bu; check the figure and write it down again",
			}},
		"metric test weight out of scale": {corn, Observations{TestWeight: quantity.Int(5, quantity.KgPerHL)},
			[]string{"Test weight 3.884442… lb/bu is outside 10 lb/bu to 90 lb/bu; check the figure and write it down again"}},
		"part over whole": {corn, seen(t, corn, "damage", "1.0", "heat-damage", "1.1"),
			[]string{"Damaged kernels, total 1.0 % is less than its parts: Heat-damaged kernels 1.1 %; check the figures"}},
		"sum over whole": {wheat, seen(t, wheat, "defects", "2.0", "damage", "1.0", "foreign-material", "1.0", "shrunken-broken", "0.3"),
			[]string{"Defects, total 2.0 % is less than its parts: Damaged kernels, total 1.0 %, Foreign material 1.0 %, Shrunken and broken kernels 0.3 %; check the figures"}},
		"count over whole": {wheat, seen(t, wheat, "other-material", "1", "glass", "1", "stone-count", "1"),
			[]string{"Other material, total, in 1 kg 1 is less than its parts: Pieces of glass in 1 kg 1, Stones in 1 kg 1; check the figures"}},
		"whole over its parts": {wheat, seen(t, wheat, "defects", "2.5", "damage", "1.0", "foreign-material", "1.0", "shrunken-broken", "0.2"),
			[]string{"Defects, total 2.5 % is more than its parts together: Damaged kernels, total 1.0 %, Foreign material 1.0 %, Shrunken and broken kernels 0.2 %; check the figures"}},
	} {
		_, err := c.commodity.Record(c.obs)
		if err == nil {
			t.Errorf("%s: accepted", name)
			continue
		}
		if got, want := err.Error(), strings.Join(c.want, "\n"); got != want {
			t.Errorf("%s:\n%s\nwant\n%s", name, got, want)
		}
	}
}

// TestRoundingMayTakePartsPastTheirWhole: 0.45, 0.45 and 0.45 are recorded 0.5
// each and together 1.4, and nobody has made a mistake. Three halves of a
// tenth and the whole's own make 0.2 the most rounding can do.
func TestRoundingMayTakePartsPastTheirWhole(t *testing.T) {
	c := mustCommodity(t, "wheat-hrs")
	for _, defects := range []string{"1.4", "1.3"} {
		if _, err := c.Record(seen(t, c, "defects", defects, "damage", "0.5", "foreign-material", "0.5", "shrunken-broken", "0.5")); err != nil {
			t.Error(defects, err)
		}
	}
	if _, err := c.Record(seen(t, c, "defects", "1.2", "damage", "0.5", "foreign-material", "0.5", "shrunken-broken", "0.5")); err == nil {
		t.Error("1.2 is past what rounding can do and was accepted")
	}
}

// TestAPartMayFillItsWhole: 0.54 of heat damage in 0.54 of damage; both are
// recorded as 0.5 and neither is wrong.
func TestAPartMayFillItsWhole(t *testing.T) {
	c := mustCommodity(t, "corn")
	if _, err := c.Record(seen(t, c, "damage", "0.54", "heat-damage", "0.54")); err != nil {
		t.Error(err)
	}
}

func TestRecordRoundsByTheGrainsOwnRule(t *testing.T) {
	for _, c := range []struct{ commodity, factor, measured, recorded string }{
		{"corn", "moisture", "2.45", ""}, // below the scale, see the tie below
		{"corn", "damage", "2.45", "2.5 %"},
		{"corn", "damage", "0.35", "0.4 %"},
		{"corn", "damage", "0.4449", "0.4 %"},
		{"corn", "moisture", "15.45", "15.5 %"},
		{"corn", "test-weight", "55.95", "56 lb/bu"},
		{"rye", "test-weight", "55.94", "55.9 lb/bu"},
		{"barley", "test-weight", "47.99", "47.5 lb/bu"},
		{"flaxseed", "test-weight", "49.49", "49 lb/bu"},
		{"wheat-hrw", "dockage", "1.25", "1.3 %"},
		{"rye", "dockage", "0.04", "0 %"},
		{"barley", "dockage", "0.99", "0.5 %"},
		{"triticale", "dockage", "0.49", "0 %"},
		{"barley-malting-six", "dockage", "1.99", "1.5 %"},
		{"sorghum", "dockage", "1.99", "1 %"},
		{"flaxseed", "dockage", "0.99", "0 %"},
		{"canola", "dockage", "1.25", "1.3 %"},
		{"canola", "stones", "0.055", "0.06 %"},
	} {
		grain := mustCommodity(t, c.commodity)
		got, err := grain.Record(seen(t, grain, c.factor, c.measured))
		if c.recorded == "" {
			if err == nil {
				t.Errorf("%s %s %s accepted", c.commodity, c.factor, c.measured)
			}
			continue
		}
		if err != nil || got[FactorID(c.factor)].String() != c.recorded {
			t.Errorf("%s %s %s: %s %v, want %s", c.commodity, c.factor, c.measured, got[FactorID(c.factor)], err, c.recorded)
		}
	}
}
