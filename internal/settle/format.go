package settle

import (
	"tenthpoint/internal/message"
	"tenthpoint/internal/rates/rule"
	"tenthpoint/internal/worksheet"
)

// The first three engines take every basis as the edition writes it, and an accepted load at the
// figure of its own row.

func asWritten(_ *calculation, b rule.Basis) rule.Basis { return b }

func asRefused(_ discounting, refused rule.Band) rule.Band { return refused }

// The fourth engine asks the format of the edition.

func basisOfFormat(d *calculation, b rule.Basis) rule.Basis {
	return d.edition.Format.Basis(b, d.changed)
}

func acceptedByFormat(r discounting, refused rule.Band) rule.Band {
	return r.edition.Format.Accepted(r.rule, refused)
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
