package settle

import (
	"fmt"
	"strings"

	"tenthpoint/internal/quantity"
	"tenthpoint/internal/rates"
	"tenthpoint/internal/worksheet"
)

// apply turns a rule's figure into weight or money.
func (d *calculation) apply(rule *rates.Discount, gives rates.Direction, rate *worksheet.Step) {
	switch rule.Of {
	case rates.OfWeight:
		d.byWeight(rule, gives, d.perUnitOf(rule, rate))
	case rates.OfPrice:
		if d.facts.Price == nil {
			d.noDiscount(rule, fmt.Sprintf("price later: %s of the price will be due", rate.Printed()))
			return
		}
		d.byMoney(rule, gives, d.unitStep(rule, worksheet.PercentOf(rate, d.price())))
	default:
		d.byMoney(rule, gives, d.perUnitOf(rule, rate))
	}
}

// perUnitOf rounds the figure of one unit where the edition rounds it before it
// meets the quantity.
func (d *calculation) perUnitOf(rule *rates.Discount, rate *worksheet.Step) *worksheet.Step {
	if rule.Unit.IsExact() {
		return rate
	}
	return d.unitStep(rule, worksheet.Same(rate))
}

func (d *calculation) unitStep(rule *rates.Discount, figure worksheet.Operand) *worksheet.Step {
	return d.sheet.Work(DiscountLine(rule.ID)+".unit", rule.Label+" per unit", figure, rule.Unit, d.edition.Source(rule.Row))
}

func (d *calculation) byMoney(rule *rates.Discount, gives rates.Direction, rate *worksheet.Step) {
	units := d.amountOn(rule.Basis, rate.Value().Unit())
	step := d.sheet.Work(DiscountLine(rule.ID), rule.Label, worksheet.Times(rate, units), rule.Rounding, d.edition.Source(rule.Row))
	d.add(rule, gives, step)
}

func (d *calculation) byWeight(rule *rates.Discount, gives rates.Direction, percent *worksheet.Step) {
	step := d.sheet.Work(DiscountLine(rule.ID), rule.Label, worksheet.PercentOf(percent, d.on(rule.Basis)), rule.Rounding, d.edition.Source(rule.Row))
	d.add(rule, gives, step)
	d.docked = true
	id, label := DiscountLine(rule.ID)+".after", "Weight after "+strings.ToLower(rule.Label)
	if gives == rates.Pays {
		d.left = d.sheet.Work(id, label, worksheet.Sum(d.left, step), quantity.Unrounded, "")
		return
	}
	d.off(id, label, step)
}

func (d *calculation) noDiscount(rule *rates.Discount, reason string) {
	unit := quantity.Dollar
	if rule.Of == rates.OfWeight {
		unit = d.edition.Units.Weight
	}
	step := d.sheet.Skip(DiscountLine(rule.ID), rule.Label, unit, rule.Rounding, reason, d.edition.Source(rule.Row))
	d.add(rule, rates.Docks, step)
}

func (d *calculation) add(rule *rates.Discount, gives rates.Direction, step *worksheet.Step) {
	d.out.Deductions = append(d.out.Deductions, Deduction{Rule: rule, Gives: gives, Step: step})
}
