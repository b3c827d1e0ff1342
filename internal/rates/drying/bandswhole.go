package drying

import (
	"slices"

	"tenthpoint/internal/message"
	"tenthpoint/internal/rates/rule"
	"tenthpoint/internal/tomlfile"
	"tenthpoint/internal/worksheet"
)

// BandsWhole charges all points at the rate of the moisture's band; a band may also have a flat
// rate with no points.
var BandsWhole = &Method{
	ID: "bands-whole",
	Said: "all points at the rate of the band the moisture lies in; " +
		"a rate without points is flat",
	Read: func(t *tomlfile.Table, h *rule.Head, r *Rule) {
		units := slices.Concat(rule.PerPointUnits(), rule.PerQuantityUnits())
		r.Bands = readBands(t, h, units, "the trigger", r.Trigger)
	},
	Lines: postBands,
	Work: func(w rule.Working, r Rule, _, points *worksheet.Step) (worksheet.Expr, bool) {
		band, ok := bandOf(w, r)
		if !ok {
			return worksheet.Expr{}, false
		}
		rate := w.Rate("drying.rate", message.Words("Drying rate"), band.Cell)
		w.Sheet().Note(rate, message.New("moisture %s is in the row %s", w.Moisture().Printed(), band))
		units := w.AmountOn(r.Basis, rate.Value().Unit())
		if slices.Contains(rule.PerQuantityUnits(), rate.Value().Unit()) {
			return worksheet.Times(rate, units), true
		}
		return worksheet.Times(rate, points, units), true
	},
	Ticket:    rule.Figures[Rule],
	Explained: "the band that holds the moisture names the rate of the whole load. A rate with points counts them all; a rate without points is flat. At the edge of a band the charge jumps.",
}
