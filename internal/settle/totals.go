package settle

import (
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/rates"
	"tenthpoint/internal/working"
)

// The second engine writes down what discounts and premiums come to, in weight
// and in money, for the whole load and for each owner. Each total has one sign:
// discounts are taken, premiums are paid, and quality is what discounts take in
// weight less what premiums give. All other steps are the first engine's.

// quantitiesTotaled are the quantities with the weight taken for quality.
func (d *desk) quantitiesTotaled() {
	d.sheet.Section("Quantity")
	unit := d.edition.Units.Weight
	docks, pays := d.sides(d.deductionSteps(), unit)
	d.out.Quality = d.total(LineQuality, "Off for quality", unit, docks, pays, "no discount takes weight")
	d.quantities()
}

// moneyTotaled is the money with discounts and premiums added up first.
func (d *desk) moneyTotaled() {
	d.sheet.Section("Money")
	d.out.Discounts, d.out.Premiums = d.adjust("", func(line string) string { return line }, d.deductionSteps())
	d.money()
}

// owedTotaled adds up one owner's own lines, discounts and premiums first.
func (d *desk) owedTotaled(i int, line *ShareLine) {
	own := func(id string) string { return OwnLine(i+1, id) }
	line.Discounts, line.Premiums = d.adjust(line.Share.Owner+": ", own, line.Deductions)
	d.owed(i, line)
}

// adjust adds up what steps that stand beside the settlement's deductions take
// and pay in money.
func (d *desk) adjust(owner string, id func(line string) string, steps []*working.Step) (discounts, premiums *working.Step) {
	docks, pays := d.sides(steps, quantity.Dollar)
	discounts = d.total(id(LineDiscounts), owner+"Discounts", quantity.Dollar, docks, nil, "no discount takes money")
	premiums = d.total(id(LinePremiums), owner+"Premiums", quantity.Dollar, pays, nil, "no premium pays money")
	return discounts, premiums
}

// deductionSteps are the whole load's deductions.
func (d *desk) deductionSteps() []*working.Step {
	steps := make([]*working.Step, len(d.out.Deductions))
	for i, one := range d.out.Deductions {
		steps[i] = one.Step
	}
	return steps
}

// sides parts the steps in a unit that stand beside the settlement's deductions
// into what is taken and what is paid. A step may be nil.
func (d *desk) sides(steps []*working.Step, unit quantity.Unit) (docks, pays []working.Operand) {
	for i, step := range steps {
		switch {
		case step == nil || step.Value().Unit() != unit || step.Value().IsZero():
		case d.out.Deductions[i].Gives == rates.Pays:
			pays = append(pays, step)
		default:
			docks = append(docks, step)
		}
	}
	return docks, pays
}

// total is what is in plus less what is in minus, or a line that says why there
// is neither.
func (d *desk) total(id, label string, unit quantity.Unit, plus, minus []working.Operand, none string) *working.Step {
	if len(plus)+len(minus) == 0 {
		return d.sheet.Skip(id, label, unit, quantity.Unrounded, none, "")
	}
	if len(plus) == 0 {
		plus = []working.Operand{working.Const(quantity.Zero(unit))}
	}
	var sum working.Operand = working.Sum(plus[0], plus[1:]...)
	if len(minus) > 0 {
		sum = working.Less(sum, minus...)
	}
	return d.sheet.Work(id, label, sum, quantity.Unrounded, "")
}
