package settle

import (
	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/rates/rule"
	"tenthpoint/internal/worksheet"
)

// price is the price as a step, recorded on first use.
func (d *calculation) price() *worksheet.Step {
	if d.out.Price == nil {
		p := d.facts.Price
		d.out.Price = d.sheet.Given(LinePrice, "Price", p.Amount, quantity.Unrounded, p.Source)
	}
	return d.out.Price
}

// workMoney adds up charges and, when there is a price, what is payable.
func workMoney(d *calculation) {
	d.sheet.Section("Money")
	d.out.Charges = d.sheet.Work(LineCharges, "Charges", chargeSum(d), quantity.Unrounded, "")
	if d.facts.Price == nil {
		later := func(id, label string) *worksheet.Step {
			return d.sheet.Skip(id, label, quantity.Dollar, d.places().Money, "price later", "")
		}
		d.out.Value, d.out.Payable = later(LineValue, "Value"), later(LinePayable, "Payable")
		return
	}
	d.out.Value = d.sheet.Work(LineValue, "Value", worksheet.Times(d.price(), d.out.Quantity), d.places().Money, "")
	d.out.Payable = d.sheet.Work(LinePayable, "Payable", worksheet.Less(d.out.Value, d.out.Charges), quantity.Unrounded, "")
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
		if one.Gives == rule.Pays {
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
