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
		d.out.Handling = d.sheet.Work(LineHandling, message.Words("Handling loss"), loss, r.Rounding, d.Source(r.Row))
	}
	d.engine.dry(d)
}

func noHandling(d *calculation, reason message.Text) {
	r := d.edition.Handling
	d.out.Handling = d.sheet.Skip(LineHandling, message.Words("Handling loss"), d.edition.Units.Weight, r.Rounding, reason, d.Source(r.Row))
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
