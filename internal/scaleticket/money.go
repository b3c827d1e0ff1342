package scaleticket

import (
	"tenthpoint/internal/load"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/rates"
	"tenthpoint/internal/settle"
	"tenthpoint/internal/worksheet"
)

// quantities is the dry weight in bushels, by the bushel weight that is
// printed, and the quantity that is paid for.
func (c *composer) quantities() {
	c.bushelWeight()
	if b := c.s.Bushels; b != nil {
		c.put(Line{Kind: Pair, Field: "bushels", Label: c.w.DryBushels, Value: b.Printed(), Notes: some(c.worked(b)), Emphasis: true})
	}
	if q := c.s.Quantity; q != c.s.Bushels {
		c.put(Line{Kind: Pair, Field: "quantity", Label: c.unitLabel(q.Value().Unit()), Value: q.Printed(), Notes: some(c.worked(q)), Emphasis: c.s.Bushels == nil})
	}
}

func (c *composer) bushelWeight() {
	if c.Edition == nil || !c.Edition.Units.HasBushels() {
		return
	}
	u := c.Edition.Units
	c.put(Line{Field: "bushel", Label: c.w.BushelWeight, Value: u.Bushel.Written(), Notes: some(c.w.say(u.BushelSource))})
}

func (c *composer) priceLine() {
	line := Line{Field: "price", Label: c.w.Price, Value: c.unpriced()}
	if p := c.l.Details.Price; p != nil {
		line.Value, line.Notes = p.Written(), some(c.w.say(c.l.Details.PriceSource))
	}
	c.put(line)
}

// unpriced stands where a price or what hangs on it would. Stored grain stays its
// owner's; to promise a price for it would be another contract.
func (c *composer) unpriced() string {
	if c.l.Details.Disposition == load.Stored {
		return c.w.NoPriceStored
	}
	return c.w.PriceNotSet
}

// bill is what is owed to one: the whole load, or one owner's part.
type bill struct {
	value, drying, charges, payable *worksheet.Step
	// deductions stand beside the settlement's; nil where this one has none.
	deductions []*worksheet.Step
}

// bill is the whole load's, or on one owner's slip that owner's.
func (c *composer) bill() bill {
	if p := c.ownPart(); p != nil {
		return bill{p.Value, p.Drying, p.Charges, p.Payable, p.Deductions}
	}
	b := bill{value: c.s.Value, drying: c.s.Drying, charges: c.s.Charges, payable: c.s.Payable}
	for _, d := range c.s.Deductions {
		b.deductions = append(b.deductions, d.Step)
	}
	return b
}

func (b bill) column() column {
	col := columnOfSteps(append([]*worksheet.Step{b.value, b.drying, b.charges, b.payable}, b.deductions...)...)
	col.places = max(col.places, 2)
	return col
}

// money is the column of the bill. With a price it runs from value down to what
// is payable; while the price comes later it adds up the charges.
func (c *composer) money() {
	c.ownWeights()
	b := c.bill()
	m := moneyColumn{composer: c, column: b.column(), priced: c.l.Details.Price != nil}
	c.priceLine()
	if m.priced {
		c.put(Line{Field: "value", Label: c.w.Value, Value: m.figure(b.value.Value()), Notes: some(c.worked(b.value))})
	}
	m.charge(c.w.Drying, b.drying, c.w.NoCharge, c.s.Drying.Note(), "")
	for i, d := range c.s.Deductions {
		if d.Rule.Of != rates.OfWeight {
			m.discount(d, b.deductions[i])
		}
	}
	if m.priced {
		c.put(Line{Kind: Total, Field: "payable", Label: c.w.Payable, Value: m.figure(b.payable.Value()), Emphasis: true})
		return
	}
	c.put(Line{Kind: Total, Field: "charges", Label: c.w.Charges, Value: m.figure(b.charges.Value())})
	c.put(Line{Field: "payable", Label: c.w.Payable, Value: c.unpriced(), Emphasis: true})
}

// moneyColumn puts the lines of a bill so that they add.
type moneyColumn struct {
	*composer
	column
	priced bool
}

// charge puts what is taken from the grower. Below a value it stands with a
// minus; on its own it is part of a sum of charges.
func (m moneyColumn) charge(label string, step *worksheet.Step, none, reason, note string) {
	line := Line{Label: label}
	if step == nil || step.Kind() == worksheet.NotApplied || step.Value().IsZero() {
		line.Value, line.Notes = none, some(m.w.say(reason))
		m.put(line)
		return
	}
	line.Field = step.ID()
	line.Value, line.Notes = m.signed(step.Value(), false), some(m.named(note, m.worked(step)))
	m.put(line)
}

func (m moneyColumn) discount(d settle.Deduction, step *worksheet.Step) {
	if d.Gives == rates.Pays && step != nil && !step.Value().IsZero() {
		note := m.named(Joined(", ", m.w.Premium, m.basis(d)), m.worked(step))
		m.put(Line{Field: step.ID(), Label: m.w.say(d.Rule.Label), Value: m.signed(step.Value(), true), Notes: some(note)})
		return
	}
	none, reason := m.w.NoDeduction, d.Step.Note()
	if m.dueLater(d) {
		none = m.unpriced()
	}
	m.charge(m.w.say(d.Rule.Label), step, none, reason, m.basis(d))
}

// signed writes a part of the bill: to the grower or from the grower, down from
// a value or up to the charges.
func (m moneyColumn) signed(a quantity.Amount, toGrower bool) string {
	switch {
	case m.priced && toGrower:
		return m.on(a)
	case m.priced:
		return m.off(a)
	case toGrower:
		return m.off(a)
	}
	return m.figure(a)
}

// dueLater reports whether a discount is a percent of a price that comes later:
// its rate has been found, its money has not.
func (m moneyColumn) dueLater(d settle.Deduction) bool {
	if m.priced || d.Rule.Of != rates.OfPrice || d.Step.Kind() != worksheet.NotApplied {
		return false
	}
	_, found := m.s.Sheet.Step(settle.DiscountRateLine(d.Rule.ID))
	return found
}
