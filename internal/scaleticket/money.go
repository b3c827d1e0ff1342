package scaleticket

import (
	"tenthpoint/internal/message"
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
	p.put(Line{Field: "bushel", Label: p.w.BushelWeight, Value: u.Bushel.Written(), Notes: some(p.w.word(u.BushelSource))})
}

func priceLine(p *part) {
	line := Line{Field: "price", Label: p.w.Price, Value: p.unpriced()}
	deal := p.deal()
	switch {
	case p.apart():
		line.Value = p.w.ByOwner
	case deal.Price != nil:
		line.Value, line.Notes = deal.Price.Written(), some(p.w.say(deal.PriceText()))
		if deal.Posted != nil {
			line.Notes = append(line.Notes, p.w.say(message.New("posted at %s, %s, by %v", deal.Posted.Price, message.Own(p.moment(deal.Posted.At)), deal.Posted.Who)))
		}
	}
	p.put(line)
}

// unpriced stands where a price or what hangs on it would. Stored grain stays
// its owner's; to promise a price for it would be another contract.
func (t *facts) unpriced() string { return t.w.say(t.deal().Under.Unpriced()) }

// bill is the money of the whole load, or of one owner's part.
type bill struct {
	value, drying, payable *worksheet.Step
	settle.Owed
	// deductions stand beside the settlement's; nil where this one has none.
	deductions []*worksheet.Step
}

// billOf is the whole load's, or on one owner's slip that owner's.
func billOf(t *facts) bill {
	if p := t.ownPart(); p != nil {
		return bill{p.Value, p.Drying, p.Payable, p.Owed, p.Deductions}
	}
	b := bill{value: t.s.Value, drying: t.s.Drying, Owed: t.s.Owed, payable: t.s.Payable}
	for _, d := range t.s.Deductions {
		b.deductions = append(b.deductions, d.Step)
	}
	return b
}

func (b bill) column() column {
	col := columnOfSteps(append([]*worksheet.Step{b.value, b.drying, b.Charges, b.Adjustments, b.NetValue, b.payable}, b.deductions...)...)
	col.places = max(col.places, 2)
	return col
}

// moneyLines is the column of the bill. With a price it runs from value down to
// what is payable: quality first, then services. Without one it adds up what will
// be taken and paid. On both + is to the owner and - from the owner.
func moneyLines(p *part) {
	b := billOf(p.facts)
	m := moneyColumn{part: p, column: b.column(), priced: b.payable.Kind() != worksheet.NotApplied && !p.apart()}
	priceLine(p)
	if !p.s.Engine.HasTitles() {
		m.asFirstPrinted(b)
		return
	}
	if m.priced {
		p.put(Line{Field: "value", Label: p.w.Value, Value: m.figure(b.value.Value()), Notes: some(p.w.worked(b.value))})
	}
	taken := m.discounts(b)
	if m.priced && taken {
		p.put(Line{Kind: Total, Field: "net-value", Label: p.w.NetValue, Value: m.figure(b.NetValue.Value())})
	}
	m.charge(p.w.Drying, b.drying, p.w.NoCharge, p.s.Drying.Note(), "")
	if !m.priced {
		p.put(Line{Kind: Total, Field: "adjustments", Label: p.w.Adjustments, Value: m.toOwner(b.ToOwner())})
	}
	m.payable(b)
}

// payable is the amount the owner is paid, or the words in its place.
func (m moneyColumn) payable(b bill) {
	line := Line{Kind: Total, Field: "payable", Label: m.w.Payable, Value: m.unpriced(), Emphasis: true}
	switch {
	case b.payable.Kind() != worksheet.NotApplied:
		line.Value = m.figure(b.payable.Value())
		if m.apart() {
			line.Notes = some(m.w.PricedParts)
		} else if !b.payable.Note().IsZero() {
			line.Notes = some(m.w.say(b.payable.Note()))
		}
	default:
		line.Kind = Pair
	}
	m.put(line)
}

// discounts puts discounts and premiums in money, and reports whether any takes or
// pays something.
func (m moneyColumn) discounts(b bill) (taken bool) {
	for i, d := range m.s.Deductions {
		if d.Rule.Of != discount.OfWeight {
			m.discount(d, b.deductions[i])
			taken = taken || b.deductions[i] != nil && !b.deductions[i].Value().IsZero()
		}
	}
	return taken
}

// asFirstPrinted is the bill of the first two engines, as their tickets were issued:
// without a price it adds up charges, whose signs then mean the opposite.
func (m moneyColumn) asFirstPrinted(b bill) {
	if m.priced {
		m.put(Line{Field: "value", Label: m.w.Value, Value: m.figure(b.value.Value()), Notes: some(m.w.worked(b.value))})
	}
	m.charge(m.w.Drying, b.drying, m.w.NoCharge, m.s.Drying.Note(), "")
	m.discounts(b)
	if m.priced {
		m.put(Line{Kind: Total, Field: "payable", Label: m.w.Payable, Value: m.figure(b.payable.Value()), Emphasis: true})
		return
	}
	m.put(Line{Kind: Total, Field: "charges", Label: m.w.Charges, Value: m.figure(b.Charges.Value())})
	m.put(Line{Field: "payable", Label: m.w.Payable, Value: m.unpriced(), Emphasis: true})
}

// moneyColumn adds the lines of a bill so that they sum up.
type moneyColumn struct {
	*part
	column
	priced bool
}

// charge puts what is taken from the owner.
func (m moneyColumn) charge(label string, step *worksheet.Step, none string, reason message.Text, note string) {
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
	if d.Direction == rule.Pays && step != nil && !step.Value().IsZero() {
		note := m.w.named(Joined(", ", m.w.Premium, basisWords(m.facts, d)), m.w.worked(step))
		m.put(Line{Field: step.ID(), Label: m.w.say(d.Rule.Label), Value: m.signed(step.Value(), true), Notes: some(note)})
		return
	}
	none, reason, word := m.w.NoDeduction, d.Step.Note(), ""
	if m.dueLater(d) {
		none = m.unpriced()
	}
	if m.s.Engine.HasTitles() && step != nil && !step.Value().IsZero() {
		word = m.w.Discount
	}
	m.charge(m.w.say(d.Rule.Label), step, none, reason, Joined(", ", word, basisWords(m.facts, d)))
}

// signed writes a part of the bill: + to the owner, - from the owner. Tickets of the
// first two engines without a price added charges up instead.
func (m moneyColumn) signed(a quantity.Amount, toGrower bool) string {
	switch old := !m.s.Engine.HasTitles() && !m.priced; {
	case toGrower && old:
		return m.off(a)
	case old:
		return m.figure(a)
	case toGrower:
		return m.on(a)
	}
	return m.off(a)
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
