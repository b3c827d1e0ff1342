// Package discount works out the discount or premium for a factor of the sample. Each form has a
// file: table, per-unit, yes-no.
package discount

import (
	"tenthpoint/internal/grain"
	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/rates/rule"
	"tenthpoint/internal/worksheet"
)

// Form is the way a discount depends on its factor.
type Form = rule.Method[Rule, Work]

// Work settles a factor that was found and is within the rule's limits.
type Work func(w Working, r *Rule, found *worksheet.Step)

// Working is the settlement under way, as far as a form needs it.
type Working interface {
	rule.Working
	// Apply takes or pays a rate, in money or weight.
	Apply(gives rule.Direction, rate *worksheet.Step)
	// None records why nothing is taken or paid.
	None(reason message.Text)
	// Accepted is the row whose figure a load brings that a manager has accepted in a row which
	// turns loads away.
	Accepted(refused rule.Band) rule.Band
	// TurnedAway refuses the load, unless a manager has accepted it; where describes the result.
	// Accepted is then the remark for the sheet.
	TurnedAway(where message.Text) bool
}

// Accepted is a remark on a load that a manager has accepted all the same.
func Accepted(remark message.Text) message.Text {
	return message.List("; ", remark, message.New("accepted by a manager"))
}

// Forms are all there are.
var Forms = []*Form{Table, PerUnit, YesNo}

// Of is the base of a discount's figure.
type Of string

const (
	// OfMoney is money per bushel, hundredweight or tonne.
	OfMoney Of = "money"
	// OfPrice is a percent of the price.
	OfPrice Of = "price"
	// OfWeight is a percent of the weight.
	OfWeight Of = "weight"
)

// Rule is an edition's rule for one factor.
type Rule struct {
	// ID is the rule's name on the sheet; the factor's, unless one factor has
	// two rules.
	ID     string
	Label  message.Text
	Labels labels
	Factor grain.Factor // in the unit the discount is written in
	// MoistureBasis is the moisture at which the rule means a percent such as
	// protein; a result stated at another is not settled.
	MoistureBasis rule.Cell
	Form          *Form
	Of            Of
	Basis         rule.Basis
	// MustTest refuses to settle a load whose factor was not tested; without it an untested factor
	// has no discount.
	MustTest bool

	Rows []rule.Band // of Table
	// PerUnit: every Per beyond Base on the stated side brings Cell, parts of a
	// Per counting as Part says, up to Cap.
	Base  rule.Cell
	Above bool // beyond means above the base; else below
	Per   rule.Cell
	Part  quantity.Rounding
	Cap   rule.Cell
	// Cell and Direction are the figure and who gains by it, for PerUnit and YesNo.
	Cell      rule.Cell
	Direction rule.Direction
	// Refuse turns a load away when a yes-no factor is present.
	Refuse bool
	// RefuseOver and RefuseUnder turn a load away beyond a limit.
	RefuseOver, RefuseUnder rule.Cell

	// UnitRounding rounds the money per unit before it meets the quantity.
	UnitRounding quantity.Rounding
	Rounding     quantity.Rounding
	Source       message.Text
}

// Line is the id of a rule's line on the sheet.
func Line(id string) string { return "discount." + id }

// line is a step of the rule on the sheet.
func (r *Rule) line(part string) string { return Line(r.ID) + "." + part }

// RateLine returns the id of the step of a factor's rate.
func RateLine(id string) string { return Line(id) + ".rate" }

// Unit is the unit the factor's values are written in; false for a factor that
// is present or not.
func (r *Rule) Unit() (quantity.Unit, bool) {
	if r.Base.Given() {
		return r.Base.Amount.Unit(), true
	}
	for _, b := range r.Rows {
		if u, ok := b.Unit(); ok {
			return u, true
		}
	}
	return quantity.Unit{}, false
}

// Post posts the i-th rule of an edition line by line.
func (r *Rule) Post(w *rule.Lines, i int) {
	w.Under(Line(r.ID), r.Label)
	w.In(rule.Nth("discount", i))
	w.Text("factor", message.New("Factor"), message.Words(r.Factor.Name))
	w.Cell("moisture_basis", message.New("Stated at a moisture of"), r.MoistureBasis)
	w.Text("form", message.New("How it works"), message.Words(r.Form.Said))
	w.Basis(message.New("Taken on"), r.Basis)
	w.Untested(r.MustTest)
	r.Form.Lines(w, *r)
	w.Cell("refuse_over", message.New("Rejected over"), r.RefuseOver)
	w.Cell("refuse_under", message.New("Rejected under"), r.RefuseUnder)
	if !r.UnitRounding.IsExact() {
		w.Rounding("round_unit", message.New("Figure per unit rounded to"), r.UnitRounding)
	}
	if r.Of == OfWeight {
		w.Rounded(r.Rounding, "weight")
	} else {
		w.Rounded(r.Rounding, "money")
	}
}

// key returns the key of a factor's effect.
func (r *Rule) key() string {
	if !r.Cell.Given() {
		return "refuse"
	}
	return string(r.Direction)
}

// brings describes the effect of a row: a discount, a premium, nothing, the load refused.
func (r *Rule) brings(refuse bool, c rule.Cell, gives rule.Direction) message.Text {
	what := message.New("nothing")
	if c.Given() && !c.Amount.IsZero() {
		what = r.figure(c, gives)
	}
	switch {
	case !refuse:
		return what
	case c.Given():
		return message.New("rejected; if accepted, %s", what)
	}
	return message.New("rejected")
}

// figure formats a discount or premium with its base.
func (r *Rule) figure(c rule.Cell, gives rule.Direction) message.Text {
	size := message.New("%s", c.Amount.Written())
	switch r.Of {
	case OfPrice:
		size = message.New("%s of the price", c.Amount.Written())
	case OfWeight:
		size = message.New("%s of the weight", c.Amount.Written())
	}
	if gives == rule.Pays {
		return message.New("premium of %s", size)
	}
	return message.New("discount of %s", size)
}
