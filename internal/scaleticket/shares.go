package scaleticket

import (
	"tenthpoint/internal/settle"
)

// ownWeights puts one owner's part of the weights, before that owner's money.
func (c *composer) ownWeights() {
	part := c.ownPart()
	if part == nil {
		return
	}
	owner, _ := c.owner()
	c.put(Line{Kind: Heading, Label: c.w.PartOf + " " + shareWords(owner)})
	c.put(Line{Label: c.w.NetPart, Value: part.Net.Printed(), Notes: some(c.worked(part.Net))})
	c.put(Line{Label: c.w.WeightPart, Value: part.Settled.Printed(), Notes: some(c.worked(part.Settled))})
	if part.Bushels != nil && part.Bushels != part.Quantity {
		c.put(Line{Label: c.w.DryBushels, Value: part.Bushels.Printed(), Notes: some(c.worked(part.Bushels))})
	}
	label := c.quantityLabel(part.Quantity)
	c.put(Line{Field: "quantity", Label: label, Value: part.Quantity.Printed(), Notes: some(c.worked(part.Quantity)), Emphasis: true})
}

// shares lists what each owner has of the whole load: money where there is a
// price, else quantity. The lines add to the whole.
func (c *composer) shares() {
	if c.Owner != 0 || len(c.s.Shares) == 0 {
		return
	}
	c.open("shares", c.w.Shares, Ledger)
	priced := c.l.Details.Price != nil
	for i, part := range c.s.Shares {
		label := shareWords(c.l.Details.Shares[i])
		c.put(c.shareLine(label, part, priced))
	}
	whole := Line{Kind: Total, Label: c.w.AllShares, Value: c.s.Quantity.Printed()}
	if priced {
		whole.Value = columnOfSteps(c.s.Payable).figure(c.s.Payable.Value())
	}
	c.put(whole)
}

func (c *composer) shareLine(label string, part settle.ShareLine, priced bool) Line {
	weight := Joined(" ", c.w.Net, part.Net.Printed())
	charges := Joined(" ", c.w.ChargesOf, columnOfSteps(part.Charges).figure(part.Charges.Value()))
	if !priced {
		return Line{Label: label, Value: part.Quantity.Printed(), Notes: some(Joined(", ", weight, charges))}
	}
	money := part.Payable.FiguresIn(c.w.Say)
	value := columnOfSteps(part.Payable).figure(part.Payable.Value())
	return Line{Label: label, Value: value, Notes: some(Joined(", ", weight, part.Quantity.Printed(), money))}
}
