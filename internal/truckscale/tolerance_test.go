package truckscale

import (
	"encoding/csv"
	"os"
	"testing"

	"tenthpoint/internal/elevator"
	"tenthpoint/internal/law"
	"tenthpoint/internal/quantity"
)

// Canada, SI/98-81 s. 8(3): every row of the transcribed table.
func TestCanadianToleranceOfTruckScales(t *testing.T) {
	file, err := os.Open("../../testdata/published/canada-scale-tolerance/tolerance.csv")
	if err != nil {
		t.Fatal(err)
	}
	defer file.Close()
	rows, err := csv.NewReader(file).ReadAll()
	if err != nil || len(rows) < 10 {
		t.Fatalf("%d rows, %v", len(rows), err)
	}
	division := quantity.Int(10, quantity.Kg)
	for _, row := range rows[1:] {
		load := quantity.Of(row[1], quantity.Plain).Mul(division)
		got, known := allowed("canada", load, division)
		want := quantity.Of(row[2], quantity.Plain).Mul(division)
		if !known || !got.Confirmed || !got.At.Equal(want) {
			t.Errorf("%s divisions: %v, want %s", row[1], got, want)
		}
	}
}

// The two rule sets differ from 1,000 divisions on: 80,000 lb at 20 lb is 6 divisions in
// Canada and 8 by Handbook 44 as remembered, which decides nothing.
func TestToleranceOfTwoRuleSets(t *testing.T) {
	load, division := quantity.Int(80_000, quantity.Lb), quantity.Int(20, quantity.Lb)
	for rules, want := range map[string]Tolerance{
		"canada": {At: quantity.Int(120, quantity.Lb), Confirmed: true},
		"us":     {At: quantity.Int(160, quantity.Lb)},
	} {
		got, known := allowed(rules, load, division)
		if !known || !got.At.Equal(want.At) || got.Confirmed != want.Confirmed {
			t.Errorf("%s: %+v, want %+v", rules, got, want)
		}
	}
	if _, known := allowed("moon", load, division); known {
		t.Error("a rule set nobody knows has a tolerance")
	}
}

// shippedLaws are the published rules of the program.
func shippedLaws() *law.Set {
	set, _ := law.NewSet(law.Shipped()...)
	return set
}

func allowed(rules string, load, division quantity.Amount) (Tolerance, bool) {
	return Log{Scale: elevator.Scale{Division: division}, Rules: rules, Laws: shippedLaws()}.Allowed(quantity.MustDate("2026-10-09"), load)
}

// TestLoadInAnotherUnitHasNoTolerance: a tolerance is in divisions of the scale.
func TestLoadInAnotherUnitHasNoTolerance(t *testing.T) {
	if got, known := allowed("canada", quantity.Int(20_000, quantity.Lb), quantity.Int(10, quantity.Kg)); known {
		t.Errorf("pounds on a scale of kilograms may be off by %s", got.At)
	}
}
