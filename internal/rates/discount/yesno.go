package discount

import (
	"tenthpoint/internal/message"
	"tenthpoint/internal/rates/rule"
	"tenthpoint/internal/tomlfile"
	"tenthpoint/internal/worksheet"
)

// YesNo applies when the factor is present.
var YesNo = &Form{
	ID:   "yes-no",
	Said: "taken or paid where the factor is present",
	Read: func(t *tomlfile.Table, h *rule.Head, r *Rule) {
		if !r.Factor.YesNo {
			t.AddProblem("form", message.New("%s is measured in %s, it is not present or absent", r.Factor.Name, r.Factor.Unit), message.New("Use the form table or per-unit."))
			t.IgnoreRest()
			return
		}
		r.Refuse, r.Cell, r.Direction = readAnswer(t, h, r.Of)
	},
	Lines: func(w *rule.Lines, r Rule) {
		w.TextAt(r.key(), "present", message.New("Present"), r.brings(r.Refuse, r.Cell, r.Direction))
	},
	Work:      workYesNo,
	Ticket:    rule.Figures[Rule],
	Explained: "for what is there or is not, such as an odor. Present brings the figure, or turns the load away; absent brings nothing.",
}

func workYesNo(w Working, r *Rule, found *worksheet.Step) {
	if found.Value().Sign() == 0 {
		w.None(message.Words("not present"))
		return
	}
	where := message.New("present")
	if r.Refuse {
		if w.TurnedAway(message.New("is present")) {
			return
		}
		where = Accepted(where)
	}
	if r.Cell.Amount.IsZero() {
		w.None(message.New("%s, which brings no discount", where))
		return
	}
	rate := w.Rate(RateLine(r.ID), r.Labels.rate, r.Cell)
	w.Sheet().Note(rate, where)
	w.Apply(r.Direction, rate)
}
