package guard

import (
	"encoding/csv"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"tenthpoint/internal/grain"
	"tenthpoint/internal/load"
	"tenthpoint/internal/quantity"
)

// asked are the guards that ask about a load of a grain with one test weight.
func asked(commodity string, testWeight quantity.Amount) []Finding {
	l := &load.Load{Details: load.Details{Commodity: commodity}, Sample: load.Sample{Findings: []load.Finding{{Factor: grain.TestWeight, Amount: &testWeight}}}}
	return Check(l, Setting{})
}

// Every test weight that the Canadian Grain Commission's charts work out for whole grain is honest.
func TestChartedTestWeightsAreNotAskedAbout(t *testing.T) {
	known := map[string]string{
		"wheat": "wheat-hrs", "amber durum": "wheat-durum", "oats": "oats", "barley": "barley", "hulless barley": "barley", "rye": "rye",
		"flaxseed": "flaxseed", "corn": "corn", "soybeans": "soybeans", "canola": "canola",
	}
	file, err := os.Open(filepath.Join("..", "..", "testdata", "published", "cgc-test-weight", "half-litre.csv"))
	if err != nil {
		t.Fatal(err)
	}
	defer file.Close()
	rows, err := csv.NewReader(file).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	held := 0
	for _, row := range rows[1:] {
		commodity, ok := known[row[0]]
		if !ok {
			continue
		}
		held++
		if found := asked(commodity, quantity.Of(row[4], quantity.KgPerHL)); len(found) != 0 {
			t.Errorf("%s at %s kg/hL: %s", row[0], row[4], found[0].Said)
		}
	}
	if held != 20 {
		t.Errorf("%d rows of the chart were held, want 20", held)
	}
}

// Oats of 40 lb/bu are extra-heavy by 7 CFR 810.1005, which is no mistake of typing.
func TestExtraHeavyOatsAreNotAskedAbout(t *testing.T) {
	if found := asked("oats", quantity.Of("40", quantity.LbPerBushel)); len(found) != 0 {
		t.Errorf("oats of 40 lb/bu: %s", found[0].Said)
	}
	if found := asked("oats", quantity.Of("56", quantity.LbPerBushel)); len(found) != 1 {
		t.Errorf("oats of 56 lb/bu: %v", found)
	}
}

// A limit is told in the unit that was typed: 22.4 and 46.4 lb/bu of oats are 28.8 and 59.7 kg/hL.
func TestLimitIsToldInTheUnitTyped(t *testing.T) {
	found := asked("oats", quantity.Of("70", quantity.KgPerHL))
	if len(found) != 1 {
		t.Fatalf("oats of 70 kg/hL: %v", found)
	}
	for _, figure := range []string{"28.8 kg/hL", "59.7 kg/hL"} {
		if !strings.Contains(found[0].Said.String(), figure) {
			t.Errorf("%q does not tell %s", found[0].Said, figure)
		}
	}
}
