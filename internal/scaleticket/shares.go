package scaleticket

import (
	"tenthpoint/internal/load"
	"tenthpoint/internal/settle"
	"tenthpoint/internal/worksheet"
)

// ownWeights adds one owner's part of the weights, before that owner's money.
func ownWeights(p *part) {
	part := p.ownPart()
	if part == nil {
		return
	}
	owner, _ := p.owner()
	p.put(Line{Kind: Heading, Label: p.w.PartOf + " " + p.w.shareWords(owner)})
	p.put(Line{Label: p.w.NetPart, Value: p.w.printed(part.Net), Notes: some(p.w.worked(part.Net))})
	p.put(Line{Label: p.w.WeightPart, Value: p.w.printed(part.Settled), Notes: some(p.w.worked(part.Settled))})
	if part.Bushels != nil && part.Bushels != part.Quantity {
		p.put(Line{Label: p.w.DryBushels, Value: p.w.printed(part.Bushels), Notes: some(p.w.worked(part.Bushels))})
	}
	label := p.w.quantityLabel(part.Quantity)
	p.put(Line{Field: "quantity", Label: label, Value: p.w.printed(part.Quantity), Notes: some(p.w.worked(part.Quantity)), Emphasis: true})
}

// sharesSection lists each owner's part of the whole load: money where there is a price and the copy
// may say it, else quantity. The lines add to the whole. A load of one owner has none, nor has the slip of one.
func sharesSection(t *facts) (Section, bool) {
	if t.s == nil || t.Owner != 0 || len(t.s.Shares) == 0 {
		return Section{}, false
	}
	p := newPart(t, "shares", t.w.Shares, Ledger)
	for i, part := range t.s.Shares {
		label := t.w.shareWords(t.l.Details.Shares[i])
		p.put(shareLine(t, label, part, t.l.Details.DealOf(i)))
	}
	whole := Line{Kind: Total, Label: t.w.AllShares, Value: t.w.printed(t.s.Quantity)}
	if t.s.Payable.Kind() != worksheet.NotApplied && !t.withoutMoney() {
		whole.Value = columnOfSteps(t.s.Payable).figure(t.s.Payable.Value())
	}
	p.put(whole)
	return p.Section, true
}

func shareLine(t *facts, label string, part settle.ShareLine, deal load.Deal) Line {
	weight := Joined(" ", t.w.Net, t.w.printed(part.Net))
	if t.withoutMoney() {
		return Line{Label: label, Value: t.w.printed(part.Quantity), Notes: some(weight)}
	}
	if part.Payable.Kind() == worksheet.NotApplied {
		line := Line{Label: label, Value: t.w.printed(part.Quantity), Notes: some(Joined(", ", weight, charged(t, part)))}
		if t.apart() {
			line.Value, line.Notes = t.w.say(deal.Under.Unpriced()), some(Joined(", ", t.w.printed(part.Quantity), weight, charged(t, part)))
		}
		return line
	}
	money := part.Payable.FiguresIn(t.w.Printer)
	value := columnOfSteps(part.Payable).figure(part.Payable.Value())
	if !part.Payable.Note().IsZero() {
		money = Joined("; ", money, t.w.say(part.Payable.Note()))
	}
	return Line{Label: label, Value: value, Notes: some(Joined(", ", weight, t.w.printed(part.Quantity), money))}
}

// charged are the charges, discounts and premiums of an owner without a price.
func charged(t *facts, part settle.ShareLine) string {
	if part.Charges != nil {
		return Joined(" ", t.w.ChargesOf, columnOfSteps(part.Charges).figure(part.Charges.Value()))
	}
	return Joined(" ", t.w.AdjustmentsOf, columnOfSteps(part.Adjustments).toOwner(part.Adjustments.Value()))
}
