package scaleticket

import (
	"tenthpoint/internal/grain"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/worksheet"
)

// headlineSection is the four figures people look for first. On one owner's
// slip they are that owner's.
func headlineSection(t *facts) Section {
	p := newPart(t, "figures", "", Figures)
	if t.isWeighedOnly() {
		weighedHeadline(p)
		return p.Section
	}
	p.put(headNet(t), headMoisture(t), headQuantity(t))
	if !t.withoutMoney() {
		p.put(headPayable(t))
	}
	return p.Section
}

func headNet(t *facts) Line {
	line := Line{Field: "net", Label: t.w.Net, Value: netLater(t), Emphasis: true}
	if part := t.ownPart(); part != nil {
		line.Value = t.w.printed(part.Net)
	} else if t.s != nil {
		line.Value = t.w.printed(t.s.Net)
	} else if net, ok := netWeight(t); ok {
		line.Value = columnOf(net.Written()).figure(net)
	}
	return line
}

func headMoisture(t *facts) Line {
	line := Line{Field: string(grain.Moisture), Label: t.w.Moisture, Value: t.w.NotTested, Missing: true, Emphasis: true}
	if t.l.Sample.Moisture != nil {
		line.Value, line.Missing = moistureFigure(t), false
	}
	return line
}

// headQuantity is dry bushels, or the settled quantity.
func headQuantity(t *facts) Line {
	line := Line{Field: "quantity", Label: t.w.DryBushels, Value: t.whenSettled(), Emphasis: true}
	if step := drySettled(t); step != nil {
		line.Label, line.Value = t.w.quantityLabel(step), t.w.printed(step)
	} else if t.Edition != nil && !t.Edition.Units.HasBushels() {
		line.Label = t.w.unitLabel(t.Edition.Units.Settle)
	}
	return line
}

// drySettled returns the dry quantity: bushels where they are counted, else the quantity settled.
func drySettled(t *facts) *worksheet.Step {
	switch part := t.ownPart(); {
	case part != nil && part.Bushels != nil:
		return part.Bushels
	case part != nil:
		return part.Quantity
	case t.s == nil:
		return nil
	case t.s.Bushels != nil:
		return t.s.Bushels
	}
	return t.s.Quantity
}

func (w Words) quantityLabel(step *worksheet.Step) string {
	if step.Value().Unit() == quantity.Bushel {
		return w.DryBushels
	}
	return w.unitLabel(step.Value().Unit())
}

func (w Words) unitLabel(unit quantity.Unit) string {
	switch unit {
	case quantity.Cwt:
		return w.SettledCwt
	case quantity.Tonne:
		return w.SettledTonnes
	}
	return w.SettledBushels
}

func headPayable(t *facts) Line {
	line := Line{Field: "payable", Label: t.w.Payable, Value: t.whenSettled(), Emphasis: true}
	switch part := t.ownPart(); {
	case t.s == nil && !t.l.Details.IsPriced():
		line.Value = t.unpriced()
	case part != nil && part.Payable.Kind() == worksheet.NotApplied, t.s != nil && part == nil && t.s.Payable.Kind() == worksheet.NotApplied:
		line.Value = t.unpriced()
	case part != nil:
		line.Value = columnOfSteps(part.Payable).figure(part.Payable.Value())
	case t.s != nil:
		line.Value = columnOfSteps(t.s.Payable).figure(t.s.Payable.Value())
	}
	return line
}
