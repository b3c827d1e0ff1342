package settle

import (
	"strings"

	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/rates/discount"
	"tenthpoint/internal/rates/rule"
	"tenthpoint/internal/worksheet"
)

// Apply turns a rule's figure into weight or money.
func (r discounting) Apply(gives rule.Direction, rate *worksheet.Step) {
	switch r.rule.Of {
	case discount.OfWeight:
		r.byWeight(gives, r.perUnitOf(rate))
	case discount.OfPrice:
		r.engine.ofPrice(r, gives, rate)
	default:
		r.byMoney(gives, r.perUnitOf(rate))
	}
}

// ofOnePrice takes a percent of the price of the load.
func ofOnePrice(r discounting, gives rule.Direction, rate *worksheet.Step) {
	if r.facts.Price == nil {
		r.None(message.New("price later: %s of the price will be due", rate.Printed()))
		return
	}
	r.byMoney(gives, r.unitStep(worksheet.PercentOf(rate, r.price())))
}

// perUnitOf rounds the figure of one unit where the edition rounds it before it
// meets the quantity.
func (r discounting) perUnitOf(rate *worksheet.Step) *worksheet.Step {
	if r.rule.UnitRounding.IsExact() {
		return rate
	}
	return r.unitStep(worksheet.Same(rate))
}

func (r discounting) unitStep(figure worksheet.Operand) *worksheet.Step {
	return r.sheet.Work(DiscountLine(r.rule.ID)+".unit", r.rule.Labels.Unit, figure, r.rule.UnitRounding, r.rule.Source)
}

func (r discounting) byMoney(gives rule.Direction, rate *worksheet.Step) {
	units := r.AmountOn(r.rule.Basis, rate.Value().Unit())
	step := r.sheet.Work(DiscountLine(r.rule.ID), r.rule.Label, worksheet.Times(rate, units), r.rule.Rounding, r.rule.Source)
	r.add(gives, step)
}

func (r discounting) byWeight(gives rule.Direction, percent *worksheet.Step) {
	step := r.sheet.Work(DiscountLine(r.rule.ID), r.rule.Label, worksheet.PercentOf(percent, r.on(r.engine.basis(r.calculation, r.rule.Basis))), r.rule.Rounding, r.rule.Source)
	r.add(gives, step)
	r.docked = true
	r.changed = r.changed || !step.Value().IsZero()
	id, label := DiscountLine(r.rule.ID)+".after", message.New("Weight after %s", strings.ToLower(r.rule.Label.String()))
	if gives == rule.Pays {
		r.left = r.sheet.Work(id, label, worksheet.Sum(r.left, step), quantity.Unrounded, worksheet.Unsourced)
		return
	}
	r.off(id, label, step)
}

// None records why nothing is taken or paid.
func (r discounting) None(reason message.Text) {
	unit := quantity.Dollar
	if r.rule.Of == discount.OfWeight {
		unit = r.edition.Units.Weight
	}
	step := r.sheet.Skip(DiscountLine(r.rule.ID), r.rule.Label, unit, r.rule.Rounding, reason, r.rule.Source)
	r.add(rule.Docks, step)
}

func (r discounting) add(gives rule.Direction, step *worksheet.Step) {
	r.out.Deductions = append(r.out.Deductions, Deduction{Rule: r.rule, Direction: gives, Step: step})
}
