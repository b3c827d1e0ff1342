// Package drying works out the drying charge. Each method has a file: none, per-point, bands-each,
// bands-whole.
package drying

import (
	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/rates/rule"
	"tenthpoint/internal/tomlfile"
	"tenthpoint/internal/worksheet"
)

// Method is a way to charge.
type Method = rule.Method[Rule, Work]

// Work is the charge for a load above the trigger, before minimum and rounding;
// false when the load was refused. Points are those counted above to.
type Work func(w rule.Working, r Rule, to, points *worksheet.Step) (worksheet.Expr, bool)

// Methods are all there are.
var Methods = []*Method{None, PerPoint, BandsEach, BandsWhole}

// Rule is an edition's rule for the drying charge.
type Rule struct {
	Method   *Method
	Basis    rule.Basis
	Trigger  rule.Cell // moisture above which drying is charged
	To       rule.Cell // moisture the points are counted down to
	Rate     rule.Cell // $/bu/pt, $/cwt/pt or $/t/pt
	Step     rule.Step
	Bands    []rule.Band
	Minimum  rule.Cell // least charge for a load that is charged at all
	Rounding quantity.Rounding
	Source   message.Text
}

// Read reads the table of an edition. It reports mistakes to t; the rule then has no method.
func Read(t *tomlfile.Table, h *rule.Head) Rule {
	r := Rule{Source: t.Source(""), Rounding: rule.LineRounding(t, h.Rounding.Money)}
	r.Method = rule.Choose(t, "method", Methods)
	if r.Method == nil {
		t.IgnoreRest()
		return r
	}
	if r.Method.Nothing.IsZero() {
		readMoistures(t, &r)
	}
	r.Method.Read(t, h, &r)
	return r
}

// readMoistures reads the keys common to all methods that charge.
func readMoistures(t *tomlfile.Table, r *Rule) {
	r.Basis = rule.ReadBasis(t)
	r.Trigger, r.To = rule.ReadMoisture(t, "trigger"), rule.ReadMoisture(t, "to")
	if rule.Less(r.Trigger, r.To) {
		t.AddProblem("to", message.New("drying counts points down to %s, above its trigger %s", r.To.Amount.Written(), r.Trigger.Amount.Written()), message.New("Bring it down to the trigger or below it."))
	}
	r.Step = rule.ReadStep(t)
	r.Minimum = rule.ReadOptionalCell(t, "minimum", quantity.Dollar)
	rule.NotNegative(t, "minimum", r.Minimum)
}

// readRate reads a rate that is not below zero.
func readRate(t *tomlfile.Table, h *rule.Head, units []quantity.Unit) rule.Cell {
	c := rule.ReadCell(t, "rate", units...)
	rule.NotNegative(t, "rate", c)
	h.NeedsBushel(t, "rate", c)
	return c
}

// Post posts the rule line by line.
func (r Rule) Post(w *rule.Lines) {
	w.Under("drying", message.New("Drying charge"))
	w.Text("method", message.New("Method"), message.Words(r.Method.Said))
	w.Basis(message.New("Charged on"), r.Basis)
	w.Cell("trigger", message.New("Charged above"), r.Trigger)
	w.Cell("to", message.New("Points are counted down to"), r.To)
	r.Method.Lines(w, r)
	w.Cell("minimum", message.New("Least charge"), r.Minimum)
	w.Rounded(r.Rounding, "money")
}
