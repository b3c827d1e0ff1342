package rates_test

import (
	"strings"
	"testing"

	"tenthpoint/internal/grain"
	"tenthpoint/internal/law"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/rates"
	"tenthpoint/internal/settle"
	"tenthpoint/schedules"
)

const vomitoxin = `[[discount]]
label = "Vomitoxin discount"
factor = "don"
form = "per-unit"
of = "money"
basis = "dry"
untested = "none"
base = "1.0 ppm"
side = "above"
per = "0.5 ppm"
part = "up"
discount = "2.5 c/bu"
refuse_over = "5.0 ppm"

[[factor]]
id = "own-zearalenone"
name = "Zearalenone"
short = "ZEA"
unit = "ppb"
record = "10 half-up"
least = "0 ppb"
most = "5000 ppb"
citation = "the house's own"

[[discount]]
label = "Zearalenone discount"
factor = "own-zearalenone"
form = "table"
of = "money"
basis = "dry"
untested = "none"

[[discount.row]]
upto = "200 ppb"
discount = "0 c/bu"

[[discount.row]]
over = "200 ppb"
discount = "10 c/bu"

[shares]`

// A factor that the trade has ready and one of the elevator's own, in ppm and ppb, with rates in
// cents: 1.23 ppm is recorded as 1.2, which is one step over 1.0; 204 ppb is recorded as 200, which
// is not over 200.
func TestToxinsInRates(t *testing.T) {
	corn, err := schedules.Files.ReadFile("editions/corn-main-2026.toml")
	if err != nil {
		t.Fatal(err)
	}
	e, err := rates.Read("x.toml", []byte(strings.Replace(string(corn), "[shares]", vomitoxin, 1)))
	if err != nil {
		t.Fatal(err)
	}
	tables, err := grain.TablesOf(law.Law{})
	if err != nil {
		t.Fatal(err)
	}
	for _, under := range []*rates.Edition{e, e.By(tables)} { // under any law
		facts := settle.Facts{
			Drafts:   []settle.Draft{{Gross: quantity.Int(80000, quantity.Lb), Tare: quantity.Int(24000, quantity.Lb)}},
			Moisture: settle.Reading{Percent: quantity.Of("14.0", quantity.Percent)},
			Findings: []settle.Finding{{Factor: "don", Amount: quantity.Of("1.23", quantity.PPM)}, {Factor: "own-zearalenone", Amount: quantity.Of("204", quantity.PPB)}},
		}
		s, err := settle.Settle(facts, under)
		if err != nil {
			t.Fatal(err)
		}
		for id, want := range map[string]string{
			settle.FactorLine("don"): "1.2 ppm", settle.FactorLine("own-zearalenone"): "200 ppb",
			settle.DiscountLine("don"): "$25.00", settle.DiscountLine("own-zearalenone"): "$0.00", // 1,000 bu
		} {
			if step, ok := s.Sheet.Step(id); !ok || step.Printed() != want {
				t.Errorf("%s is %v, want %s", id, step, want)
			}
		}
		facts.Findings[0].Amount = quantity.Of("5.1", quantity.PPM)
		if _, err := settle.Settle(facts, under); err == nil {
			t.Error("5.1 ppm of vomitoxin is over the limit of 5.0 and was settled")
		}
	}
	if f, ok := e.Commodity.FactorCalled("zea"); !ok || f.ID != "own-zearalenone" {
		t.Errorf("ZEA is %v", f)
	}
}
