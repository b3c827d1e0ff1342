package settle_test

import (
	"strings"
	"testing"

	"pgregory.net/rapid"

	"tenthpoint/internal/message"
	"tenthpoint/internal/message/errortest"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/settle"
	"tenthpoint/internal/worksheet"
)

// expectLines compares lines with before, after and change as printed; the text is empty for a side
// without the line.
func expectLines(t *testing.T, c *settle.Comparison, want map[string][3]string) {
	t.Helper()
	for id, w := range want {
		l, ok := c.Line(id)
		if !ok {
			t.Errorf("there is no line %s", id)
		} else if got := [3]string{printedOrNot(l.Before), printedOrNot(l.After), printedOrNot(l.Change)}; got != w {
			t.Errorf("%s: %q, want %q", id, got, w)
		}
	}
}

func printedOrNot(s *worksheet.Step) string {
	if s == nil {
		return ""
	}
	return s.Printed()
}

// A dispute across editions: the drying rate was typed 0.054 for 0.045.
func TestCompareAcrossACorrection(t *testing.T) {
	f := corn("56000", "20.0", with("damage", "6.0 %"), at("4.00 $/bu"))
	c := settle.Compare(mustSettle(t, f, shipped(t, "corn-main-2025")), mustSettle(t, f, shipped(t, "corn-main-2025-b")))
	expectLines(t, c, map[string][3]string{
		"net":             {"56,000 lb", "56,000 lb", "0 lb"},
		"drying":          {"$270.00", "$225.00", "-$45.00"},
		"discount.damage": {"$18.77", "$18.77", "$0.00"},
		"payable":         {"$3,465.95", "$3,510.95", "$45.00"},
	})
	var changed []string
	for _, l := range c.Changed() {
		changed = append(changed, l.ID)
	}
	if got := strings.Join(changed, " "); got != "drying payable" {
		t.Errorf("changed lines: %s", got)
	}
}

// Two elevators for one load, in pounds, bushels and money. What only one of them charges has no
// figure on the other side.
func TestCompareTwoHouses(t *testing.T) {
	f := corn("56000", "20.0", with("test-weight", "53.0 lb/bu"), with("bcfm", "3.5 %"), with("off-odor", "yes"), at("4.00 $/bu"))
	c := settle.Compare(mustSettle(t, f, shipped(t, "corn-main-2026")), mustSettle(t, f, shipped(t, "corn-river-2025")))
	expectLines(t, c, map[string][3]string{
		"shrink.water":      {"3,294 lb", "3,920 lb", "626 lb"},
		"handling":          {"280 lb", "130 lb", "-150 lb"},
		"dry":               {"52,426 lb", "51,950 lb", "-476 lb"},
		"bushels":           {"936.18 bu", "927.68 bu", "-8.50 bu"},
		"discount.bcfm":     {"$28.09", "260 lb", ""},
		"discount.off-odor": {"", "$111.32", "$111.32"},
	})
}

// Weights in kilograms are turned into pounds for comparing; bushels and
// tonnes cannot be, and their change is left to the reader.
func TestCompareAcrossUnits(t *testing.T) {
	f := corn("56000", "20.0")
	c := settle.Compare(mustSettle(t, f, shipped(t, "corn-main-2026")), mustSettle(t, f, shipped(t, "corn-metric-2025")))
	expectLines(t, c, map[string][3]string{
		"net":      {"56,000 lb", "56,000 lb", "0 lb"},
		"dry":      {"52,426 lb", "52,737 lb", "311 lb"}, // 23,921 kg
		"quantity": {"936.18 bu", "23.921 t", ""},
	})
	// The dollars of two countries are not subtracted either.
	expectLines(t, c, map[string][3]string{"drying": {"$225.00", "$262.90", ""}})
	if l, _ := c.Line("quantity"); !l.Differs() {
		t.Error("bushels and tonnes are taken for the same")
	}
	if _, ok := c.Line("net.converted"); ok {
		t.Error("the converted net is a line of its own")
	}
}

// A premium on one side and a discount on the other: both are read as what the
// grower pays.
func TestComparePremiumWithDiscount(t *testing.T) {
	e := shipped(t, "wheat-hrw-main-2025")
	low, high := corn("60000", "12.0", with("protein", "9.0 %"), at("5.00 $/bu")), corn("60000", "12.0", with("protein", "12.5 %"), at("5.00 $/bu"))
	c := settle.Compare(mustSettle(t, low, e), mustSettle(t, high, e))
	expectLines(t, c, map[string][3]string{
		"factor.protein":   {"9.0 %", "12.5 %", "3.5 %"},
		"discount.protein": {"$300.00", "-$80.00", "-$380.00"},
		"payable":          {"$4,700.00", "$5,080.00", "$380.00"},
	})
}

