package settle

import (
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/rates"
	"tenthpoint/internal/working"
)

// handling takes off the loss of dust, breath and spilled kernels, always on a
// line of its own.
func (d *desk) handling() {
	rule := d.edition.Handling
	switch {
	case rule.Method == rates.NoHandling:
		d.noHandling("this edition takes nothing for handling")
	case !d.isWet && !rule.Always:
		d.noHandling("taken only above the shrink trigger")
	default:
		d.takeHandling(rule)
	}
	d.nowDry()
}

// takeHandling takes the percent of the wet weight, so that it adds to the
// water shrink, or of the weight after water shrink, so that the two multiply.
func (d *desk) takeHandling(rule rates.Handling) {
	rate := d.rate(HandlingRateLine, "Handling rate", rule.Rate)
	weight := d.left
	if rule.Method == rates.OfWet {
		weight = d.out.Wet
	}
	d.out.Handling = d.sheet.Work(LineHandling, "Handling loss", working.PercentOf(rate, weight), rule.Rounding, d.edition.Source(rule.Row))
}

func (d *desk) noHandling(reason string) {
	rule := d.edition.Handling
	d.out.Handling = d.sheet.Skip(LineHandling, "Handling loss", d.edition.Units.Weight, rule.Rounding, reason, d.edition.Source(rule.Row))
}

// nowDry writes down the dry weight: clean grain less water and handling. What
// is left to be paid for is the same, unless a discount has already taken of
// the weight.
func (d *desk) nowDry() {
	const label = "Dry-equivalent weight"
	if d.docked {
		d.off("after.handling", "Weight after handling", d.out.Handling)
		d.dry = d.sheet.Work(LineDry, label, working.Less(d.clean, d.out.Water, d.out.Handling), quantity.Unrounded, "")
	} else {
		rest := working.Same(d.left)
		if !d.out.Handling.Value().IsZero() {
			rest = working.Less(d.left, d.out.Handling)
		}
		d.dry = d.sheet.Work(LineDry, label, rest, quantity.Unrounded, "")
		d.left = d.dry
		d.somethingLeft(d.out.Handling)
	}
	d.out.Dry = d.dry
}
