package settle

import (
	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/worksheet"
)

// takeHandling takes off the loss of dust, breath and spilled kernels by the
// edition's method, always on a line of its own.
func takeHandling(d *calculation) {
	d.beforeHandling = d.left
	r := d.edition.Handling
	switch {
	case !r.Method.Nothing.IsZero():
		noHandling(d, r.Method.Nothing)
	case !d.isWet && !r.Always:
		noHandling(d, message.New("taken only above the shrink trigger"))
	default:
		rate := d.Rate(HandlingRateLine, message.Words("Handling rate"), r.Rate)
		loss := r.Method.Work(rate, d.out.Wet, d.left)
		d.out.Handling = d.sheet.Work(LineHandling, message.Words("Handling loss"), loss, r.Rounding, r.Source)
	}
	d.engine.dry(d)
}

func noHandling(d *calculation, reason message.Text) {
	r := d.edition.Handling
	d.out.Handling = d.sheet.Skip(LineHandling, message.Words("Handling loss"), d.edition.Units.Weight, r.Rounding, reason, r.Source)
}

// nowDry records the dry weight: clean grain less water and handling. The weight to be paid for is
// the same, unless a discount has already taken some of it.
func nowDry(d *calculation) {
	label := message.Words("Dry-equivalent weight")
	if d.docked {
		d.off("after.handling", message.Words("Weight after handling"), d.out.Handling)
		d.dry = d.sheet.Work(LineDry, label, worksheet.Less(d.clean, d.out.Water, d.out.Handling), quantity.Unrounded, worksheet.Unsourced)
	} else {
		rest := worksheet.Same(d.left)
		if !d.out.Handling.Value().IsZero() {
			rest = worksheet.Less(d.left, d.out.Handling)
		}
		d.dry = d.sheet.Work(LineDry, label, rest, quantity.Unrounded, worksheet.Unsourced)
		d.left = d.dry
		d.somethingLeft(d.out.Handling)
	}
	d.out.Dry = d.dry
}

// dryOfClean records the dry weight. Once a discount has been taken of the weight, an edition of the
// first format has it as the engines before this one did, clean less the water and the handling of
// what was left, which is the dry weight of no grain; one of the second has the same parts of all
// the clean grain that water and handling left of the rest:
//
//	clean x (before water - water) / before water x (before handling - handling) / before handling
func dryOfClean(d *calculation) {
	if !d.changed || d.edition.Format.Number < 2 {
		nowDry(d)
	} else {
		d.off("after.handling", message.Words("Weight after handling"), d.out.Handling)
		d.dry = d.sheet.Work(LineDry, message.Words("Dry-equivalent weight"), d.partLeft(), d.places().Weight, worksheet.Unsourced)
		d.out.Dry = d.dry
	}
	if d.dry.Value().Sign() <= 0 {
		d.refuse(Problem{Field: "edition", Sentence: message.New("The dry-equivalent weight would be %s. Check the sample, and what edition %s takes of the weight.", d.dry.Value(), d.edition.ID)})
	}
}

// partLeft is the clean grain less its water and handling.
func (d *calculation) partLeft() worksheet.Operand {
	factors, divisors := []worksheet.Operand{}, []worksheet.Operand{}
	for _, loss := range []struct{ before, taken *worksheet.Step }{{d.beforeWater, d.out.Water}, {d.beforeHandling, d.out.Handling}} {
		if !loss.taken.Value().IsZero() {
			factors = append(factors, worksheet.Less(loss.before, loss.taken))
			divisors = append(divisors, loss.before)
		}
	}
	switch len(factors) {
	case 0:
		return worksheet.Same(d.clean)
	case 1:
		return worksheet.Over(worksheet.Times(d.clean, factors[0]), divisors[0])
	}
	return worksheet.Over(worksheet.Times(d.clean, factors...), worksheet.Times(divisors[0], divisors[1]))
}
