package discount

import (
	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/rates/rule"
	"tenthpoint/internal/tomlfile"
	"tenthpoint/internal/worksheet"
)

// PerUnit counts units beyond a base.
var PerUnit = &Form{
	ID:   "per-unit",
	Said: "a figure for every unit beyond a base",
	Read: func(t *tomlfile.Table, h *rule.Head, r *Rule) {
		if r.isMeasured(t) {
			r.readPerUnit(t, h)
			r.readLimits(t)
		}
	},
	Lines:     postPerUnit,
	Work:      workPerUnit,
	Ticket:    rule.Figures[Rule],
	Explained: "a figure for every unit beyond a base, such as two cents for each pound of test weight under 54. The edition says how part of a unit counts, and may set a most.",
}

func (r *Rule) readPerUnit(t *tomlfile.Table, h *rule.Head) {
	units := r.factorUnits()
	r.Base, r.Per = rule.ReadCell(t, "base", units...), rule.ReadCell(t, "per", units...)
	r.Above = t.Choice("side", "above", "below") == "above"
	if r.Per.Given() && r.Per.Amount.Sign() <= 0 {
		t.AddProblem("per", message.New("%s is %s: what is beyond the base would be divided by it", t.Name("per"), r.Per.Amount.Written()), message.Words("Write a size above zero, such as \"1 lb/bu\" or \"0.1 %\"."))
	}
	r.Part = parts[t.Choice("part", "exact", "up", "down", "nearest")]
	r.Cell, r.Direction = readFigure(t, h, r.Of)
	if r.Cell.Given() {
		r.Cap = rule.ReadOptionalCell(t, "cap", r.Cell.Amount.Unit())
		rule.NotNegative(t, "cap", r.Cap)
	} else {
		t.OptionalText("cap")
	}
}

// parts are the roundings of a number of units beyond a base.
var parts = map[string]quantity.Rounding{
	"exact": quantity.Unrounded, "up": quantity.To("1", quantity.Up),
	"down": quantity.To("1", quantity.Down), "nearest": quantity.To("1", quantity.HalfUp),
}

// partWords say what part of a unit counts, by the rule of its rounding.
var partWords = map[quantity.Rule]message.Text{
	quantity.Up: message.New("as a whole one"), quantity.Down: message.New("not at all"),
	quantity.HalfUp: message.New("from a half, as a whole one"), quantity.Exact: message.New("as it is"),
}

func postPerUnit(w *rule.Lines, r Rule) {
	w.Cell("base", message.New("Base"), r.Base)
	w.TextAt(r.key(), "figure", message.New("Brings"), r.perBase())
	w.Text("part", message.New("A part of that counts"), partWords[r.Part.Rule])
	w.Cell("cap", message.New("At most"), r.Cap)
}

// perBase describes the discount or premium per unit beyond the base.
func (r *Rule) perBase() message.Text {
	figure, per := r.brings(false, r.Cell, r.Direction), r.Per.Amount.Written()
	if r.Above {
		return message.New("%s for every %s above it", figure, per)
	}
	return message.New("%s for every %s below it", figure, per)
}

// side returns the side of the base on which units are counted.
func (r *Rule) side() string {
	if r.Above {
		return "above"
	}
	return "below"
}

func (r *Rule) notBeyond(found *worksheet.Step) message.Text {
	if r.Above {
		return message.New("%s is not above the base, %s", found.Said(), r.Base.Amount.Written())
	}
	return message.New("%s is not below the base, %s", found.Said(), r.Base.Amount.Written())
}

func workPerUnit(w Working, r *Rule, found *worksheet.Step) {
	beyond := found.Value().More(r.Base.Amount)
	if !r.Above {
		beyond = found.Value().Less(r.Base.Amount)
	}
	if !beyond {
		w.None(r.notBeyond(found))
		return
	}
	w.Apply(r.Direction, r.ratePerUnit(w, found))
}

// ratePerUnit returns the amount for the units beyond the base, up to the cap.
func (r *Rule) ratePerUnit(w Working, found *worksheet.Step) *worksheet.Step {
	base := w.Rate(r.line("base"), r.Labels.base, r.Base)
	per := w.Rate(r.line("per"), r.Labels.per, r.Per)
	diff := worksheet.Less(base, found)
	if r.Above {
		diff = worksheet.Less(found, base)
	}
	count := w.Sheet().Work(r.line("count"), r.Labels.count, worksheet.Over(diff, per), r.Part, r.Source)
	each := w.Rate(r.line("each"), r.Labels.each, r.Cell)
	var figure worksheet.Operand = worksheet.Times(each, count)
	if r.Cap.Given() {
		figure = worksheet.Lower(figure, w.Rate(r.line("cap"), r.Labels.most, r.Cap))
	}
	return w.Sheet().Work(RateLine(r.ID), r.Labels.rate, figure, quantity.Unrounded, worksheet.Unsourced)
}
