package shrink

import (
	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/rates/rule"
	"tenthpoint/internal/tomlfile"
	"tenthpoint/internal/worksheet"
)

// PerPoint is a fixed percent of weight for every point.
var PerPoint = &Method{
	ID:   "per-point",
	Said: "a fixed percent for every point",
	Read: func(t *tomlfile.Table, _ *rule.Head, r *Rule) {
		r.Rate = rule.ReadCell(t, "rate", quantity.Percent.Per(quantity.Point))
		rule.NotNegative(t, "rate", r.Rate)
		r.Step = rule.ReadStep(t)
		r.Percent = t.OptionalRounding("round_percent", quantity.Unrounded)
	},
	Lines: func(w *rule.Lines, r Rule) {
		w.Cell("rate", message.New("Rate"), r.Rate)
		w.Step(r.Step)
		if !r.Percent.IsExact() {
			w.Rounding("round_percent", message.New("Percent rounded to"), r.Percent)
		}
	},
	Work: func(w rule.Working, r Rule, wet *worksheet.Step) (worksheet.Expr, bool) {
		to := w.Rate("shrink.to", message.Words("Shrink-to"), r.To)
		points := w.Points("shrink.points", message.Words("Points to shrink"), to, r.Step)
		rate := w.Rate("shrink.rate", message.Words("Shrink per point"), r.Rate)
		percent := w.Sheet().Work("shrink.percent", message.Words("Shrink percent"), worksheet.Times(points, rate), r.Percent, r.Source)
		return r.takePercent(w, percent, wet)
	},
	Ticket: func(r Rule) message.Text {
		return message.New("fixed rate per point down to %s", r.To.Amount.Written())
	},
	Caution:   hiddenHandling,
	Explained: "a fixed percent of the weight for every point above the shrink-to. It is easy to work in the head. Whatever the rate takes beyond the water is handling by another name, so an edition with a rate well above the water factor is cautioned.",
}

// hiddenHandling warns how much the rate takes beyond the water at ten points, where that is more
// than any loss measured.
func hiddenHandling(r Rule) message.Text {
	ten := quantity.Int(10, quantity.Point)
	left := worksheet.Points(worksheet.Const(rule.Hundred), worksheet.Const(r.To.Amount))
	water := worksheet.Over(worksheet.Times(worksheet.Const(rule.Hundred), worksheet.Const(ten)), left)
	beyond := worksheet.Less(worksheet.Times(worksheet.Const(r.Rate.Amount), worksheet.Const(ten)), water)
	if !beyond.Value().More(rule.LargestLossMeasured) {
		return message.Text{}
	}
	shown := quantity.To("0.01", quantity.HalfUp).Apply(beyond.Value())
	return message.New("Shrink of %s takes %s of the weight beyond the water at 10 points: handling by another name, and more than the largest loss measured, %s.", r.Rate.Amount.Written(), shown.FixedString(2), rule.LargestLossMeasured)
}
