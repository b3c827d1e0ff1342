// Package shrink works out the shrink of wet grain to its dry weight. Each method has a file:
// water, per-point, table, none.
package shrink

import (
	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/rates/rule"
	"tenthpoint/internal/tomlfile"
	"tenthpoint/internal/worksheet"
)

// Method is a way to shrink.
type Method = rule.Method[Rule, Work]

// Work returns the shrink of a wet weight that is above the trigger, before rounding; false when
// the load was refused.
type Work func(w rule.Working, r Rule, wet *worksheet.Step) (worksheet.Expr, bool)

// Methods are all there are.
var Methods = []*Method{Water, PerPoint, Table, None}

// Rule is an edition's rule for water.
type Rule struct {
	Method  *Method
	Basis   rule.Basis
	Trigger rule.Cell // moisture above which anything is taken off
	To      rule.Cell // moisture the weight is brought down to
	// Floor is the lowest shrink-to the edition may have; not given means no
	// floor. FloorGrain names the grain of the Canadian moisture classes that
	// it follows from, if any.
	Floor      rule.Cell
	FloorGrain string
	// Rate is percent of weight per point, for PerPoint.
	Rate rule.Cell
	// Step is the part of a point that counts, for PerPoint.
	Step rule.Step
	Rows []rule.Band // of Table
	// Percent rounds the percent before it meets the weight.
	Percent quantity.Rounding
	// Credit is the credit for over-dry grain: "none", or "dry-matter" for the weight the same dry
	// matter would have at the shrink-to moisture.
	Credit string
	// CreditFloor is the driest moisture credited; below it counts as it.
	CreditFloor rule.Cell
	Rounding    quantity.Rounding
	Source      message.Text
}

// Read reads the table of an edition. It reports mistakes to t; the rule then has no method.
func Read(t *tomlfile.Table, h *rule.Head) Rule {
	r := Rule{Source: t.Source(""), Credit: "none", Rounding: rule.LineRounding(t, h.Rounding.Weight)}
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

// Post posts the rule line by line.
func (r Rule) Post(w *rule.Lines) {
	w.Under("shrink", message.New("Shrink"))
	w.Text("method", message.New("Method"), message.Words(r.Method.Said))
	w.Basis(message.New("Taken on"), r.Basis)
	w.Cell("trigger", message.New("Taken above"), r.Trigger)
	w.Cell("to", message.New("Shrink-to"), r.To)
	w.Cell("floor", message.New("Lowest shrink-to allowed"), r.Floor)
	w.Name("floor_grain", message.New("Floor of"), r.FloorGrain)
	r.Method.Lines(w, r)
	if r.Method.Nothing.IsZero() {
		r.postCredit(w)
	}
	w.Rounded(r.Rounding, "weight")
}

// takePercent is a percent of the wet weight. One that leaves nothing is refused.
func (r Rule) takePercent(w rule.Working, percent, wet *worksheet.Step) (worksheet.Expr, bool) {
	if !percent.Value().Less(rule.Hundred) {
		w.Refuse("edition", message.New("Shrink would be %s of the weight, which leaves nothing (%s). Check the moisture and the edition.", percent.Value(), r.Source))
		return worksheet.Expr{}, false
	}
	return worksheet.PercentOf(percent, wet), true
}
