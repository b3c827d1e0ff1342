package settle_test

import (
	"fmt"
	"maps"
	"reflect"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"tenthpoint/internal/message"
	"tenthpoint/internal/message/errortest"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/rates/rule"
	"tenthpoint/internal/settle"
)

// bothEngines draws a load under a shipped edition until both engines settle it.
func bothEngines(t *testing.T, check func(rt *rapid.T, first, second *settle.Settlement)) {
	t.Helper()
	editions := shippedEditions(t)
	settled := 0
	checkOften(t, func(rt *rapid.T) {
		b := rapid.SampledFrom(editions).Draw(rt, "edition")
		f := drawLoad(rt, b)
		first, errFirst := settle.First.Settle(f, b.engine)
		second, errSecond := settle.Engine(2).Settle(f, b.engine)
		if (errFirst == nil) != (errSecond == nil) {
			rt.Fatalf("%s: the first engine says %v, the second %v", b, errFirst, errSecond)
		}
		if errFirst == nil {
			settled++
			check(rt, first, second)
		}
	})
	if settled < 200 {
		t.Errorf("only %d loads were settled", settled)
	}
}

type failer interface{ Fatal(...any) }

func summary(t failer, s *settle.Settlement) settle.Summary {
	out, err := s.Summary()
	if err != nil {
		t.Fatal(err)
	}
	return out
}

// What the second engine adds up, the first has in its lines: read from either,
// the figures are the same.
func TestBothEnginesGiveOneSummary(t *testing.T) {
	bothEngines(t, func(rt *rapid.T, first, second *settle.Settlement) {
		sameSummary(rt, summary(rt, first), summary(rt, second))
		for _, step := range first.Sheet.Steps() {
			if again, ok := second.Sheet.Step(step.ID()); !ok || !again.Value().Equal(step.Value()) {
				rt.Fatalf("the second engine has another %s", step.ID())
			}
		}
	})
}

// sameSummary compares figure by figure, for equal amounts may be written
// differently.
func sameSummary(t interface{ Fatalf(string, ...any) }, a, b settle.Summary) {
	x, y := map[string]string{}, map[string]string{}
	spellOut(x, "", reflect.ValueOf(a))
	spellOut(y, "", reflect.ValueOf(b))
	if !maps.Equal(x, y) {
		t.Fatalf("the summaries differ:\n%v\n%v", x, y)
	}
}

func spellOut(out map[string]string, name string, v reflect.Value) {
	switch one := v.Interface().(type) {
	case quantity.Amount:
		out[name] = one.String()
		return
	case *quantity.Amount:
		out[name] = "none"
		if one != nil {
			out[name] = one.String()
		}
		return
	case bool:
		out[name] = fmt.Sprint(one)
		return
	case []settle.Part:
		for i, part := range one {
			spellOut(out, fmt.Sprintf("%s.%d", name, i+1), reflect.ValueOf(part))
		}
		return
	}
	for i := range v.NumField() {
		spellOut(out, name+"."+v.Type().Field(i).Name, v.Field(i))
	}
}

// The totals of the second engine are the sums of their lines, and the lines
// between net and settled, and between value and payable, are all of them.
func TestTotalsAreTheSumsOfTheirLines(t *testing.T) {
	bothEngines(t, func(rt *rapid.T, _, second *settle.Settlement) {
		s := summary(rt, second)
		discounts, premiums, quality := sumsOf(second)
		same := func(what string, got, want quantity.Amount) {
			if !got.Equal(want) {
				rt.Fatalf("%s is %s, its lines come to %s", what, got, want)
			}
		}
		same("the discounts", s.Discounts, discounts)
		same("the premiums", s.Premiums, premiums)
		same("the weight taken for quality", s.Quality, quality)
		same("the settled weight", s.Settled, s.Clean().Sub(s.Water).Sub(s.Handling).Sub(s.Quality))
		same("the weight taken off", s.TakenOff(), s.Net.Sub(s.Settled))
		parts := append([]settle.Part{s.Part}, s.Owners...)
		for _, p := range parts {
			same("the charges", p.Charges, p.Drying.Add(p.Discounts).Sub(p.Premiums))
			if s.Priced() {
				same("the payable", p.Payable, p.Value.Sub(p.Charges))
			}
		}
		ownersAddUp(rt, s)
	})
}

