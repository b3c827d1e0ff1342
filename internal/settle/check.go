package settle

import (
	"slices"
	"strings"

	"tenthpoint/internal/grain"
	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/rates"
)

// Check lists every reason why the facts cannot be settled under the edition, before any line is
// calculated. It looks at each fact on its own; problems of the calculation, such as charges above
// the load's value, come from Settle.
func Check(f Facts, e *rates.Edition) Problems { return engines[Current].problems(f, e) }

func (by *engine) problems(f Facts, e *rates.Edition) Problems {
	c := checker{facts: f, edition: e}
	by.check(&c)
	return c.problems
}

// all looks at everything; a load settled once must pass it for ever.
func (c *checker) all() {
	c.drafts()
	c.moisture()
	c.findings()
	c.mustTest()
	c.moistureBases()
	c.price()
	c.shares()
}

type checker struct {
	facts    Facts
	edition  *rates.Edition
	problems Problems
}

func (c *checker) wrong(field, format string, args ...any) {
	c.problems = append(c.problems, Problem{Field: field, Sentence: message.New(format, args...)})
}

func (c *checker) drafts() {
	if len(c.facts.Drafts) == 0 {
		c.wrong("gross", "The load has not been weighed. Weigh it full and empty.")
		return
	}
	for _, d := range c.facts.Drafts {
		c.draft(d)
	}
	first := c.facts.Drafts[0].Gross.Unit()
	for _, d := range c.facts.Drafts[1:] {
		if d.Gross.Unit() != first {
			c.wrong("gross", "One draft is in %s and another in %s. Weigh all drafts in one unit.", first, d.Gross.Unit())
		}
	}
}

func (c *checker) draft(d Draft) {
	name := message.Text{}
	if d.Name != "" {
		name = message.New(" of the %s", d.Name)
	}
	switch {
	case !d.Gross.Unit().IsMass() || d.Gross.Unit() != d.Tare.Unit():
		c.wrong("gross", "Gross%s is %s and tare is %s; both must be weights in one unit.", name, d.Gross, d.Tare)
	case d.Gross.Sign() <= 0:
		c.wrong("gross", "Gross%s is %s. Weigh the loaded truck.", name, d.Gross)
	case d.Tare.Sign() <= 0:
		c.wrong("tare", "Tare%s is %s. Weigh the empty truck, or use its stored tare.", name, d.Tare)
	case !d.Gross.More(d.Tare):
		c.wrong("tare", "Net%s would be %s (gross %s - tare %s). Weigh again or swap the two.", name, d.Gross.Sub(d.Tare), d.Gross.Figure(), d.Tare.Figure())
	}
}

func (c *checker) moisture() {
	switch r := c.facts.Moisture.(type) {
	case nil:
		c.wrong("moisture", "The moisture has not been tested. Test the sample, or type the result with its source.")
	case Reading:
		if r.Percent.Unit() != quantity.Percent || r.Percent.Sign() <= 0 || !r.Percent.Less(hundredPercent) {
			c.wrong("moisture", "Moisture is %s; it lies above 0 %% and below 100 %%, wet basis. Test again or type the figure again.", r.Percent)
		} else if f, ok := c.edition.Commodity.Factor(grain.Moisture); ok {
			c.measured(f, r.Percent)
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
		case found.Factor == grain.Moisture:
			c.wrong(id, "%s stands among the other results. Give it as the load's moisture, once.", factor.Name)
		case seen[found.Factor]:
			c.wrong(id, "%s is written down twice. Keep one result.", factor.Name)
		case !factor.YesNo:
			c.measured(factor, found.Amount)
		}
		seen[found.Factor] = true
	}
}

// measured holds a result within the limits of the factor's scale.
func (c *checker) measured(f grain.Factor, a quantity.Amount) {
	onScale, err := a, error(nil)
	if a.Unit() == quantity.KgPerHL {
		onScale, err = quantity.TestWeight(a, f.Unit)
	}
	switch {
	case err != nil || onScale.Unit() != f.Unit:
		c.wrong(string(f.ID), "%s is %s; it is measured in %s.", f.Name, a, f.Unit)
	case onScale.Less(f.Min) || onScale.More(f.Max):
		c.wrong(string(f.ID), "%s is %s; it lies between %s and %s. Test again or type the figure again.", f.Name, a, f.Min, f.Max)
	}
}

