package across_test

import (
	"fmt"
	"testing"

	"tenthpoint/internal/daysheet"
	"tenthpoint/internal/headoffice/across"
	"tenthpoint/internal/quantity"
)

func lb(n int64) quantity.Amount { return quantity.Int(n, quantity.Lb) }

// Bins of a site are one row of it, sites one total; pounds and kilograms stay apart.
func TestPositionIsAddedUp(t *testing.T) {
	var p across.Position
	p.Add("KH", daysheet.Position{
		{Commodity: "corn", Name: "Corn", Bin: "B1", Weight: lb(1000)}, {Commodity: "corn", Name: "Corn", Bin: "B2", Weight: lb(250)},
		{Commodity: "oats", Name: "Oats", Bin: "B3", Weight: lb(40)},
	})
	p.Add("ELM", daysheet.Position{{Commodity: "corn", Name: "Corn", Bin: "B1", Weight: lb(-50)}, {Commodity: "corn", Name: "Corn", Bin: "B9", Weight: quantity.Int(7, quantity.Kg)}})
	var rows, totals []string
	for _, r := range p.Rows() {
		rows = append(rows, r.Site+" "+r.Commodity+" "+r.Weight.Written())
	}
	for _, r := range p.Totals() {
		totals = append(totals, r.Commodity+" "+r.Weight.Written())
	}
	if got, want := fmt.Sprint(rows), "[ELM corn -50 lb ELM corn 7 kg KH corn 1,250 lb KH oats 40 lb]"; got != want {
		t.Errorf("rows are %s, want %s", got, want)
	}
	if got, want := fmt.Sprint(totals), "[corn 1,200 lb corn 7 kg oats 40 lb]"; got != want {
		t.Errorf("totals are %s, want %s", got, want)
	}
}