// sumsOf adds the deductions up from the settlement itself.
func sumsOf(s *settle.Settlement) (discounts, premiums, quality quantity.Amount) {
	discounts, premiums = quantity.Zero(quantity.Dollar), quantity.Zero(quantity.Dollar)
	quality = quantity.Zero(s.Net.Value().Unit())
	for _, d := range s.Deductions {
		a, pays := d.Step.Value(), d.Direction == rule.Pays
		switch {
		case a.Unit() != quantity.Dollar && pays:
			quality = quality.Sub(a)
		case a.Unit() != quantity.Dollar:
			quality = quality.Add(a)
		case pays:
			premiums = premiums.Add(a)
		default:
			discounts = discounts.Add(a)
		}
	}
	return discounts, premiums, quality
}

// ownersAddUp wants the owners' parts to add to the whole, figure by figure.
func ownersAddUp(t interface{ Fatalf(string, ...any) }, s settle.Summary) {
	if len(s.Owners) == 0 {
		return
	}
	sum := map[string]quantity.Amount{}
	for _, p := range s.Owners {
		for name, a := range amountsOf(p) {
			if was, ok := sum[name]; ok {
				a = was.Add(a)
			}
			sum[name] = a
		}
	}
	for name, whole := range amountsOf(s.Part) {
		if !sum[name].Equal(whole) {
			t.Fatalf("the owners' %s add to %s, the whole is %s", name, sum[name], whole)
		}
	}
}

func amountsOf(p settle.Part) map[string]quantity.Amount {
	out := map[string]quantity.Amount{}
	v := reflect.ValueOf(p)
	for i := range v.NumField() {
		if a, ok := v.Field(i).Interface().(quantity.Amount); ok {
			out[v.Type().Field(i).Name] = a
		}
	}
	return out
}

// sharedLoad is a load of grain with dockage and two owners.
func sharedLoad(t *testing.T, n settle.Engine) *settle.Settlement {
	t.Helper()
	f := corn("52300", "15.34", with("dockage", "1.3 %"), with("test-weight", "57.2 lb/bu"), with("protein", "12.6 %"), with("damage", "3.1 %"), at("5.15 $/bu"), owners(3, 1, 2))
	s, err := n.Settle(f, shipped(t, "wheat-hrw-main-2025"))
	if err != nil {
		t.Fatal(err)
	}
	return s
}

// A line that is missing or in another unit is an error that names it, never
// zero. What is optional is listed here, and nothing else may be.
func TestMissingLinesAreErrors(t *testing.T) {
	optional := []string{settle.LinePrice}
	unread := []string{settle.LineGross, settle.LineTare, settle.LineClean, settle.LineDry}
	for _, n := range settle.Engines() {
		s := sharedLoad(t, n)
		for id := range s.Figures() {
			if isIn(id, optional, unread) || isDeduction(id) || strings.HasPrefix(id, "factor.") {
				continue
			}
			lines := s.Figures()
			delete(lines, id)
			missing(t, n, lines, id)
			lines[id] = quantity.Int(1, quantity.Fahrenheit)
			missing(t, n, lines, id)
		}
	}
}

func isIn(id string, lists ...[]string) bool {
	for _, list := range lists {
		for _, one := range list {
			if id == one {
				return true
			}
		}
	}
	return false
}

func isDeduction(id string) bool {
	return strings.HasPrefix(id, "discount.") || strings.HasPrefix(id, "share.") && strings.Contains(id, ".discount.")
}

func missing(t *testing.T, n settle.Engine, lines map[string]quantity.Amount, id string) {
	t.Helper()
	s, err := settle.Recorded{Engine: n, Lines: lines}.Summary()
	if err == nil {
		t.Errorf("engine %s: without a good line %s the summary is %+v", n, id, s)
	} else if !errortest.Kind(message.Storage, id).Met(err) {
		t.Errorf("engine %s: the error does not name %s: %v", n, id, err)
	}
}

