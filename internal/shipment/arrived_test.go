package shipment_test

import (
	"testing"

	"tenthpoint/internal/grain"
	"tenthpoint/internal/message/errortest"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/shipment"
)

func amount(t *testing.T, text string) quantity.Amount {
	t.Helper()
	a, err := quantity.ParseAmount(text)
	if err != nil {
		t.Fatal(err)
	}
	return a
}

func TestWhatArrivedAgainstWhatLeft(t *testing.T) {
	found := func(moisture, weight string) map[grain.FactorID]quantity.Amount {
		return map[grain.FactorID]quantity.Amount{grain.Moisture: amount(t, moisture+" %"), grain.TestWeight: amount(t, weight+" lb/bu")}
	}
	origin := shipment.Origin{Weight: amount(t, "54000 lb"), Found: found("14.2", "56.5")}
	arrived := shipment.Arrived{Ticket: 7, Day: quantity.MustDate("2026-12-01"), Weight: amount(t, "53820 lb"), Found: found("14.4", "56")}
	arrived.Found[grain.Dockage] = amount(t, "0.3 %")
	d, err := shipment.Compare(origin, arrived)
	if err != nil || d.Weight.String() != "-180 lb" || d.Percent.String() != "-0.33 %" {
		t.Fatalf("difference %s, %s, %v", d.Weight, d.Percent, err)
	}
	for i, want := range []struct {
		id         grain.FactorID
		difference string
	}{{grain.Dockage, ""}, {grain.Moisture, "0.2 %"}, {grain.TestWeight, "-0.5 lb/bu"}} {
		f := d.Factors[i]
		got := ""
		if quantity.Recorded(f.Difference) {
			got = f.Difference.String()
		}
		if f.ID != want.id || got != want.difference {
			t.Errorf("factor %s: %s, want %s: %s", f.ID, got, want.id, want.difference)
		}
	}
	arrived.Weight = amount(t, "24400 kg")
	if _, err := shipment.Compare(origin, arrived); !errortest.Invalid().Met(err) {
		t.Errorf("pounds against kilograms: %v", err)
	}
}

func TestWhatCannotHaveArrived(t *testing.T) {
	good := shipment.Arrived{Ticket: 7, Day: quantity.MustDate("2026-12-01"), Weight: quantity.Int(1, quantity.Lb)}
	if err := good.Check(); err != nil {
		t.Fatal(err)
	}
	for name, spoil := range map[string]func(*shipment.Arrived){
		"no ticket":    func(a *shipment.Arrived) { a.Ticket = 0 },
		"no day":       func(a *shipment.Arrived) { a.Day = quantity.Date{} },
		"nothing":      func(a *shipment.Arrived) { a.Weight = quantity.Zero(quantity.Lb) },
		"not a weight": func(a *shipment.Arrived) { a.Weight = quantity.Int(1, quantity.Bushel) },
	} {
		one := good
		spoil(&one)
		if one.Check() == nil {
			t.Errorf("%s was taken", name)
		}
	}
}
