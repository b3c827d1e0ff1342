package settle

import (
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/rates"
	"tenthpoint/internal/working"
)

// The second engine writes down what discounts and premiums come to, in weight
// and in money, for the whole load and for each owner. Each total has one sign:
// discounts are taken, premiums are paid, and quality is what discounts take in
// weight less what premiums give.

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
	t := d.adjust("", func(line string) string { return line }, d.deductionSteps())
	d.out.Discounts, d.out.Premiums = t.discounts, t.premiums
	d.out.Charges = d.sheet.Work(LineCharges, "Charges", t.charges(d.out.Drying), quantity.Unrounded, "")
	d.payable()
}

// owedTotaled adds up one owner's own lines, discounts and premiums first.
func (d *desk) owedTotaled(i int, line *ShareLine) {
	owner := line.Share.Owner + ": "
	t := d.adjust(owner, func(line string) string { return OwnLine(i+1, line) }, line.Deductions)
	line.Discounts, line.Premiums = t.discounts, t.premiums
	line.Charges = d.sheet.Work(OwnLine(i+1, LineCharges), owner+"Charges", t.charges(line.Drying), quantity.Unrounded, "")
	d.ownPayable(i, line)
}

// adjusted are the totals of discounts and premiums in money.
type adjusted struct{ discounts, premiums *working.Step }

// adjust adds up steps that stand beside the settlement's deductions.
func (d *desk) adjust(owner string, id func(line string) string, steps []*working.Step) adjusted {
	docks, pays := d.sides(steps, quantity.Dollar)
	return adjusted{
		discounts: d.total(id(LineDiscounts), owner+"Discounts", quantity.Dollar, docks, nil, "no discount takes money"),
		premiums:  d.total(id(LinePremiums), owner+"Premiums", quantity.Dollar, pays, nil, "no premium pays money"),
	}
}

// charges are drying and discounts less premiums; a total of nothing is left out
// of the formula.
func (t adjusted) charges(drying *working.Step) working.Operand {
	var docks, pays []working.Operand
	if !t.discounts.Value().IsZero() {
		docks = append(docks, t.discounts)
	}
	if !t.premiums.Value().IsZero() {
		pays = append(pays, t.premiums)
	}
	sum := working.Sum(drying, docks...)
	if len(pays) == 0 {
		return sum
	}
	return working.Less(sum, pays...)
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