func TestSummaryOfAnEngineNotKnown(t *testing.T) {
	if _, err := (settle.Recorded{Engine: 99}).Summary(); !errortest.NotFound("99").Met(err) {
		t.Errorf("an unknown engine was read: %v", err)
	}
}

// A load that is only weighed has its net weight and nothing else.
func TestSummaryOfAWeighedLoad(t *testing.T) {
	for _, n := range settle.Engines() {
		lines := map[string]quantity.Amount{"net": quantity.Int(28000, quantity.Lb), "net.converted": quantity.Int(12701, quantity.Kg)}
		r := settle.Recorded{Engine: n, Weighed: true, Lines: lines}
		s, err := r.Summary()
		if err != nil || s.Net.String() != "12,701 kg" || !s.Settled.IsZero() || !s.Payable.IsZero() || s.Moisture != nil {
			t.Errorf("engine %s: %+v, %v", n, s, err)
		}
		if out, err := r.Moves(); err != nil || out.String() != "-12,701 kg" {
			t.Errorf("engine %s: it moves %s, %v", n, out, err)
		}
		if _, err := (settle.Recorded{Engine: n, Weighed: true}).Moves(); err == nil {
			t.Errorf("engine %s: a load without a net weight moves something", n)
		}
		if _, err := (settle.Recorded{Engine: n}).Moves(); err == nil {
			t.Errorf("engine %s: a load without a settled weight moves something", n)
		}
	}
}

// One owner's summary has that owner's lines and what belongs to the whole load.
func TestSummaryOfAnOwner(t *testing.T) {
	s := summary(t, sharedLoad(t, settle.Current))
	own, err := s.Of(2)
	if err != nil || !own.Payable.Equal(s.Owners[1].Payable) || own.Moisture != s.Moisture || !own.Quality.IsZero() || len(own.Owners) != 0 {
		t.Errorf("%+v, %v", own, err)
	}
	for _, n := range []int{0, 3} {
		if _, err := s.Of(n); err == nil {
			t.Errorf("there is an owner %d of two", n)
		}
	}
}

// The ids stored in every book are not renamed.
func TestLinesOfOwners(t *testing.T) {
	for _, c := range []struct {
		line  string
		owner int
		own   bool
	}{{"share.1.net", 1, true}, {"share.12.discount.damage", 12, true}, {"net", 0, false}, {"shares", 0, false}, {settle.OwnLine(3, settle.LineValue), 3, true}} {
		if owner, own := settle.OwnerOf(c.line); owner != c.owner || own != c.own {
			t.Errorf("%s belongs to owner %d, %v", c.line, owner, own)
		}
	}
}

// The first engine wrote down sizes and the charges; the sides are worked out.
func TestDiscountsAndPremiumsAreToldApart(t *testing.T) {
	of := func(text string, unit quantity.Unit) quantity.Amount { return quantity.Of(text, unit) }
	s, err := settle.Recorded{Lines: map[string]quantity.Amount{
		"net": of("28000", quantity.Lb), "shrink.water": of("800", quantity.Lb), "handling": of("100", quantity.Lb), "settled": of("27060", quantity.Lb),
		"quantity": of("483.21", quantity.Bushel), "moisture": of("17.5", quantity.Percent), "value": of("0", quantity.Dollar), "payable": of("0", quantity.Dollar),
		"drying": of("10.00", quantity.Dollar), "discount.damage": of("3.25", quantity.Dollar), "discount.protein": of("1.10", quantity.Dollar),
		"discount.dust": of("40", quantity.Lb), "charges": of("12.15", quantity.Dollar), // 10.00 + 3.25 - 1.10
	}}.Summary()
	if err != nil || !s.Discounts.Equal(of("3.25", quantity.Dollar)) || !s.Premiums.Equal(of("1.10", quantity.Dollar)) || !s.Quality.Equal(of("40", quantity.Lb)) {
		t.Errorf("discounts %s, premiums %s, off for quality %s, %v", s.Discounts, s.Premiums, s.Quality, err)
	}
}
