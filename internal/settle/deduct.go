package settle

import (
	"fmt"
	"strings"

	"tenthpoint/internal/quantity"
	"tenthpoint/internal/rates"
	"tenthpoint/internal/working"
)

// apply turns a rule's figure into weight or money.
func (d *desk) apply(rule *rates.Discount, gives rates.Gives, rate *working.Step) {
	switch rule.Of {
	case rates.OfWeight:
		d.byWeight(rule, gives, d.perUnitOf(rule, rate))
	case rates.OfPrice:
		if d.facts.Price == nil {
			d.noDiscount(rule, fmt.Sprintf("price later: %s of the price will be due", rate.Printed()))
			return
		}
		d.byMoney(rule, gives, d.unitStep(rule, working.PercentOf(rate, d.price())))
	default:
		d.byMoney(rule, gives, d.perUnitOf(rule, rate))
	}
}

// perUnitOf rounds the figure of one unit where the edition rounds it before it
// meets the quantity.
func (d *desk) perUnitOf(rule *rates.Discount, rate *working.Step) *working.Step {
	if rule.Unit.IsExact() {
		return rate
	}
	return d.unitStep(rule, working.Same(rate))
}

func (d *desk) unitStep(rule *rates.Discount, figure working.Operand) *working.Step {
	return d.sheet.Work(DiscountLine(rule.ID)+".unit", rule.Label+" per unit", figure, rule.Unit, d.edition.Source(rule.Row))
}

func (d *desk) byMoney(rule *rates.Discount, gives rates.Gives, rate *working.Step) {
	units := d.amountOn(rule.Basis, rate.Value().Unit())
	step := d.sheet.Work(DiscountLine(rule.ID), rule.Label, working.Times(rate, units), rule.Rounding, d.edition.Source(rule.Row))
	d.add(rule, gives, step)
}

func (d *desk) byWeight(rule *rates.Discount, gives rates.Gives, percent *working.Step) {
	step := d.sheet.Work(DiscountLine(rule.ID), rule.Label, working.PercentOf(percent, d.on(rule.Basis)), rule.Rounding, d.edition.Source(rule.Row))
	d.add(rule, gives, step)
	d.docked = true
	id, label := DiscountLine(rule.ID)+".after", "Weight after "+strings.ToLower(rule.Label)
	if gives == rates.Pays {
		d.left = d.sheet.Work(id, label, working.Sum(d.left, step), quantity.Unrounded, "")
		return
	}
	d.off(id, label, step)
}

func (d *desk) noDiscount(rule *rates.Discount, reason string) {
	unit := quantity.Dollar
	if rule.Of == rates.OfWeight {
		unit = d.edition.Units.Weight
	}
	step := d.sheet.Skip(DiscountLine(rule.ID), rule.Label, unit, rule.Rounding, reason, d.edition.Source(rule.Row))
	d.add(rule, rates.Docks, step)
}

func (d *desk) add(rule *rates.Discount, gives rates.Gives, step *working.Step) {
	d.out.Deductions = append(d.out.Deductions, Deduction{Rule: rule, Gives: gives, Step: step})
}
