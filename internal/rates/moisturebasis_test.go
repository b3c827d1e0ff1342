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

// Rates that mean protein at 12 % moisture take no result stated at 13.5 %: the
// same wheat differs by about 0.2, a step of the premium.
func TestRatesNameTheirMoistureBasis(t *testing.T) {
	wheat, err := schedules.Files.ReadFile("editions/wheat-hrs-prairie-2025-b.toml")
	if err != nil {
		t.Fatal(err)
	}
	e, err := rates.Read("x.toml", []byte(strings.Replace(string(wheat), "factor = \"protein\"\n", "factor = \"protein\"\nmoisture_basis = \"12 %\"\n", 1)))
	if err != nil {
		t.Fatal(err)
	}
	said := false
	for _, l := range e.Lines() {
		said = said || strings.HasSuffix(l.Key, ".moisture_basis") && l.Value.String() == "12 %"
	}
	if !said {
		t.Error("the edition does not say at which moisture it means protein")
	}
	laws, problems := law.NewSet(law.Shipped()...)
	if err := problems.Err(); err != nil {
		t.Fatal(err)
	}
	facts := settle.Facts{
		Drafts:   []settle.Draft{{Gross: quantity.Int(40000, quantity.Kg), Tare: quantity.Int(14000, quantity.Kg)}},
		Moisture: settle.Reading{Percent: quantity.Of("14.0", quantity.Percent)},
		Findings: []settle.Finding{{Factor: "dockage", Amount: quantity.Of("1.0", quantity.Percent)}, {Factor: "protein", Amount: quantity.Of("13.9", quantity.Percent)}},
	}
	for rules, settles := range map[string]bool{"us": true, "canada": false} {
		tables, err := grain.TablesOf(laws.For(rules).On(quantity.MustDate("2026-12-02")))
		if err != nil {
			t.Fatal(err)
		}
		if _, err := settle.Settle(facts, e.By(tables)); (err == nil) != settles {
			t.Errorf("under the rules of %s: %v", rules, err)
		}
	}
}
