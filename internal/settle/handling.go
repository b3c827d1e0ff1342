package settle

import (
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/rates"
	"tenthpoint/internal/worksheet"
)

// takeHandling takes off the loss of dust, breath and spilled kernels, always
// on a line of its own.
func takeHandling(d *calculation) {
	rule := d.edition.Handling
	switch {
	case rule.Method == rates.NoHandling:
		noHandling(d, "this edition takes nothing for handling")
	case !d.isWet && !rule.Always:
		noHandling(d, "taken only above the shrink trigger")
	default:
		handlingLoss(d, rule)
	}
	nowDry(d)
}

// handlingLoss is the percent of the wet weight, so that it adds to the
// water shrink, or of the weight after water shrink, so that the two multiply.
func handlingLoss(d *calculation, rule rates.Handling) {
	rate := d.rate(HandlingRateLine, "Handling rate", rule.Rate)
	weight := d.left
	if rule.Method == rates.OfWet {
		weight = d.out.Wet
	}
	d.out.Handling = d.sheet.Work(LineHandling, "Handling loss", worksheet.PercentOf(rate, weight), rule.Rounding, d.edition.Source(rule.Row))
}

func noHandling(d *calculation, reason string) {
	rule := d.edition.Handling
	d.out.Handling = d.sheet.Skip(LineHandling, "Handling loss", d.edition.Units.Weight, rule.Rounding, reason, d.edition.Source(rule.Row))
}

// nowDry writes down the dry weight: clean grain less water and handling. What
// is left to be paid for is the same, unless a discount has already taken of
// the weight.
func nowDry(d *calculation) {
	const label = "Dry-equivalent weight"
	if d.docked {
		d.off("after.handling", "Weight after handling", d.out.Handling)
		d.dry = d.sheet.Work(LineDry, label, worksheet.Less(d.clean, d.out.Water, d.out.Handling), quantity.Unrounded, "")
	} else {
		rest := worksheet.Same(d.left)
		if !d.out.Handling.Value().IsZero() {
			rest = worksheet.Less(d.left, d.out.Handling)
		}
		d.dry = d.sheet.Work(LineDry, label, rest, quantity.Unrounded, "")
		d.left = d.dry
		d.somethingLeft(d.out.Handling)
	}
	d.out.Dry = d.dry
}
