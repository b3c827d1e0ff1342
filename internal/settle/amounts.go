package settle

import (
	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/rates/rule"
	"tenthpoint/internal/worksheet"
)

// weightIn is a weight and its counting unit.
type weightIn struct {
	weight *worksheet.Step
	unit   quantity.Unit
}

// basisAmounts are the names of a basis weight in each unit that rates are per.
var basisAmounts = map[rule.Basis]map[quantity.Unit]message.Text{
	rule.Net:       amounts(message.Words("Wet bushels"), message.Words("Wet hundredweight"), message.Words("Wet tonnes")),
	rule.Clean:     amounts(message.Words("Clean bushels"), message.Words("Clean hundredweight"), message.Words("Clean tonnes")),
	rule.Dry:       amounts(message.Words("Dry bushels"), message.Words("Dry hundredweight"), message.Words("Dry tonnes")),
	rule.Remaining: amounts(message.Words("Remaining bushels"), message.Words("Remaining hundredweight"), message.Words("Remaining tonnes")),
}

// settledAmounts name what is settled.
var settledAmounts = amounts(message.Words("Settled bushels"), message.Words("Settled hundredweight"), message.Words("Settled tonnes"))

func amounts(bushels, hundredweight, tonnes message.Text) map[quantity.Unit]message.Text {
	return map[quantity.Unit]message.Text{quantity.Bushel: bushels, quantity.Cwt: hundredweight, quantity.Tonne: tonnes}
}

// AmountOn returns a basis weight in the unit a rate is per. It is worked out and printed once for
// each weight and unit, rounded as the edition rounds quantities, and rates apply to the printed
// figure.
func (d *calculation) AmountOn(b rule.Basis, rate quantity.Unit) *worksheet.Step {
	per := perUnit(rate)
	b = d.engine.basis(d, b)
	weight := d.on(b)
	key := weightIn{weight, per}
	if known, ok := d.units[key]; ok {
		return known
	}
	step := d.inUnits("units."+weight.ID()+"."+per.String(), basisAmounts[b][per], weight, per)
	if d.units == nil {
		d.units = map[weightIn]*worksheet.Step{}
	}
	d.units[key] = step
	return step
}

// asWritten is the basis of the first three engines: the edition's own.
func asWritten(_ *calculation, b rule.Basis) rule.Basis { return b }

// basisOfFormat asks the format of the edition, as the fourth engine does.
func basisOfFormat(d *calculation, b rule.Basis) rule.Basis {
	return d.edition.Format.Basis(b, d.changed)
}

// perUnit returns bu, cwt or t from a rate's unit.
func perUnit(rate quantity.Unit) quantity.Unit {
	switch rate {
	case quantity.DollarsPerCwt, quantity.DollarsPerCwt.Per(quantity.Point):
		return quantity.Cwt
	case quantity.DollarsPerT, quantity.DollarsPerT.Per(quantity.Point):
		return quantity.Tonne
	}
	return quantity.Bushel
}

// inUnits records a weight in bushels, hundredweight or tonnes.
func (d *calculation) inUnits(id string, label message.Text, weight *worksheet.Step, unit quantity.Unit) *worksheet.Step {
	if unit == quantity.Bushel {
		return d.sheet.Work(id, label, worksheet.Over(weight, d.bushel()), d.places().Quantity, worksheet.Unsourced)
	}
	factor, err := quantity.MassFactor(weight.Value().Unit(), unit)
	if err != nil {
		panic("settle: " + err.Error())
	}
	return d.sheet.Work(id, label, worksheet.Times(weight, worksheet.Const(factor)), d.places().Quantity, worksheet.Unsourced)
}

// settledIn returns the settled weight in the unit of the price, reusing the line of a rate in that
// unit.
func (d *calculation) settledIn(unit quantity.Unit) *worksheet.Step {
	label := settledAmounts[unit]
	if known, ok := d.units[weightIn{d.left, unit}]; ok {
		return d.sheet.Work(LineQuantity, label, worksheet.Same(known), d.places().Quantity, worksheet.Unsourced)
	}
	return d.inUnits(LineQuantity, label, d.out.Settled, unit)
}

// bushel is the legal weight of a bushel, recorded once.
func (d *calculation) bushel() *worksheet.Step {
	if known, ok := d.sheet.Step("bushel"); ok {
		return known
	}
	return d.sheet.Rate("bushel", message.Words("Bushel weight"), d.edition.Units.Bushel, message.Words(d.edition.Units.BushelSource))
}

// workQuantities records the quantities paid for.
func workQuantities(d *calculation) {
	d.sheet.Section(message.Words("Quantity"))
	d.out.Settled = d.sheet.Work(LineSettled, message.Words("Weight settled"), worksheet.Same(d.left), quantity.Unrounded, worksheet.Unsourced)
	settle := d.edition.Units.Settle
	d.out.Quantity = d.settledIn(settle)
	switch {
	case settle == quantity.Bushel && d.dry.Value().Equal(d.left.Value()):
		d.out.Bushels = d.out.Quantity
	case d.edition.Units.HasBushels():
		d.out.Bushels = d.inUnits(LineBushels, message.Words("Dry-equivalent bushels"), d.dry, quantity.Bushel)
	}
}
