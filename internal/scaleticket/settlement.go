package scaleticket

import (
	"tenthpoint/internal/load"
)

// settlement is from the net weight to the money, in two columns that add:
// weights down to what is settled, money down to what is payable.
func (c *composer) settlement() {
	c.open("settlement", c.w.Settlement, Ledger)
	if !c.isRefused() {
		for _, problem := range c.Problems {
			c.warn(c.w.say(problem))
		}
	}
	if c.isWeighedOnly() {
		c.weighedSettlement()
		return
	}
	c.ratesLine()
	if c.s == nil {
		c.unsettled()
	} else {
		c.weights()
		c.quantities()
		c.money()
	}
	c.put(Line{Field: "disposition", Label: c.w.Disposition, Value: c.disposition()})
	if c.s != nil {
		c.shares()
	}
}

// ratesLine names the edition the load is settled under.
func (c *composer) ratesLine() {
	if c.Edition == nil {
		c.put(Line{Field: "edition", Label: c.w.Rates, Value: c.w.NoRates, Missing: true})
		return
	}
	c.put(Line{Field: "edition", Label: c.w.Rates, Value: c.Edition.ID, Notes: some(c.Edition.Title)})
}

// unsettled lists what the settlement will say, in its places.
func (c *composer) unsettled() {
	later := func(labels ...string) {
		for _, label := range labels {
			c.put(Line{Label: label, Value: c.whenSettled()})
		}
	}
	later(c.w.Water, c.w.Handling, c.w.DryWeight)
	c.bushelWeight()
	later(c.w.DryBushels)
	c.priceLine()
	later(c.w.Drying, c.w.Discounts)
	value := c.whenSettled()
	if c.l.Details.Price == nil {
		value = c.unpriced()
	}
	c.put(Line{Kind: Total, Field: "payable", Label: c.w.Payable, Value: value, Emphasis: true})
}

// disposition is what becomes of the grain in the books.
func (c *composer) disposition() string {
	switch c.l.Details.Disposition {
	case load.Sold:
		return c.w.Sold
	case load.Stored:
		return c.w.Stored
	case load.Contract:
		return Joined(" ", c.w.OnContract, c.l.Details.ContractNo)
	}
	return c.w.NotDecided
}
