package settle_test

import (
	"math/big"
	"strings"
	"testing"

	"tenthpoint/internal/quantity"
	"tenthpoint/internal/settle"
)

// Every published case of grain sold too dry, worked as what is given away: soybeans at 9 and 11 %
// (University of Missouri Extension), sorghum by the hundredweight (Texas A&M AgriLife), sunflower at
// 5 % (National Sunflower Association), soybeans again (North Dakota State). They print the weight at the base and what is lost of it, so
// the weight on the scale is theirs x (100 - Mf) / (100 - Mi).
func TestOverDryAsPublished(t *testing.T) {
	held := 0
	for _, folder := range []string{"mu-low-moisture-soybeans", "agrilife-selling-low-moisture-grain", "nsa-the-too-dry-dilemma", "ndsu-moisture-effects"} {
		source, cases := readPublished(t, "../../testdata/published/"+folder)
		for _, p := range cases {
			if p.method != "shrink" {
				continue // what is left of a wet weight is held by TestPublishedFigures
			}
			held++
			lost := times(givenAway(p), multiplier(p))
			if agrees := p.agrees(lost); agrees == source.isException(p.id) {
				t.Errorf("%s: printed %s, worked %s, an exception: %v", p.id, p.printed, lost.FloatString(6), !agrees)
			}
		}
	}
	if held != 9 {
		t.Errorf("%d cases were held", held)
	}
}

// givenAway is the weight that a load of a published case gives away, sold by the scale.
func givenAway(p publishedCase) *big.Rat {
	a := arguments(p.arguments)
	base, at := figure(a["from"]), figure(a["to"])
	onScale := over(times(figure(a["weight"]), minus(rat(100, 1), base)), minus(rat(100, 1), at))
	terms := settle.OverDryTerms{
		Weight: quantity.Of(onScale.FloatString(12), quantity.Lb), Moisture: quantity.Of(a["to"], quantity.Percent), Base: quantity.Of(a["from"], quantity.Percent), Weights: quantity.Unrounded,
	}
	return terms.Work().GivenAway.Exact().Rat()
}

// multiplier takes the weight of a case to the money it prints.
func multiplier(p publishedCase) *big.Rat {
	if by := arguments(p.arguments)["times"]; by != "" {
		return figure(by)
	}
	return rat(1, 1)
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
