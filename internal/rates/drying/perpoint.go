package drying

import (
	"tenthpoint/internal/message"
	"tenthpoint/internal/rates/rule"
	"tenthpoint/internal/tomlfile"
	"tenthpoint/internal/worksheet"
)

// PerPoint is a rate per point per bushel, hundredweight or tonne.
var PerPoint = &Method{
	ID:   "per-point",
	Said: "one rate for every point",
	Read: func(t *tomlfile.Table, h *rule.Head, r *Rule) { r.Rate = readRate(t, h, rule.PerPointUnits()) },
	Lines: func(w *rule.Lines, r Rule) {
		w.Cell("rate", message.New("Rate"), r.Rate)
		w.Step(r.Step)
	},
	Work: func(w rule.Working, r Rule, _, points *worksheet.Step) (worksheet.Expr, bool) {
		rate := w.Rate("drying.rate", message.Words("Drying rate"), r.Rate)
		return worksheet.Times(rate, points, w.AmountOn(r.Basis, rate.Value().Unit())), true
	},
	Ticket:    rule.Figures[Rule],
	Explained: "one rate for every point, on every bushel, hundredweight, or tonne.",
}