func (c *checker) mustTest() {
	for _, d := range c.edition.Discounts {
		if d.MustTest && d.Factor.ID != grain.Moisture && !c.tested(d.Factor.ID) {
			c.untested(d.Factor, d.Source)
		}
	}
	if dockage, ok := c.edition.Commodity.Dockage(); ok && c.edition.Dockage.MustTest && !c.tested(dockage.ID) {
		c.untested(dockage, c.edition.Dockage.Source)
	}
}

// moistureBases compares the moisture basis of the edition's percents with that of the results. An
// edition that names none accepts any.
func (c *checker) moistureBases() {
	for _, d := range c.edition.Discounts {
		f, ok := c.edition.Commodity.Factor(d.Factor.ID)
		if ok && d.MoistureBasis.Given() && f.HasBasis() && c.tested(f.ID) && !f.Basis.Equal(d.MoistureBasis.Amount) {
			c.wrong(string(f.ID), "%s is stated at a moisture of %s here, and %s means it at %s. State both at one moisture.", f.Name, f.Basis, d.Source, d.MoistureBasis.Amount)
		}
	}
}

func (c *checker) untested(f grain.Factor, source message.Text) {
	c.wrong(string(f.ID), "%s has not been tested, and %s settles no load without it. Test the sample.", f.Name, source)
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
		c.wrong("price", "The price is %s. Type a price above zero, or leave it for later.", p.Amount)
	}
}

func (c *checker) shares() {
	total := quantity.Zero(quantity.Plain)
	seen := map[string]bool{}
	for _, s := range c.facts.Shares {
		switch {
		case s.Owner == "":
			c.wrong("shares", "A share has no owner. Name the owner, or take the share out.")
		case seen[s.Owner]:
			c.wrong("shares", "%s has two shares. Add them into one.", s.Owner)
		}
		seen[s.Owner] = true
		if s.Parts.Unit() != quantity.Plain || s.Of.Unit() != quantity.Plain || s.Parts.Sign() <= 0 || s.Of.Sign() <= 0 {
			c.wrong("shares", "The share of %s is %s of %s. Every owner has a share above zero; take out one who has none.", s.Owner, s.Parts, s.Of)
			return
		}
		total = total.Add(s.fraction())
	}
	c.dryingParts()
	if len(c.facts.Shares) > 0 && !total.Equal(quantity.Int(1, quantity.Plain)) {
		c.wrong("shares", "The shares add to %s, not to the whole. Mend them so that they add to 100 %% or to 1.", total.Mul(hundredPercent))
	}
}

// dryingParts checks the parts of the drying charge where they are not those of the grain.
func (c *checker) dryingParts() {
	if !driesApart(c.facts.Shares) {
		return
	}
	total := quantity.Zero(quantity.Plain)
	for _, s := range c.facts.Shares {
		if d := s.Drying; d != nil {
			if !d.IsPart() {
				c.wrong("shares", "The part of %s in the drying is %s of %s. It is not below zero.", s.Owner, d.Parts, d.Of)
				return
			}
			total = total.Add(d.Fraction())
		}
	}
	if !total.Equal(quantity.Int(1, quantity.Plain)) {
		c.wrong("shares", "The parts in the drying add to %s, not to the whole. Mend them so that they add to 100 %% or to 1.", total.Mul(hundredPercent))
	}
}

// Problem is one reason why a load cannot be settled.
type Problem struct {
	// Field names the field at fault: "gross", "tare", "moisture", a factor's id, "price",
	// "shares", "edition".
	Field string
	// Sentence has the problem, the arithmetic and the remedy.
	Sentence message.Text
	// Accept is the id of the limit a manager may accept; empty when nobody
	// may.
	Accept string
}

// Problems are all the reasons at once.
type Problems []Problem

// Message joins the sentences, a line each.
func (ps Problems) Message() message.Text {
	lines := make([]any, len(ps))
	for i, p := range ps {
		lines[i] = p.Sentence
	}
	return message.List("\n", lines...)
}

// Unwrap gives the kind of every problem.
func (ps Problems) Unwrap() error { return message.Invalid }

// Error joins the sentences, a line each.
func (ps Problems) Error() string {
	lines := make([]string, len(ps))
	for i, p := range ps {
		lines[i] = p.Sentence.String()
	}
	return strings.Join(lines, "\n")
}
