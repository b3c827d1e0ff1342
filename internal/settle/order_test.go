package settle_test

import (
	"strings"
	"testing"
)

// dirt takes one percent of the weight for every percent of broken corn.
func dirt(basis string) string {
	return strings.Replace(`[[discount]]
label = "Broken corn"
factor = "bcfm"
form = "per-unit"
of = "weight"
basis = "BASIS"
untested = "none"
base = "0 %"
side = "above"
per = "1.0 %"
part = "exact"
discount = "1 %"`, "BASIS", basis, 1)
}

// The same rules in another order, on another basis, bring another figure; the
// edition says which. 100,000 lb at 23.5 % (a tenth of the weight is water over
// 15.0 %) with 2 % broken corn and 0.5 % handling.
func TestOrderAndBasis(t *testing.T) {
	shrinkOn := func(basis string) string {
		return "[shrink]\nmethod = \"water\"\nbasis = \"" + basis + "\"\ntrigger = \"15.0 %\"\nto = \"15.0 %\"\nover_dry = \"none\""
	}
	const shrinkFirst, dirtFirst = `"shrink", "handling", "drying", "discounts"`, `"discount.bcfm", "shrink", "handling", "drying"`
	for _, c := range []struct{ order, dirtOn, shrinkOn, water, dirt, dry, settled string }{
		{shrinkFirst, "net", "net", "10,000 lb", "2,000 lb", "89,500 lb", "87,500 lb"},
		{shrinkFirst, "dry", "net", "10,000 lb", "1,790 lb", "89,500 lb", "87,710 lb"},
		{shrinkFirst, "left", "net", "10,000 lb", "1,790 lb", "89,500 lb", "87,710 lb"},
		{dirtFirst, "net", "net", "10,000 lb", "2,000 lb", "89,500 lb", "87,500 lb"},
		{dirtFirst, "left", "left", "9,800 lb", "2,000 lb", "89,710 lb", "87,710 lb"},
	} {
		e := ordered(t, scene(t, shrinkOn(c.shrinkOn), "[handling]\nmethod = \"wet\"\nrate = \"0.5 %\"\nalways = false", dirt(c.dirtOn)), c.order)
		s := mustSettle(t, corn("100000", "23.5", with("bcfm", "2.0 %")), e)
		shows(t, s, map[string]string{"shrink.water": c.water, "discount.bcfm": c.dirt, "dry": c.dry, "settled": c.settled})
	}
}

// Michigan State: discounts are often taken on the gross bushels, before
// shrink.
func TestDiscountOnGrossBushels(t *testing.T) {
	for basis, want := range map[string]string{"net": "$35.71", "dry": "$32.14"} {
		e := scene(t, `[[discount]]
label = "Damage discount"
factor = "damage"
form = "per-unit"
of = "money"
basis = "`+basis+`"
untested = "none"
base = "5.0 %"
side = "above"
per = "1.0 %"
part = "exact"
discount = "0.02 $/bu"`)
		shows(t, mustSettle(t, corn("100000", "23.5", with("damage", "6.0 %")), e), map[string]string{"discount.damage": want})
	}
}

// Dockage is recorded by each grain's own rule (7 CFR 810.104(b)) and taken off
// first.
func TestDockageByTheGrainsRule(t *testing.T) {
	for _, c := range []struct{ edition, tested, recorded, dockage string }{
		{"wheat-hrw-main-2025", "2.45 %", "2.5 %", "2,500 lb"},
		{"wheat-hrw-main-2025", "0.35 %", "0.4 %", "400 lb"},
		{"barley-main-2025", "2.99 %", "2.5 %", "2,500 lb"},
		{"barley-main-2025", "0.49 %", "0.0 %", "0 lb"},
		{"sorghum-main-2025", "2.99 %", "2 %", "2,000 lb"},
		{"sorghum-main-2025", "0.99 %", "0 %", "0 lb"},
	} {
		f := corn("100000", "12.0", with("dockage", c.tested))
		s := mustSettle(t, f, shipped(t, c.edition))
		shows(t, s, map[string]string{"factor.dockage": c.recorded, "dockage": c.dockage})
		if !s.Clean.Value().Equal(s.Net.Value().Sub(s.Dockage.Value())) {
			t.Errorf("%s: clean weight is %s", c.edition, s.Clean.Printed())
		}
	}
}

// Whether an untested load is settled without dockage is the edition's word.
func TestDockageUntested(t *testing.T) {
	s := mustSettle(t, corn("100000", "12.0"), shipped(t, "wheat-hrw-main-2025"))
	if s.Dockage.Note().String() != "not tested, none taken" || s.Clean != s.Net {
		t.Errorf("dockage: %s, %s", s.Dockage.Printed(), s.Dockage.Note())
	}
	refused(t, corn("100000", "12.0"), shipped(t, "wheat-hrs-prairie-2025"), "Dockage has not been tested, and wheat-hrs-prairie-2025: dockage, line")
}

// Dockage of everything leaves nothing to settle.
func TestDockageOfEverything(t *testing.T) {
	refused(t, corn("100000", "12.0", with("dockage", "100 %")), shipped(t, "wheat-hrw-main-2025"),
		"Dockage takes 100,000 lb, which leaves 0 lb of the load. Check the sample and edition wheat-hrw-main-2025.")
}

// The order in which results were recorded does not change the settlement.
func TestOrderOfResultsDoesNotMatter(t *testing.T) {
	e := shipped(t, "corn-main-2026")
	one := mustSettle(t, corn("52300", "18.3", with("damage", "6.0 %"), with("bcfm", "4.0 %"), at("4.00 $/bu")), e)
	two := mustSettle(t, corn("52300", "18.3", with("bcfm", "4.0 %"), with("damage", "6.0 %"), at("4.00 $/bu")), e)
	for _, line := range one.Lines() {
		if other, ok := two.Sheet.Step(line.ID()); !ok || !other.Value().Equal(line.Value()) {
			t.Errorf("%s differs", line.ID())
		}
	}
}
