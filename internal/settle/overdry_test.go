package settle_test

import (
	"strings"
	"testing"

	"tenthpoint/internal/quantity"
	"tenthpoint/internal/settle"
)

// Published over-dry cases, worked as what is given away: soybeans at 9 % on a
// yield of 60 bu (University of Missouri Extension), sorghum per hundredweight at
// 10 and 13 % (Texas A&M AgriLife). Both print the weight at the base and what is lost
// of it, so the weight on the scale is theirs x (100 - Mf) / (100 - Mi).
func TestOverDryAsPublished(t *testing.T) {
	for _, c := range []struct{ folder, id, weight, from, to, price, of string }{
		{"mu-low-moisture-soybeans", "OD-MU-9bu", "57.362637", "9", "13", "", "weight"},
		{"agrilife-selling-low-moisture-grain", "OD-TX-1000", "988.50574713", "13", "14", "", "price"},
		{"agrilife-selling-low-moisture-grain", "OD-TX-5000-10", "4777.77777778", "10", "14", "", "price"},
	} {
		source, cases := readPublished(t, "../../testdata/published/"+c.folder)
		found := false
		for _, p := range cases {
			if p.id != c.id {
				continue
			}
			found = true
			a := arguments(p.arguments)
			terms := settle.OverDryTerms{
				Weight: quantity.Of(c.weight, quantity.Lb), Moisture: quantity.Of(c.from, quantity.Percent), Base: quantity.Of(c.to, quantity.Percent),
				Weights: quantity.Unrounded, Quantities: quantity.Unrounded, Money: quantity.Unrounded,
			}
			if c.of == "price" {
				terms.Settle, terms.Price = quantity.Cwt, quantity.Of("8.50", quantity.DollarsPerCwt)
			}
			o := terms.Work()
			got := o.GivenAway
			if c.of == "price" {
				got = o.Worth
			}
			exact := got.Exact().Rat()
			agrees := p.agrees(exact)
			t.Logf("%s %v: printed %s, worked %s, agrees %v, exception %v", p.id, a, p.printed, exact.FloatString(6), agrees, source.isException(p.id))
			if agrees == source.isException(p.id) {
				t.Errorf("%s: printed %s, worked %s", p.id, p.printed, exact.FloatString(6))
			}
		}
		if !found {
			t.Errorf("%s is not in %s", c.id, c.folder)
		}
	}
}

// The printed table of equal weights, corn against 56 lb at 15.5 %: what each
// printed weight would weigh at the base is a bushel, less at most what truncating
// the table to a hundredth took off.
func TestEqualWeightAsPublished(t *testing.T) {
	source, cases := readPublished(t, "../../testdata/published/mu-crop-weights")
	held := 0
	for _, c := range cases {
		a := arguments(c.arguments)
		if c.method != "equivalent" || a["base"] != "15.5" || source.isException(c.id) || figure(a["at"]).Cmp(figure("15.5")) >= 0 {
			continue
		}
		held++
		equal := settle.OverDryTerms{
			Weight: quantity.Of(c.printed, quantity.Lb), Moisture: quantity.Of(a["at"], quantity.Percent), Base: quantity.Of("15.5", quantity.Percent), Weights: quantity.Unrounded,
		}.Work().Equal.Exact().Rat()
		if off := minus(figure("56"), equal); off.Sign() < 0 || off.Cmp(figure("0.0115")) > 0 {
			t.Errorf("%s: %s lb at %s %% are %s lb at 15.5 %%", c.id, c.printed, a["at"], equal.FloatString(4))
		}
	}
	if held < 8 {
		t.Errorf("only %d rows were held", held)
	}
}

// Rates that credit nothing say so beside every result; those that credit the dry
// matter are named as what pays.
func TestOverDryOfASettlement(t *testing.T) {
	none := "[shrink]\nmethod = \"water\"\nbasis = \"net\"\nover_dry = \"none\"\ntrigger = \"13 %\"\nto = \"13 %\""
	s := mustSettle(t, corn("56000", "11", at("4.00 $/bu")), scene(t, none))
	o, found := s.OverDry()
	if !found || o.Paid || !o.Worth.Note().Equal(settle.NotPaid) {
		t.Fatalf("found %v, %+v", found, o)
	}
	for step, want := range map[string]string{"overdry.equal": "57,287 lb", "overdry.weight.given": "1,287 lb", "overdry.quantity": "22.98 bu", "overdry.worth": "$91.92"} {
		if got, ok := o.Sheet.Step(step); !ok || got.Printed() != want {
			t.Errorf("%s is %v, want %s", step, got.Printed(), want)
		}
	}
	credited := strings.Replace(none, "\"none\"", "\"dry-matter\"\nover_dry_floor = \"9 %\"", 1)
	if o, found := mustSettle(t, corn("56000", "11"), scene(t, credited)).OverDry(); !found || !o.Paid || o.Worth != nil {
		t.Errorf("credited: %v %+v", found, o)
	}
	if _, found := mustSettle(t, corn("56000", "13"), scene(t, none)).OverDry(); found {
		t.Error("grain at the base gives nothing away")
	}
}
