package settle

import (
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/rates/rule"
	"tenthpoint/internal/worksheet"
)

// The second engine records the totals of discounts and premiums, in weight and in money, for the
// whole load and for each owner. Each total has one sign: discounts are taken, premiums are paid,
// and quality is discounts in weight less premiums in weight. All other steps are the first
// engine's.

// workQuantitiesTotaled are the quantities with the weight taken for quality.
func workQuantitiesTotaled(d *calculation) {
	d.sheet.Section("Quantity")
	unit := d.edition.Units.Weight
	docks, pays := sides(d, deductionSteps(d), unit)
	d.out.Quality = totalLine(d, LineQuality, "Off for quality", unit, docks, pays, "no discount takes weight")
	workQuantities(d)
}

// workMoneyTotaled is the money with discounts and premiums added up first.
func workMoneyTotaled(d *calculation) {
	d.sheet.Section("Money")
	d.out.Discounts, d.out.Premiums = adjust(d, "", func(line string) string { return line }, deductionSteps(d))
	workMoney(d)
}

// addOwnerTotaled adds up one owner's own lines, discounts and premiums first.
func addOwnerTotaled(d *calculation, i int, line *ShareLine) {
	own := func(id string) string { return OwnLine(i+1, id) }
	line.Discounts, line.Premiums = adjust(d, line.Share.Owner+": ", own, line.Deductions)
	addOwner(d, i, line)
}

// adjust totals the discounts and premiums in money of steps parallel to the settlement's
// deductions.
func adjust(d *calculation, owner string, id func(line string) string, steps []*worksheet.Step) (discounts, premiums *worksheet.Step) {
	docks, pays := sides(d, steps, quantity.Dollar)
	discounts = totalLine(d, id(LineDiscounts), owner+"Discounts", quantity.Dollar, docks, nil, "no discount takes money")
	premiums = totalLine(d, id(LinePremiums), owner+"Premiums", quantity.Dollar, pays, nil, "no premium pays money")
	return discounts, premiums
}

// deductionSteps are the whole load's deductions.
func deductionSteps(d *calculation) []*worksheet.Step {
	steps := make([]*worksheet.Step, len(d.out.Deductions))
	for i, one := range d.out.Deductions {
		steps[i] = one.Step
	}
	return steps
}

// sides splits the steps in a unit, parallel to the settlement's deductions, into those taken and
// those paid. A step may be nil.
func sides(d *calculation, steps []*worksheet.Step, unit quantity.Unit) (docks, pays []worksheet.Operand) {
	for i, step := range steps {
		switch {
		case step == nil || step.Value().Unit() != unit || step.Value().IsZero():
		case d.out.Deductions[i].Gives == rule.Pays:
			pays = append(pays, step)
		default:
			docks = append(docks, step)
		}
	}
	return docks, pays
}

// totalLine returns the sum of plus less the sum of minus, or a line that says why both are empty.
func totalLine(d *calculation, id, label string, unit quantity.Unit, plus, minus []worksheet.Operand, none string) *worksheet.Step {
	if len(plus)+len(minus) == 0 {
		return d.sheet.Skip(id, label, unit, quantity.Unrounded, none, "")
	}
	if len(plus) == 0 {
		plus = []worksheet.Operand{worksheet.Const(quantity.Zero(unit))}
	}
	var sum worksheet.Operand = worksheet.Sum(plus[0], plus[1:]...)
	if len(minus) > 0 {
		sum = worksheet.Less(sum, minus...)
	}
	return d.sheet.Work(id, label, sum, quantity.Unrounded, "")
}
