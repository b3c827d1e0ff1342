package scaleticket

import (
	"tenthpoint/internal/load"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/rates/discount"
	"tenthpoint/internal/rates/rule"
	"tenthpoint/internal/settle"
	"tenthpoint/internal/worksheet"
)

// quantityLines is the dry weight in bushels, by the bushel weight that is
// printed, and the quantity that is paid for.
func quantityLines(p *part) {
	bushelLine(p)
	if b := p.s.Bushels; b != nil {
		p.put(Line{Kind: Pair, Field: "bushels", Label: p.w.DryBushels, Value: p.w.printed(b), Notes: some(p.w.worked(b)), Emphasis: true})
	}
	if q := p.s.Quantity; q != p.s.Bushels {
		p.put(Line{Kind: Pair, Field: "quantity", Label: p.w.unitLabel(q.Value().Unit()), Value: p.w.printed(q), Notes: some(p.w.worked(q)), Emphasis: p.s.Bushels == nil})
	}
}

func bushelLine(p *part) {
	if p.Edition == nil || !p.Edition.Units.HasBushels() {
		return
	}
	u := p.Edition.Units
	p.put(Line{Field: "bushel", Label: p.w.BushelWeight, Value: u.Bushel.Written(), Notes: some(p.w.say(u.BushelSource))})
}

func priceLine(p *part) {
	line := Line{Field: "price", Label: p.w.Price, Value: p.unpriced()}
	if price := p.l.Details.Price; price != nil {
		line.Value, line.Notes = price.Written(), some(p.w.say(p.l.Details.PriceSource))
	}
	p.put(line)
}

// unpriced is printed instead of a price or a figure that depends on it. Stored grain stays its
// owner's; to promise a price for it would be another contract.
func (t *facts) unpriced() string {
	if t.l.Details.Disposition == load.Stored {
		return t.w.NoPriceStored
	}
	return t.w.PriceNotSet
}

// bill is the money of the whole load, or of one owner's part.
type bill struct {
	value, drying, charges, payable *worksheet.Step
	// deductions are parallel to the settlement's; nil where this one has none.
	deductions []*worksheet.Step
}

// billOf is the whole load's, or on one owner's slip that owner's.
func billOf(t *facts) bill {
	if p := t.ownPart(); p != nil {
		return bill{p.Value, p.Drying, p.Charges, p.Payable, p.Deductions}
	}
	b := bill{value: t.s.Value, drying: t.s.Drying, charges: t.s.Charges, payable: t.s.Payable}
	for _, d := range t.s.Deductions {
		b.deductions = append(b.deductions, d.Step)
	}
	return b
}

func (b bill) column() column {
	col := columnOfSteps(append([]*worksheet.Step{b.value, b.drying, b.charges, b.payable}, b.deductions...)...)
	col.places = max(col.places, 2)
	return col
}

// moneyLines is the column of the bill. With a price it runs from value down to what is payable;
// without a price it adds up the charges.
func moneyLines(p *part) {
	ownWeights(p)
	b := billOf(p.facts)
	m := moneyColumn{part: p, column: b.column(), priced: p.l.Details.Price != nil}
	priceLine(p)
	if m.priced {
		p.put(Line{Field: "value", Label: p.w.Value, Value: m.figure(b.value.Value()), Notes: some(p.w.worked(b.value))})
	}
	m.charge(p.w.Drying, b.drying, p.w.NoCharge, p.s.Drying.Note(), "")
	for i, d := range p.s.Deductions {
		if d.Rule.Of != discount.OfWeight {
			m.discount(d, b.deductions[i])
		}
	}
	if m.priced {
		p.put(Line{Kind: Total, Field: "payable", Label: p.w.Payable, Value: m.figure(b.payable.Value()), Emphasis: true})
		return
	}
	p.put(Line{Kind: Total, Field: "charges", Label: p.w.Charges, Value: m.figure(b.charges.Value())})
	p.put(Line{Field: "payable", Label: p.w.Payable, Value: p.unpriced(), Emphasis: true})
}

// moneyColumn puts the lines of a bill so that they add.
type moneyColumn struct {
	*part
	column
	priced bool
}

// charge adds a deduction from the grower's money. Below a value it is negative; elsewhere it is
// part of a sum of charges.
func (m moneyColumn) charge(label string, step *worksheet.Step, none, reason, note string) {
	line := Line{Label: label}
	if step == nil || step.Kind() == worksheet.NotApplied || step.Value().IsZero() {
		line.Value, line.Notes = none, some(m.w.say(reason))
		m.put(line)
		return
	}
	line.Field = step.ID()
	line.Value, line.Notes = m.signed(step.Value(), false), some(m.w.named(note, m.w.worked(step)))
	m.put(line)
}

func (m moneyColumn) discount(d settle.Deduction, step *worksheet.Step) {
	if d.Gives == rule.Pays && step != nil && !step.Value().IsZero() {
		note := m.w.named(Joined(", ", m.w.Premium, basisWords(m.facts, d)), m.w.worked(step))
		m.put(Line{Field: step.ID(), Label: m.w.say(d.Rule.Label), Value: m.signed(step.Value(), true), Notes: some(note)})
		return
	}
	none, reason := m.w.NoDeduction, d.Step.Note()
	if m.dueLater(d) {
		none = m.unpriced()
	}
	m.charge(m.w.say(d.Rule.Label), step, none, reason, basisWords(m.facts, d))
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
	if m.priced || d.Rule.Of != discount.OfPrice || d.Step.Kind() != worksheet.NotApplied {
		return false
	}
	_, found := m.s.Sheet.Step(settle.DiscountRateLine(d.Rule.ID))
	return found
}
