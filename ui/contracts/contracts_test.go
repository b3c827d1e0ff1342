package contracts

import (
	"context"
	"strings"
	"testing"

	"tenthpoint/internal/contract"
	"tenthpoint/internal/entry/contracting"
	"tenthpoint/internal/office"
	"tenthpoint/internal/quantity"
	"tenthpoint/ui/model"
	"tenthpoint/ui/session/sessiontest"
)

func listed(t *testing.T) (*sessiontest.Room, *Contracts) {
	t.Helper()
	r := sessiontest.SettledRoom(t, 120)
	c := NewContracts(r.Session)
	c.Reload()
	return r, c
}

func (c *Contracts) must(t *testing.T, number string) contract.Filled {
	t.Helper()
	c.Choose(number)
	one, there := c.contract()
	if !there {
		t.Fatalf("there is no contract %s", number)
	}
	return one
}

// Those to fill stand first by their last day, ended ones last and struck out; what is delivered is
// what the terminal says.
func TestContractsInOrder(t *testing.T) {
	r, c := listed(t)
	rows := c.Rows()
	if len(rows) != len(c.all) || len(rows) < 5 {
		t.Fatalf("%d rows of %d contracts", len(rows), len(c.all))
	}
	delivered := 0
	for i, one := range c.all {
		if i > 0 && rank(c.all[i-1]) > rank(one) {
			t.Errorf("%s stands after %s", one.Number, c.all[i-1].Number)
		}
		alone, err := office.ContractFill(context.Background(), r.Session.Desk, one.ContractTerms)
		sessiontest.Must(t, err)
		if !alone.Delivered.Equal(one.Delivered) {
			t.Errorf("%s has %s, want %s", one.Number, one.Delivered, alone.Delivered)
		}
		if one.Delivered.Sign() > 0 {
			delivered++
		}
	}
	if delivered == 0 {
		t.Error("nothing is delivered on any contract")
	}
	if !rows[len(rows)-1].Struck {
		t.Error("the cancelled contract is not struck out")
	}
	c.Type("not signed")
	for _, one := range c.fits() {
		if one.IsSigned() {
			t.Errorf("%s is signed", one.Number)
		}
	}
}

// A contract is written down, signed, priced in part, extended, rolled and bought out by its boxes.
func TestWhatHappensToAContract(t *testing.T) {
	r, c := listed(t)
	c.Add()
	if faults := r.Answer(map[string]string{"number": "F-9", "grower": "102", "commodity": "corn", "quantity": "3000", "price": "4.12", "until": "soon"}); faults["until"] == "" {
		t.Errorf("faults %v", faults)
	}
	r.Answer(map[string]string{"number": "F-9", "grower": "102", "commodity": "corn", "quantity": "3000", "price": "4.12", "until": "2026-01-31"})
	if c.chosen != "F-9" || c.CanPrice() || c.CanRoll() || !c.CanSign() {
		t.Fatalf("chosen %s; price %v, roll %v, sign %v", c.chosen, c.CanPrice(), c.CanRoll(), c.CanSign())
	}
	c.Act(contracting.BuyOut)
	r.Answer(map[string]string{"market": "4.32"})
	if end, closed := c.must(t, "F-9").Closed(); !closed || !end.Money.Equal(quantity.Int(600, quantity.Dollar)) {
		t.Errorf("bought out: %+v", end)
	}
	sessiontest.WantSaid(t, r, model.OK, "600")

	c.must(t, "B3001")
	c.Act(contracting.Price)
	r.Answer(map[string]string{"quantity": "1000", "at": "4.50"})
	if parts := c.must(t, "B3001").Parts; len(parts) != 2 || !parts[1].Price.Equal(quantity.Of("4.20", quantity.DollarsPerBu)) {
		t.Errorf("parts %+v", parts)
	}
	c.Act(contracting.Roll)
	r.Answer(map[string]string{"month": "May", "spread": "0.04"})
	c.Act(contracting.Extend)
	r.Answer(map[string]string{"until": "2026-05-31", "why": "rain"})
	if one := c.must(t, "B3001"); one.Month != "May" || one.Until != quantity.MustDate("2026-05-31") {
		t.Errorf("rolled and extended: %s until %s", one.Month, one.Until)
	}
	c.must(t, "D3004")
	c.Act(contracting.Sign)
	r.Answer(nil)
	if !c.must(t, "D3004").IsSigned() {
		t.Error("the contract is not signed")
	}
	c.Print()
	if len(r.Papers["contract-D3004"]) == 0 {
		t.Error("nothing is printed")
	}
}

// A refusal of the contract itself keeps the box open with its sentence, and nothing changes.
func TestRefusalsStayInTheBox(t *testing.T) {
	r, c := listed(t)
	c.must(t, "B3001")
	c.Act(contracting.Price)
	r.Answer(map[string]string{"quantity": "4000", "at": "4.50"})
	if !strings.Contains(r.Question().Fault, "has no price yet") {
		t.Errorf("the box says %q", r.Question().Fault)
	}
	if parts := c.must(t, "B3001").Parts; len(parts) != 1 {
		t.Errorf("%d parts are priced", len(parts))
	}
	if c.must(t, "M3003"); c.IsOpen() {
		t.Error("a cancelled contract can change")
	}
}
