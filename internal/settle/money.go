package settle

import (
	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/rates/rule"
	"tenthpoint/internal/title"
	"tenthpoint/internal/worksheet"
)

// price is the price as a step, recorded on first use.
func (d *calculation) price() *worksheet.Step {
	if d.out.Price == nil {
		p := d.facts.Price
		d.out.Price = d.sheet.Given(LinePrice, message.Words("Price"), p.Amount, quantity.Unrounded, p.Source)
	}
	return d.out.Price
}

// workMoney adds up charges and, when there is a price, what is payable.
func workMoney(d *calculation) {
	d.sheet.Section(message.Words("Money"))
	d.out.Charges = d.sheet.Work(LineCharges, message.Words("Charges"), chargeSum(d), quantity.Unrounded, worksheet.Unsourced)
	if d.facts.Price == nil {
		later := func(id string, label message.Text) *worksheet.Step {
			return d.sheet.Skip(id, label, quantity.Dollar, d.places().Money, title.Later, worksheet.Unsourced)
		}
		d.out.Value, d.out.Payable = later(LineValue, message.Words("Value")), later(LinePayable, message.Words("Payable"))
		return
	}
	d.out.Value = d.sheet.Work(LineValue, message.Words("Value"), worksheet.Times(d.price(), d.out.Quantity), d.places().Money, worksheet.Unsourced)
	d.out.Payable = d.sheet.Work(LinePayable, message.Words("Payable"), worksheet.Less(d.out.Value, d.out.Charges), quantity.Unrounded, worksheet.Unsourced)
	if d.out.Payable.Value().Sign() < 0 {
		d.refuse(Problem{Field: "edition", Sentence: message.New("The charges, %s, are more than the load is worth, %s. Check the price, the sample and edition %s.", d.out.Charges.Value(), d.out.Value.Value(), d.edition.ID)})
	}
}

// chargeSum is drying and money discounts less money premiums.
func chargeSum(d *calculation) worksheet.Operand {
	var docks, pays []worksheet.Operand
	for _, one := range d.out.Deductions {
		if one.Step.Value().Unit() != quantity.Dollar || one.Step.Value().IsZero() {
			continue
		}
		if one.Direction == rule.Pays {
			pays = append(pays, one.Step)
		} else {
			docks = append(docks, one.Step)
		}
	}
	sum := worksheet.Sum(d.out.Drying, docks...)
	if len(pays) == 0 {
		return sum
	}
	return worksheet.Less(sum, pays...)
}

// The second engine writes down what discounts and premiums come to, in weight
// and in money, for the whole load and for each owner. Each total has one sign:
// discounts are taken, premiums are paid, and quality is what discounts take in
// weight less what premiums give. All other steps are the first engine's.

// workQuantitiesTotaled are the quantities with the weight taken for quality.
func workQuantitiesTotaled(d *calculation) {
	d.sheet.Section(message.Words("Quantity"))
	unit := d.edition.Units.Weight
	docks, pays := sides(d, deductionSteps(d), unit)
	d.out.Quality = totalLine(d, LineQuality, message.Words("Off for quality"), unit, docks, pays, message.Words("no discount takes weight"))
	workQuantities(d)
}

// workMoneyTotaled is the money with discounts and premiums added up first.
func workMoneyTotaled(d *calculation) {
	d.sheet.Section(message.Words("Money"))
	d.out.Discounts, d.out.Premiums = adjust(d, holder{}, deductionSteps(d))
	workMoney(d)
}

// addOwnerTotaled adds up one owner's own lines, discounts and premiums first.
func addOwnerTotaled(d *calculation, i int, line *ShareLine) {
	line.Discounts, line.Premiums = adjust(d, d.holderOf(i), line.Deductions)
	addOwner(d, i, line)
}

// adjust adds up what steps that stand beside the settlement's deductions take
// and pay in money.
func adjust(d *calculation, of holder, steps []*worksheet.Step) (discounts, premiums *worksheet.Step) {
	docks, pays := sides(d, steps, quantity.Dollar)
	discounts = totalLine(d, of.id(LineDiscounts), of.label(message.Words("Discounts")), quantity.Dollar, docks, nil, message.Words("no discount takes money"))
	premiums = totalLine(d, of.id(LinePremiums), of.label(message.Words("Premiums")), quantity.Dollar, pays, nil, message.Words("no premium pays money"))
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

// sides parts the steps in a unit that stand beside the settlement's deductions
// into what is taken and what is paid. A step may be nil.
func sides(d *calculation, steps []*worksheet.Step, unit quantity.Unit) (docks, pays []worksheet.Operand) {
	for i, step := range steps {
		switch {
		case step == nil || step.Value().Unit() != unit || step.Value().IsZero():
		case d.out.Deductions[i].Direction == rule.Pays:
			pays = append(pays, step)
		default:
			docks = append(docks, step)
		}
	}
	return docks, pays
}

// totalLine is the sum of plus less the sum of minus, or a line that says why
// there is neither.
func totalLine(d *calculation, id string, label message.Text, unit quantity.Unit, plus, minus []worksheet.Operand, none message.Text) *worksheet.Step {
	if len(plus)+len(minus) == 0 {
		return d.sheet.Skip(id, label, unit, quantity.Unrounded, none, worksheet.Unsourced)
	}
	if len(plus) == 0 {
		plus = []worksheet.Operand{worksheet.Const(quantity.Zero(unit))}
	}
	var sum worksheet.Operand = worksheet.Sum(plus[0], plus[1:]...)
	if len(minus) > 0 {
		sum = worksheet.Less(sum, minus...)
	}
	return d.sheet.Work(id, label, sum, quantity.Unrounded, worksheet.Unsourced)
}
