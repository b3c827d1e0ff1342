package settle_test

import (
	"testing"

	"pgregory.net/rapid"

	"tenthpoint/internal/quantity"
	"tenthpoint/internal/rates/rule"
	"tenthpoint/internal/settle"
	"tenthpoint/internal/worksheet"
)

// A third and two thirds of 52,300 lb: 17,433.33 and 34,866.67. The owner the
// edition names takes what rounding leaves.
func TestShareRemainder(t *testing.T) {
	for remainder, want := range map[string][2]string{
		"first":   {"17,434 lb", "34,866 lb"},
		"last":    {"17,433 lb", "34,867 lb"},
		"largest": {"17,433 lb", "34,867 lb"},
	} {
		s := mustSettle(t, corn("52300", "15.0", owners(3, 1, 2)), scene(t, "[shares]\nremainder = \""+remainder+"\""))
		if a, b := s.Shares[0].Net.Printed(), s.Shares[1].Net.Printed(); a != want[0] || b != want[1] {
			t.Errorf("%s: %s and %s, want %s", remainder, a, b, want)
		}
	}
	// Of equal largest shares the first takes it.
	s := mustSettle(t, corn("52301", "15.0", owners(2, 1, 1)), scene(t, "[shares]\nremainder = \"largest\""))
	if a := s.Shares[0].Net.Printed(); a != "26,151 lb" {
		t.Errorf("first of two equal owners has %s", a)
	}
}

// Percents and fractions are the same thing.
func TestSharesInPercent(t *testing.T) {
	half := mustSettle(t, corn("52301", "15.0", owners(2, 1, 1)), scene(t))
	percent := mustSettle(t, corn("52301", "15.0", owners(100, 50, 50)), scene(t))
	odd := corn("52301", "15.0", owners(100, 0, 0))
	odd.Shares[0].Parts, odd.Shares[1].Parts = quantity.Of("33.5", quantity.Plain), quantity.Of("66.5", quantity.Plain)
	for i := range 2 {
		if !half.Shares[i].Net.Value().Equal(percent.Shares[i].Net.Value()) {
			t.Errorf("owner %d: a half is not 50 %%", i)
		}
	}
	if got := mustSettle(t, odd, scene(t)).Shares[1].Net.Printed(); got != "34,780 lb" { // 34,780.165
		t.Errorf("66.5 %% of 52,301 lb is %s", got)
	}
}

func TestOneOwnerHasNoShareLines(t *testing.T) {
	for _, f := range []settle.Facts{corn("52300", "15.0"), corn("52300", "15.0", owners(1, 1))} {
		if s := mustSettle(t, f, scene(t)); s.Shares != nil {
			t.Errorf("one owner has %d share lines", len(s.Shares))
		}
	}
}

// Whatever the edition, the load and the owners: every line's parts add to the
// line exactly, and each owner's payable is the sum of that owner's own lines.
func TestSharesAddToEveryLine(t *testing.T) {
	editions := shippedEditions(t)
	checkOften(t, func(rt *rapid.T) {
		d := rapid.SampledFrom(editions).Draw(rt, "edition")
		f := drawLoad(rt, d)
		f.Shares = drawOwners(rt)
		s, err := settle.Settle(f, d.engine)
		if err != nil {
			return // refused whole; other tests are about that
		}
		addUp(rt, "net", s.Net, s, func(l settle.ShareLine) *worksheet.Step { return l.Net })
		addUp(rt, "settled", s.Settled, s, func(l settle.ShareLine) *worksheet.Step { return l.Settled })
		addUp(rt, "quantity", s.Quantity, s, func(l settle.ShareLine) *worksheet.Step { return l.Quantity })
		addUp(rt, "drying", s.Drying, s, func(l settle.ShareLine) *worksheet.Step { return l.Drying })
		addUp(rt, "value", s.Value, s, func(l settle.ShareLine) *worksheet.Step { return l.Value })
		addUp(rt, "adjustments", s.Adjustments, s, func(l settle.ShareLine) *worksheet.Step { return l.Adjustments })
		addUp(rt, "payable", s.Payable, s, func(l settle.ShareLine) *worksheet.Step { return l.Payable })
		if s.Bushels != nil {
			addUp(rt, "bushels", s.Bushels, s, func(l settle.ShareLine) *worksheet.Step { return l.Bushels })
		}
		for i, one := range s.Deductions {
			if !one.Step.Value().IsZero() {
				addUp(rt, one.Rule.ID, one.Step, s, func(l settle.ShareLine) *worksheet.Step { return l.Deductions[i] })
			}
		}
		for _, l := range s.Shares {
			ownLines(rt, s, l)
		}
	})
}

