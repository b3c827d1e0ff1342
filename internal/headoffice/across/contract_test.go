package across_test

import (
	"testing"

	"tenthpoint/internal/contract"
	"tenthpoint/internal/elevator"
	"tenthpoint/internal/headoffice/across"
	"tenthpoint/internal/quantity"
)

func cwt(n int64) quantity.Amount { return quantity.Int(n, quantity.Cwt) }

func filled(grower string, agreed, delivered int64) contract.Filled {
	return contract.Filled{ContractTerms: elevator.ContractTerms{Number: "C-1", Grower: grower, Commodity: "corn", Quantity: cwt(agreed)}, Delivered: cwt(delivered), NoRoom: cwt(0)}
}

// A contract filled at several sites is full when all of them together filled it, which no site sees
// alone.
func TestAContractFilledAtSeveralSites(t *testing.T) {
	for name, one := range map[string]struct {
		kh, elm               contract.Filled
		same                  bool
		delivered, left, over int64
	}{
		"some is to come": {filled("102", 5000, 3000), filled("102", 5000, 1500), true, 4500, 500, 0},
		"just full":       {filled("102", 5000, 3000), filled("102", 5000, 2000), true, 5000, 0, 0},
		"too much":        {filled("102", 5000, 3000), filled("102", 5000, 2600), true, 5600, 0, 600},
		"other growers":   {filled("102", 5000, 3000), filled("103", 5000, 0), false, 0, 0, 0},
		"other quantity":  {filled("102", 5000, 3000), filled("102", 6000, 0), false, 0, 0, 0},
	} {
		t.Run(name, func(t *testing.T) {
			var c across.Contract
			c.Add("KH", one.kh)
			c.Add("ELM", one.elm)
			total, same := c.Total()
			if same != one.same {
				t.Fatalf("the same contract: %v, want %v", same, one.same)
			}
			if same && (total.Delivered.Cmp(cwt(one.delivered)) != 0 || total.Left.Cmp(cwt(one.left)) != 0 || total.Over.Cmp(cwt(one.over)) != 0) {
				t.Errorf("delivered %v, left %v, over %v", total.Delivered, total.Left, total.Over)
			}
		})
	}
	full := filled("102", 5000, 5000)
	full.NoRoom = cwt(250) // came for the contract when the site had it full
	var c across.Contract
	c.Add("KH", full)
	c.Add("ELM", filled("102", 5000, 100))
	if total, _ := c.Total(); total.Over.Cmp(cwt(350)) != 0 || total.Left.Sign() != 0 {
		t.Errorf("what a site had no room for: %v over, %v left", total.Over, total.Left)
	}
	if _, same := new(across.Contract).Total(); same {
		t.Error("no contract is one")
	}
}
