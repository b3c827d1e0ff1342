package settle_test

import (
	"testing"

	"tenthpoint/internal/quantity"
	"tenthpoint/internal/settle"
)

// Soybeans with 9.9 % of foreign material: 28,180 lb net, less 8.9 % is 25,672 lb, less 325 lb of
// water and 64 lb of handling 25,283 lb. The dry weight of all the clean grain keeps the same parts:
// 28,180 x 25,347 / 25,672 x 25,283 / 25,347 = 27,753 lb. Damage is $0.15 for each bushel of it.
func TestDryWeightAfterAWeightDiscount(t *testing.T) {
	facts := corn("28180", "14.1", with("foreign-material", "9.9 %"), with("damage", "6 %"))
	const folder = "../../testdata/engines/editions"
	for name, want := range map[string]struct{ dry, damage string }{
		folder + "/soybeans-main-2025.toml":                 {"27791", "69.48"},
		folder + "-format-2/soybeans-dry-format-2.toml":     {"27753", "69.38"},
		folder + "-format-2/soybeans-settled-format-2.toml": {"27753", "63.21"},
	} {
		s, err := settle.Settle(facts, edition(t, readText(t, name)))
		if err != nil {
			t.Fatal(name, err)
		}
		damage, _ := s.Sheet.Step(settle.DiscountLine("damage"))
		if !s.Settled.Value().Equal(quantity.Of("25283", quantity.Lb)) || !s.Dry.Value().Equal(quantity.Of(want.dry, quantity.Lb)) || !damage.Value().Equal(quantity.Of(want.damage, quantity.Dollar)) {
			t.Errorf("%s: settled %s, dry %s, damage %s, want %s lb and $%s", name, s.Settled.Value(), s.Dry.Value(), damage.Value(), want.dry, want.damage)
		}
	}
}

// A load accepted beyond the last row is not paid more than one in it.
func TestAcceptedBeyondTheLastRow(t *testing.T) {
	e := edition(t, readText(t, "../../testdata/engines/editions-format-2/canola-format-2.toml"))
	payable := func(green string) quantity.Amount {
		s, err := settle.Settle(corn("56000", "10", at("25 $/cwt"), with("dockage", "0 %"), with("distinctly-green", green+" %"), accepting("distinctly-green")), e)
		if err != nil {
			t.Fatal(green, err)
		}
		return s.Payable.Value()
	}
	if within, beyond := payable("20.0"), payable("20.1"); !within.Equal(beyond) {
		t.Errorf("20.0 %% is paid %s, 20.1 %% accepted %s", within, beyond)
	}
}

// 9 lb with a premium of 20 lb and 20 lb of water have 9 lb left and a dry weight of 9 - 20 = -11 lb:
// coarse roundings make one, and it settles no load.
func TestNoDryWeightBelowZero(t *testing.T) {
	e := ordered(t, scene(t, `[shrink]
method = "water"
basis = "left"
trigger = "15.0 %"
to = "15.0 %"
over_dry = "none"
round = "20 up"`, `[[discount]]
label = "Weight premium"
factor = "damage"
form = "per-unit"
of = "weight"
basis = "net"
untested = "none"
base = "0 %"
side = "above"
per = "1 %"
part = "exact"
premium = "1 %"
round = "20 up"`), `"discount.damage", "shrink", "handling", "drying", "discounts"`)
	facts := corn("9", "20", with("damage", "1 %"))
	refused(t, facts, e, "-11 lb")
	if _, err := settle.Engine(3).Settle(facts, e); err != nil {
		t.Errorf("the third engine settled such loads: %v", err)
	}
}