func addUp(rt *rapid.T, what string, whole *worksheet.Step, s *settle.Settlement, part func(settle.ShareLine) *worksheet.Step) {
	sum := quantity.Zero(whole.Value().Unit())
	for _, l := range s.Shares {
		sum = sum.Add(part(l).Value())
	}
	if !sum.Equal(whole.Value()) {
		rt.Fatalf("%s: %s, the shares add to %s", what, whole.Printed(), sum)
	}
}

func ownLines(rt *rapid.T, s *settle.Settlement, l settle.ShareLine) {
	charges := l.Drying.Value()
	for i, step := range l.Deductions {
		switch {
		case step == nil || step.Value().Unit() != quantity.Dollar:
		case s.Deductions[i].Direction == rule.Pays:
			charges = charges.Sub(step.Value())
		default:
			charges = charges.Add(step.Value())
		}
	}
	if !charges.Equal(l.ToOwner().Neg()) {
		rt.Fatalf("%s: charges and discounts %s, own lines add to %s", l.Share.Owner, l.ToOwner(), charges)
	}
	if s.Price != nil && !l.Payable.Value().Equal(l.Value.Value().Sub(charges)) {
		rt.Fatalf("%s: payable %s is not value less charges", l.Share.Owner, l.Payable.Printed())
	}
}

func drawOwners(rt *rapid.T) []settle.Share {
	parts := rapid.SliceOfN(rapid.Int64Range(1, 40), 2, 5).Draw(rt, "parts")
	var of int64
	for _, p := range parts {
		of += p
	}
	var out []settle.Share
	for i, p := range parts {
		out = append(out, settle.Share{Owner: string(rune('A' + i)), Parts: quantity.Int(p, quantity.Plain), Of: quantity.Int(of, quantity.Plain)})
	}
	return out
}

// A landlord who pays for no drying has none of its charge; the parts still add to the whole, and the
// cent that rounding leaves is never the landlord's.
func TestDryingIsSharedApart(t *testing.T) {
	none := &quantity.Portion{Parts: quantity.Int(0, quantity.Plain), Of: quantity.Int(1, quantity.Plain)}
	third := func(n int64) *quantity.Portion {
		return &quantity.Portion{Parts: quantity.Int(n, quantity.Plain), Of: quantity.Int(3, quantity.Plain)}
	}
	e := shipped(t, "corn-main-2026") // whose first owner takes what rounding leaves
	settled := func(drying ...*quantity.Portion) *settle.Settlement {
		f := corn("52300", "18.0", owners(3, 1, 1, 1), at("4.12 $/bu"))
		for i := range drying {
			f.Shares[i].Drying = drying[i]
		}
		return mustSettle(t, f, e)
	}
	plain, apart := settled(), settled(none, third(1), third(2))
	if plain.Drying.Value().IsZero() {
		t.Fatal("nothing is dried")
	}
	sum := quantity.Zero(quantity.Dollar)
	for i, l := range apart.Shares {
		sum = sum.Add(l.Drying.Value())
		if !l.Quantity.Value().Equal(plain.Shares[i].Quantity.Value()) {
			t.Errorf("owner %d has another part of the grain", i)
		}
	}
	if !sum.Equal(apart.Drying.Value()) || !apart.Drying.Value().Equal(plain.Drying.Value()) {
		t.Errorf("the parts add to %s of %s", sum, apart.Drying.Value())
	}
	if first := apart.Shares[0]; !first.Drying.Value().IsZero() || !first.Payable.Value().Equal(first.NetValue.Value()) {
		t.Errorf("who pays for no drying is charged %s", first.Drying.Value())
	}
	if two := apart.Shares[2].Drying.Value(); !two.More(apart.Shares[1].Drying.Value()) {
		t.Errorf("two thirds are %s", two)
	}
	bad := corn("52300", "18.0", owners(2, 1, 1))
	bad.Shares[0].Drying = third(1)
	refused(t, bad, e, "The parts in the drying add to")
}
