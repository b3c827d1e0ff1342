package settle_test

import (
	"testing"

	"tenthpoint/internal/quantity"
	"tenthpoint/internal/settle"
)

// The rules that hold where an edition says nothing, as the handbook's chapter on rates lists them.
// The others of its list are with their subject: least charges, bands and part of a unit in
// drying_test.go and discount_test.go, places of results in package grain, limits of what is typed
// in package entry.

const (
	tenthOfWeight = `[[discount]]
label = "Dirt"
factor = "bcfm"
form = "per-unit"
of = "weight"
basis = "net"
untested = "none"
base = "0 %"
side = "above"
per = "1 %"
part = "exact"
discount = "1 %"`
	weightFirst = `"discount.bcfm", "shrink", "handling", "drying", "discounts"`
)

// Wet handling is of the clean weight where nothing is shrunk, whatever a discount took before: 1 %
// of 100,000 lb, and not of the 90,000 left.
func TestWetHandlingWithoutShrink(t *testing.T) {
	e := ordered(t, scene(t, tenthOfWeight, "[shrink]\nmethod = \"none\"", "[handling]\nmethod = \"wet\"\nrate = \"1 %\"\nalways = true"), weightFirst)
	shows(t, mustSettle(t, corn("100000", "14.0", with("bcfm", "10 %")), e), map[string]string{"discount.bcfm": "10,000 lb", "handling": "1,000 lb"})
}

// Dried handling is of what is left after the water, the weight discount included: 100,000 lb less
// 10,000, less 9,000 of water (a tenth of what is left), and 1 % of 81,000.
func TestDriedHandlingAfterAWeightDiscount(t *testing.T) {
	e := ordered(t, scene(t, tenthOfWeight, "[shrink]\nmethod = \"water\"\nbasis = \"left\"\ntrigger = \"15.0 %\"\nto = \"15.0 %\"\nover_dry = \"none\"", "[handling]\nmethod = \"dried\"\nrate = \"1 %\"\nalways = true"), weightFirst)
	shows(t, mustSettle(t, corn("100000", "23.5", with("bcfm", "10 %")), e), map[string]string{"shrink.water": "9,000 lb", "handling": "810 lb"})
}

// Up goes by the size: a premium of 10.01 becomes 11 dollars as a discount does.
func TestUpGoesBySize(t *testing.T) {
	for _, direction := range []string{"discount", "premium"} {
		e := scene(t, damage("form = \"table\"\nof = \"money\"\nround = \"1 up\"\n\n[[discount.row]]\nupto = \"50 %\"\n"+direction+" = \"0.01001 $/bu\""))
		shows(t, mustSettle(t, corn("56000", "15.0", with("damage", "1 %")), e), map[string]string{"discount.damage": "$11.00"})
	}
}

// The cap comes before the rounding of the figure per unit: two steps of 0.013 are 0.026, capped at
// 0.025, rounded up to 0.03. Rounded first they would be 0.03 and capped at 0.025.
func TestCapComesBeforeRounding(t *testing.T) {
	e := scene(t, damage("form = \"per-unit\"\nof = \"money\"\nbase = \"5.0 %\"\nside = \"above\"\nper = \"1.0 %\"\npart = \"up\"\ndiscount = \"0.013 $/bu\"\ncap = \"0.025 $/bu\"\nround_unit = \"0.01 up\""))
	shows(t, mustSettle(t, corn("56000", "15.0", with("damage", "7.0 %")), e), map[string]string{"discount.damage": "$30.00"})
}

// Between the shrink-to and the trigger nothing is taken and nothing given.
func TestBetweenShrinkToAndTrigger(t *testing.T) {
	e := scene(t, "[shrink]\nmethod = \"water\"\nbasis = \"net\"\ntrigger = \"15.5 %\"\nto = \"14.0 %\"\nover_dry = \"dry-matter\"\nover_dry_floor = \"10.0 %\"")
	for moisture, want := range map[string]string{"15.6": "1,042 lb", "15.5": "0 lb", "14.1": "0 lb", "14.0": "0 lb", "13.9": "-65 lb"} {
		shows(t, mustSettle(t, corn("56000", moisture), e), map[string]string{"shrink.water": want})
	}
}

// A load that rounds to no bushels settles at zero; one that a rule takes wholly away is refused.
func TestNothingLeftToSettle(t *testing.T) {
	whole := scene(t, "[rounding]\nmoisture = \"0.1 half-up\"\nweight = \"1 half-up\"\nquantity = \"1 half-up\"\nmoney = \"0.01 half-up\"")
	shows(t, mustSettle(t, corn("20", "15.0", at("4.00 $/bu")), whole), map[string]string{"quantity": "0 bu", "value": "$0.00", "payable": "$0.00"})
	premium := "[[discount]]\nid = \"mend\"\nlabel = \"Mend\"\nfactor = \"protein\"\nform = \"table\"\nof = \"weight\"\nbasis = \"net\"\nuntested = \"none\"\n\n[[discount.row]]\nupto = \"20 %\"\npremium = \"20 %\""
	gone := ordered(t, scene(t, tenthOfWeight, premium), weightFirst)
	if s, err := settle.Settle(corn("56000", "15.0", with("bcfm", "101 %"), with("protein", "10 %")), gone); err == nil {
		t.Errorf("a load below zero on the way is settled: %s", s.Settled.Printed())
	}
}

// A scale in kilograms under rates in pounds: 10,000 kg x 1 / 0.45359237 are 22,046.2262 lb, rounded
// as the edition rounds weights.
func TestScaleInTheOtherUnit(t *testing.T) {
	f := corn("56000", "15.0")
	f.Drafts = []settle.Draft{{Gross: quantity.Of("25000", quantity.Kg), Tare: quantity.Of("15000", quantity.Kg)}}
	if s := mustSettle(t, f, scene(t)); s.Net.Printed() != "22,046 lb" {
		t.Errorf("the net is %s", s.Net.Printed())
	}
}

// A premium is parted by its size, down, and the owner named takes the rest: 10.01 is 5.00 and 5.01.
func TestPremiumIsPartedBySize(t *testing.T) {
	e := scene(t, damage("form = \"table\"\nof = \"money\"\n\n[[discount.row]]\nupto = \"50 %\"\npremium = \"0.01001 $/bu\""))
	s := mustSettle(t, corn("56000", "15.0", with("damage", "1 %"), owners(2, 1, 1)), e)
	shows(t, s, map[string]string{"discount.damage": "$10.01", "share.1.discount.damage": "$5.01", "share.2.discount.damage": "$5.00"})
}
