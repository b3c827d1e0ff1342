package settle

import (
	"fmt"
	"slices"

	"tenthpoint/internal/grain"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/rates"
)

// Check lists every reason why the facts cannot be settled under the edition,
// before any line is worked. It looks at each fact on its own; what only the
// working can show, such as charges above the load's worth, comes from Settle.
func Check(f Facts, e *rates.Edition) Problems {
	c := checker{facts: f, edition: e}
	c.drafts()
	c.moisture()
	c.findings()
	c.mustTest()
	c.price()
	c.shares()
	return c.problems
}

type checker struct {
	facts    Facts
	edition  *rates.Edition
	problems Problems
}

func (c *checker) wrong(field, format string, args ...any) {
	c.problems = append(c.problems, Problem{Field: field, Sentence: fmt.Sprintf(format, args...)})
}

func (c *checker) drafts() {
	if len(c.facts.Drafts) == 0 {
		c.wrong("gross", "The load has not been weighed. Weigh it full and empty.")
	}
	for _, d := range c.facts.Drafts {
		name := ""
		if d.Name != "" {
			name = " of the " + d.Name
		}
		switch {
		case !d.Gross.Unit().IsMass() || !d.Tare.Unit().IsMass() || d.Gross.Unit() != d.Tare.Unit():
			c.wrong("gross", "Gross%s is %s and tare is %s; both must be weights in one unit.", name, d.Gross, d.Tare)
		case d.Gross.Sign() <= 0:
			c.wrong("gross", "Gross%s is %s. Weigh the loaded truck.", name, d.Gross)
		case d.Tare.Sign() <= 0:
			c.wrong("tare", "Tare%s is %s. Weigh the empty truck, or use its stored tare.", name, d.Tare)
		case !d.Gross.More(d.Tare):
			c.wrong("tare", "Net%s would be %s (gross %s - tare %s). Weigh again or swap the two.", name, d.Gross.Sub(d.Tare), d.Gross.Figure(), d.Tare.Figure())
		}
	}
	for _, d := range c.facts.Drafts[min(1, len(c.facts.Drafts)):] {
		if d.Gross.Unit() != c.facts.Drafts[0].Gross.Unit() {
			c.wrong("gross", "One draft is in %s and another in %s. Weigh all drafts in one unit.", c.facts.Drafts[0].Gross.Unit(), d.Gross.Unit())
		}
	}
}

func (c *checker) moisture() {
	switch r := c.facts.Moisture.(type) {
	case nil:
		c.wrong("moisture", "The moisture has not been tested. Test the sample, or type the result with its source.")
	case Reading:
		if r.Percent.Unit() != quantity.Percent || r.Percent.Sign() <= 0 || !r.Percent.Less(hundredPercent) {
			c.wrong("moisture", "Moisture is %s; it lies above 0 %% and below 100 %%, wet basis. Test again or type the figure again.", r.Percent)
		}
	}
}

var hundredPercent = quantity.Int(100, quantity.Percent)

func (c *checker) findings() {
	seen := map[grain.FactorID]bool{}
	for _, found := range c.facts.Findings {
		factor, ok := c.edition.Commodity.Factor(found.Factor)
		id := string(found.Factor)
		switch {
		case !ok:
			c.wrong(id, "%s is not tested for %q. Take it off the load.", c.edition.Commodity.Name, found.Factor)
		case seen[found.Factor]:
			c.wrong(id, "%s is written down twice. Keep one result.", factor.Name)
		case !factor.YesNo:
			c.measured(factor, found.Amount)
		}
		seen[found.Factor] = true
	}
}

func (c *checker) measured(f grain.Factor, a quantity.Amount) {
	id := string(f.ID)
	if a.Unit() == quantity.KgPerHL && f.Unit == quantity.LbPerBushel {
		return
	}
	if a.Unit() != f.Unit {
		c.wrong(id, "%s is %s; it is measured in %s.", f.Name, a, f.Unit)
		return
	}
	if a.Less(f.Min) || a.More(f.Max) {
		c.wrong(id, "%s is %s; it lies between %s and %s. Test again or type the figure again.", f.Name, a, f.Min, f.Max)
	}
}

func (c *checker) mustTest() {
	for _, d := range c.edition.Discounts {
		if d.MustTest && d.Factor.ID != grain.Moisture && !c.tested(d.Factor.ID) {
			c.wrong(string(d.Factor.ID), "%s has not been tested, and %s settles no load without it.", d.Factor.Name, c.edition.Source(d.Row))
		}
	}
}

func (c *checker) tested(id grain.FactorID) bool {
	return slices.ContainsFunc(c.facts.Findings, func(f Finding) bool { return f.Factor == id })
}

func (c *checker) price() {
	p := c.facts.Price
	if p == nil {
		return
	}
	want := quantity.Dollar.Per(c.edition.Units.Settle)
	if p.Amount.Unit() != want {
		c.wrong("price", "The price is %s; this edition settles in %s. Type the price in %s.", p.Amount, c.edition.Units.Settle, want)
	} else if p.Amount.Sign() <= 0 {
		c.wrong("price", "The price is %s. Type a price above nought, or leave it for later.", p.Amount)
	}
}

func (c *checker) shares() {
	if len(c.facts.Shares) == 0 {
		return
	}
	total := quantity.Zero(quantity.Plain)
	for _, s := range c.facts.Shares {
		if s.Parts.Sign() <= 0 || s.Of.Sign() <= 0 {
			c.wrong("shares", "The share of %s is %s of %s. Every owner has a share above nought; take out one who has none.", s.Owner, s.Parts, s.Of)
			return
		}
		total = total.Add(s.Parts.Div(s.Of))
	}
	if whole := quantity.Int(1, quantity.Plain); !total.Equal(whole) {
		c.wrong("shares", "The shares add to %s, not to the whole. Mend them so that they add to 100 %% or to 1.", total.Mul(hundredPercent))
	}
}
