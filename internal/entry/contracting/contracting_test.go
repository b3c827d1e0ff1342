package contracting_test

import (
	"errors"
	"testing"

	"tenthpoint/internal/contract"
	"tenthpoint/internal/elevator"
	"tenthpoint/internal/entry/contracting"
	"tenthpoint/internal/message"
	"tenthpoint/internal/office"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/scalehouse"
	"tenthpoint/internal/scalehouse/housetest"
)

var (
	today = quantity.MustDate("2026-10-14")
	perBu = func(text string) quantity.Amount { return quantity.Of(text, quantity.DollarsPerBu) }
	bu    = func(n int64) quantity.Amount { return quantity.Int(n, quantity.Bushel) }
)

func basis() elevator.ContractTerms {
	fixed := perBu("-0.30")
	return elevator.ContractTerms{
		Number: "B-1", Grower: "G1", Commodity: "corn", Form: elevator.Basis, Quantity: bu(5000), Basis: &fixed, Month: "2026-12", Until: quantity.MustDate("2026-12-31"),
	}
}

// done reads an act and does it on a contract with so much delivered.
func done(t *testing.T, act contracting.Act, c elevator.ContractTerms, delivered int64, texts map[string]string) (elevator.ContractTerms, error) {
	t.Helper()
	change, problems := contracting.Read(act, texts, contracting.Around{Contract: c, Today: today})
	if err := problems.Err(contracting.Fields(act)); err != nil {
		return c, err
	}
	return change(contract.Filled{ContractTerms: c, Delivered: bu(delivered), Left: c.Quantity.Sub(bu(delivered))}, "Mae Orton")
}

// What is typed of each act becomes the change, with its day and who acted.
func TestActs(t *testing.T) {
	c, err := done(t, contracting.Price, basis(), 0, map[string]string{"quantity": "2,000", "at": "4.45"})
	if err != nil || len(c.Parts) != 1 || !c.Parts[0].Price.Equal(perBu("4.15")) || c.Parts[0].Day != today || c.Parts[0].By != "Mae Orton" {
		t.Fatalf("priced %+v, %v", c.Parts, err)
	}
	if c, err = done(t, contracting.Price, c, 0, map[string]string{"at": "4.50"}); err != nil || !c.Parts[1].Quantity.Equal(bu(3000)) {
		t.Errorf("the rest: %+v, %v", c.Parts, err)
	}
	if c, err = done(t, contracting.Sign, basis(), 0, map[string]string{"day": "2026-10-10"}); err != nil || c.Changes[0].Day != quantity.MustDate("2026-10-10") {
		t.Errorf("signed %+v, %v", c.Changes, err)
	}
	if c, err = done(t, contracting.Extend, basis(), 0, map[string]string{"until": "2027-01-31", "why": "rain"}); err != nil || c.Until != quantity.MustDate("2027-01-31") {
		t.Errorf("extended until %s, %v", c.Until, err)
	}
	if c, err = done(t, contracting.Roll, basis(), 0, map[string]string{"month": "2027-03", "spread": "0.04"}); err != nil || !c.Basis.Equal(perBu("-0.26")) || c.Until != basis().Until {
		t.Errorf("rolled to %v until %s, %v", c.Basis, c.Until, err)
	}
	forward := basis()
	forward.Form, forward.Basis, forward.Price, forward.Quantity = elevator.Forward, nil, perBu("4.12"), bu(3000)
	if c, err = done(t, contracting.BuyOut, forward, 0, map[string]string{"market": "4.32"}); err != nil {
		t.Fatal(err)
	}
	if end, closed := c.Closed(); !closed || !end.Money.Equal(quantity.Int(600, quantity.Dollar)) {
		t.Errorf("bought out for %v", end.Money)
	}
	if _, err = done(t, contracting.Cancel, forward, 480, map[string]string{"why": "written twice"}); !errors.Is(err, message.Refused) {
		t.Errorf("cancelled with grain on it: %v", err)
	}
}

// What is wrong is told at its field; nothing is agreed on a day still to come.
func TestActProblems(t *testing.T) {
	for act, c := range map[contracting.Act]struct {
		texts map[string]string
		at    string
	}{
		contracting.Price:  {map[string]string{"quantity": "9000", "at": "4.45"}, "quantity"},
		contracting.Roll:   {map[string]string{"month": "2027-03", "spread": "much"}, "spread"},
		contracting.BuyOut: {map[string]string{}, "market"},
		contracting.Extend: {map[string]string{"until": "soon"}, "until"},
		contracting.Sign:   {map[string]string{"day": "2026-10-15"}, "day"},
		contracting.Cancel: {map[string]string{}, "why"},
	} {
		_, problems := contracting.Read(act, c.texts, contracting.Around{Contract: basis(), Today: today})
		if len(problems) != 1 || problems[c.at] == nil {
			t.Errorf("%s: %v, want one at %s", act, problems, c.at)
		}
	}
}

func TestNew(t *testing.T) {
	s := housetest.New(t).As(housetest.Manager)
	if err := scalehouse.SetGrower(t.Context(), s.Desk, elevator.Grower{ID: "G1", Name: "Ada Field"}); err != nil {
		t.Fatal(err)
	}
	house := office.NewEntering(t.Context(), s.Desk)
	texts := map[string]string{"number": "B-1", "grower": "G1", "commodity": "corn", "form": "basis", "basis": "-0.30", "month": "2026-12", "quantity": "5000", "tolerance": "2", "until": "2026-12-31", "sellers": "G1=2/3; G1=1/3"}
	c, problems := contracting.ReadNew(texts, house)
	if len(problems) > 0 || c.Form != elevator.Basis || !c.Basis.Equal(perBu("-0.30")) || !c.Tolerance.Equal(quantity.Int(2, quantity.Percent)) || len(c.Sellers) != 2 {
		t.Errorf("read %+v, %v", c, problems)
	}
	texts["quantity"], texts["grower"], texts["until"] = "many", "nobody", ""
	if _, problems := contracting.ReadNew(texts, house); problems["quantity"] == nil || problems["grower"] == nil || problems["until"] == nil {
		t.Errorf("problems %v", problems)
	}
}
