package across

import (
	"tenthpoint/internal/contract"
	"tenthpoint/internal/quantity"
)

// ContractPart is the quantity a site delivered on a contract, by the site's own working.
type ContractPart struct {
	Site string
	contract.Filled
}

// Contract is one contract that several sites fill, each of which has it in its book.
type Contract struct{ Parts []ContractPart }

// ContractTotal is a contract as all sites together filled it.
type ContractTotal struct {
	Quantity, Delivered quantity.Amount
	// Left is still to come; Over has come beyond the contract, taken by a site or not.
	Left, Over quantity.Amount
}

// Add enters what a site has of it.
func (c *Contract) Add(site string, f contract.Filled) {
	c.Parts = append(c.Parts, ContractPart{site, f})
}

// Total adds up what came at all sites. It is not the same contract, and nothing is added up, where
// two sites have it with other growers, grains or quantities.
func (c *Contract) Total() (t ContractTotal, same bool) {
	for i, p := range c.Parts {
		if i == 0 {
			t.Quantity, t.Delivered = p.Quantity, p.Delivered
			continue
		}
		first := c.Parts[0]
		if p.Grower != first.Grower || p.Commodity != first.Commodity || !p.Quantity.Equal(first.Quantity) {
			return ContractTotal{}, false
		}
		t.Delivered = t.Delivered.Add(p.Delivered)
	}
	none := quantity.Zero(t.Quantity.Unit())
	t.Left, t.Over = none, none
	if left := t.Quantity.Sub(t.Delivered); left.Sign() >= 0 {
		t.Left = left
	} else {
		t.Over = none.Sub(left)
	}
	for _, p := range c.Parts {
		t.Over = t.Over.Add(p.NoRoom)
	}
	return t, len(c.Parts) > 0
}
