// Package handling is the rule for invisible loss: dust, respiration, spilled
// kernels. A method is a file: none, wet, dried.
package handling

import (
	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/rates/rule"
	"tenthpoint/internal/tomlfile"
	"tenthpoint/internal/worksheet"
)

// Method is a way to take the loss.
type Method = rule.Method[Rule, Work]

// Work returns the loss before rounding: rate is a percent, wet the weight that water shrink was
// taken on, left the weight left of the load.
type Work func(rate, wet, left *worksheet.Step) worksheet.Expr

// Methods are all there are.
var Methods = []*Method{None, OfWet, OfDried}

// Rule is an edition's rule for handling.
type Rule struct {
	Method   *Method
	Rate     rule.Cell
	Always   bool // taken also when no water shrink is
	Rounding quantity.Rounding
	Source   message.Text
}

// Read reads the table of an edition; shrinks says whether that takes off water. It reports
// mistakes to t; the rule then has no method.
func Read(t *tomlfile.Table, h *rule.Head, shrinks bool) Rule {
	r := Rule{Source: t.Source(""), Rounding: rule.LineRounding(t, h.Rounding.Weight)}
	r.Method = rule.Choose(t, "method", Methods)
	if r.Method == nil {
		t.IgnoreRest()
		return r
	}
	r.Method.Read(t, h, &r)
	if r.Method.Nothing.IsZero() && !shrinks && !r.Always && t.Has("always") {
		t.AddProblem("always", message.New("handling is taken only when water is shrunk, and this edition shrinks nothing"), message.New("Write always = true, or method = \"none\"."))
	}
	return r
}

// Post posts the rule line by line.
func (r Rule) Post(w *rule.Lines) {
	w.Under("handling", message.New("Handling loss"))
	w.Text("method", message.New("Method"), message.Words(r.Method.Said))
	r.Method.Lines(w, r)
	w.Rounded(r.Rounding, "weight")
}

// readRate reads the percent, and when it is taken.
func readRate(t *tomlfile.Table, _ *rule.Head, r *Rule) {
	r.Rate, r.Always = rule.ReadPercent(t, "rate"), t.Bool("always")
}

func postRate(w *rule.Lines, r Rule) {
	w.Cell("rate", message.New("Rate"), r.Rate)
	taken := message.New("only above the shrink trigger")
	if r.Always {
		taken = message.New("from every load")
	}
	w.Text("always", message.New("Taken"), taken)
}

func largeRate(r Rule) message.Text {
	if !r.Rate.Amount.More(rule.LargestLossMeasured) {
		return message.Text{}
	}
	return message.New("Handling of %s is more than the largest loss measured, %s of the wet weight.", r.Rate.Amount.Written(), rule.LargestLossMeasured)
}