// Whatever the loads and the editions: a settlement does not differ from
// itself, and the other way round every change has the other sign.
func TestCompareBothWays(t *testing.T) {
	editions := shippedEditions(t)
	rapid.Check(t, func(rt *rapid.T) {
		b := rapid.SampledFrom(editions).Draw(rt, "edition")
		one, errOne := settle.Settle(drawLoad(rt, b), b.engine)
		two, errTwo := settle.Settle(drawLoad(rt, b), b.engine)
		if errOne != nil || errTwo != nil || one.Gross.Value().Unit() != two.Gross.Value().Unit() {
			return // turned from one unit into the other a figure is rounded
		}
		if same := settle.Compare(one, one).Changed(); len(same) != 0 {
			rt.Fatalf("%s differs from itself", same[0].ID)
		}
		there, back := settle.Compare(one, two), settle.Compare(two, one)
		for _, l := range there.Lines {
			r, ok := back.Line(l.ID)
			if !ok || l.Change != nil && !l.Change.Value().Equal(r.Change.Value().Neg()) {
				rt.Fatalf("%s is not the other way round", l.ID)
			}
		}
		if len(there.Lines) != len(back.Lines) {
			rt.Fatalf("%d lines there, %d back", len(there.Lines), len(back.Lines))
		}
	})
}

func TestWeighOnly(t *testing.T) {
	draft := func(gross, tare string, unit quantity.Unit) []settle.Draft {
		return []settle.Draft{{Gross: quantity.Of(gross, unit), Tare: quantity.Of(tare, unit), GrossSource: message.Words("scale 1")}}
	}
	plain, err := settle.Current.WeighOnly(draft("80000", "24000", quantity.Lb), settle.Outbound{})
	if err != nil || plain.Net.Printed() != "56,000 lb" || plain.Bushels != nil {
		t.Errorf("weights alone: %v, %+v", err, plain)
	}
	corn := settle.Outbound{
		Weight: quantity.Lb, Place: quantity.To("1", quantity.HalfUp),
		Bushel: quantity.Of("56", quantity.LbPerBushel), BushelSource: "Indiana Code 24-6-1-1", Bushels: quantity.To("0.01", quantity.HalfUp),
	}
	for unit, want := range map[quantity.Unit][2]string{quantity.Lb: {"56,000 lb", "1,000.00 bu"}, quantity.Kg: {"123,459 lb", "2,204.63 bu"}} {
		w, err := settle.Current.WeighOnly(draft("80000", "24000", unit), corn)
		if err != nil || w.Net.Printed() != want[0] || w.Bushels.Printed() != want[1] {
			t.Errorf("in %s: %v, %s, %s", unit, err, w.Net.Printed(), w.Bushels.Printed())
		}
		if text := w.Sheet.Text(60); !strings.Contains(text, "scale 1") || !strings.Contains(text, "Indiana Code") {
			t.Errorf("the sheet does not say where its figures are from:\n%s", text)
		}
	}
	two, err := settle.Current.WeighOnly(append(draft("50000", "14000", quantity.Lb), settle.Draft{Name: "trailer", Gross: quantity.Of("30000", quantity.Lb), Tare: quantity.Of("10000", quantity.Lb)}), corn)
	if err != nil || two.Net.Printed() != "56,000 lb" {
		t.Errorf("in two drafts: %v", err)
	}
}

func TestWeighOnlyRefuses(t *testing.T) {
	good := []settle.Draft{{Gross: quantity.Of("80000", quantity.Lb), Tare: quantity.Of("24000", quantity.Lb)}}
	for name, c := range map[string]struct {
		drafts []settle.Draft
		out    settle.Outbound
		want   errortest.Want
	}{
		"nothing weighed": {nil, settle.Outbound{}, errortest.Invalid()},
		"tare above gross": {[]settle.Draft{{Gross: quantity.Of("24120", quantity.Lb), Tare: quantity.Of("24500", quantity.Lb)}}, settle.Outbound{},
			errortest.Invalid("-380 lb", "24,120", "24,500")},
		"weights in bushels": {good, settle.Outbound{Weight: quantity.Bushel}, errortest.Invalid("bu")},
		"bushel in another unit": {good, settle.Outbound{Bushel: quantity.Of("25.4", quantity.Kg.Per(quantity.Bushel))},
			errortest.Invalid("25.4 kg/bu", "lb/bu")},
		"bushel below zero": {good, settle.Outbound{Bushel: quantity.Of("-56", quantity.LbPerBushel)}, errortest.Invalid("-56 lb/bu", "lb/bu")},
	} {
		w, err := settle.Current.WeighOnly(c.drafts, c.out)
		if w != nil || !c.want.Met(err) {
			t.Errorf("%s: %v, want %q", name, err, c.want)
		}
	}
}
