package shrink

import (
	"tenthpoint/internal/message"
	"tenthpoint/internal/rates/rule"
	"tenthpoint/internal/worksheet"
)

// Water is the formula W x (Mi - Mf) / (100 - Mf): the dry matter stays.
var Water = &Method{
	ID:   "water",
	Said: "water formula, weight × (moisture − shrink-to) ÷ (100 − shrink-to)",
	Read: rule.NoKeys[Rule], Lines: rule.NoLines[Rule],
	Work: func(w rule.Working, r Rule, wet *worksheet.Step) (worksheet.Expr, bool) {
		to := w.Rate("shrink.to", message.Words("Shrink-to"), r.To)
		return Lost(wet, w.Moisture(), to), true
	},
	Ticket: func(r Rule) message.Text {
		return message.New("same dry matter at %s", r.To.Amount.Written())
	},
	Explained: "the water formula. What comes off is the water between the moisture found and the shrink-to, and all of the dry matter stays. Any loss beside the water is taken by the handling line, where everyone can see it.",
}

// Lost is the weight of water between two moistures; below zero when the first
// is the drier.
func Lost(weight, from, to *worksheet.Step) worksheet.Expr {
	rest := worksheet.Points(worksheet.Const(rule.Hundred), to)
	return worksheet.Over(worksheet.Times(weight, worksheet.Points(from, to)), rest)
}
