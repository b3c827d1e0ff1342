package slip

import (
	"tenthpoint/internal/grain"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/working"
)

// headline is the four figures people look for first. On one owner's slip they
// are that owner's.
func (c *composer) headline() {
	c.open("figures", "", Figures)
	if c.isWeighedOnly() {
		c.weighedHeadline()
		return
	}
	c.put(c.headNet(), c.headMoisture(), c.headQuantity(), c.headPayable())
}

func (c *composer) headNet() Line {
	line := Line{Field: "net", Label: c.w.Net, Value: c.netLater(), Emphasis: true}
	if part := c.ownPart(); part != nil {
		line.Value = part.Net.Printed()
	} else if c.s != nil {
		line.Value = c.s.Net.Printed()
	} else if net, ok := c.net(); ok {
		line.Value = columnOf(net.Written()).figure(net)
	}
	return line
}

func (c *composer) headMoisture() Line {
	line := Line{Field: string(grain.Moisture), Label: c.w.Moisture, Value: c.w.NotTested, Missing: true, Emphasis: true}
	if c.l.Sample.Moisture != nil {
		line.Value, line.Missing = c.moistureFigure(), false
	}
	return line
}

// headQuantity is dry bushels, or what the grain is settled in.
func (c *composer) headQuantity() Line {
	line := Line{Field: "quantity", Label: c.w.DryBushels, Value: c.whenSettled(), Emphasis: true}
	if step := c.drySettled(); step != nil {
		line.Label, line.Value = c.quantityLabel(step), step.Printed()
	} else if c.Edition != nil && !c.Edition.Units.HasBushels() {
		line.Label = c.unitLabel(c.Edition.Units.Settle)
	}
	return line
}

// drySettled is the figure that tells how much grain there is when dry: bushels
// where they are counted, else what is settled.
func (c *composer) drySettled() *working.Step {
	switch part := c.ownPart(); {
	case part != nil && part.Bushels != nil:
		return part.Bushels
	case part != nil:
		return part.Quantity
	case c.s == nil:
		return nil
	case c.s.Bushels != nil:
		return c.s.Bushels
	}
	return c.s.Quantity
}

func (c *composer) quantityLabel(step *working.Step) string {
	if step.Value().Unit() == quantity.Bushel {
		return c.w.DryBushels
	}
	return c.unitLabel(step.Value().Unit())
}

func (c *composer) unitLabel(unit quantity.Unit) string {
	switch unit {
	case quantity.Cwt:
		return c.w.SettledCwt
	case quantity.Tonne:
		return c.w.SettledTonnes
	}
	return c.w.SettledBushels
}

func (c *composer) headPayable() Line {
	line := Line{Field: "payable", Label: c.w.Payable, Value: c.whenSettled(), Emphasis: true}
	switch part := c.ownPart(); {
	case c.l.Details.Price == nil:
		line.Value = c.unpriced()
	case part != nil:
		line.Value = columnOfSteps(part.Payable).figure(part.Payable.Value())
	case c.s != nil:
		line.Value = columnOfSteps(c.s.Payable).figure(c.s.Payable.Value())
	}
	return line
}
