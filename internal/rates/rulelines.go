package rates

import (
	"strconv"

	"tenthpoint/internal/quantity"
)

func (w *lineWriter) dockage(d DockageRule) {
	if d.Row == "" {
		return
	}
	w.under("dockage", "Dockage")
	w.text("untested", "Not tested", untested(d.MustTest))
	w.round(d.Rounding, "weight")
}

func untested(mustTest bool) string {
	return word(mustTest, "the load is not settled", "nothing is taken")
}

var shrinkWords = map[ShrinkMethod]string{
	Water:       "water formula, weight × (moisture − shrink-to) ÷ (100 − shrink-to)",
	PerPoint:    "a fixed percent for every point",
	ShrinkTable: "a table by moisture",
	NoShrink:    "none",
}

var basisWords = map[Basis]string{
	Net:       "net weight",
	Clean:     "net weight less dockage",
	Dry:       "dry weight",
	Remaining: "what is left at that place in the order",
}

func (w *lineWriter) shrink(s Shrink) {
	w.under("shrink", "Shrink")
	w.text("method", "Method", shrinkWords[s.Method])
	w.text("basis", "Taken on", basisWords[s.Basis])
	w.cell("trigger", "Taken above", s.Trigger)
	w.cell("to", "Shrink-to", s.To)
	w.cell("floor", "Lowest shrink-to allowed", s.Floor)
	w.text("floor_grain", "Floor of", s.FloorGrain)
	w.cell("rate", "Rate", s.Rate)
	w.step(s.Step)
	for i, b := range s.Table {
		w.textAt(nth("row", i), "row "+b.String(), "Moisture "+b.String(), b.Cell.Amount.Written())
	}
	if !s.Percent.IsExact() {
		w.place("round_percent", "Percent rounded to", s.Percent)
	}
	w.credit(s)
	w.round(s.Rounding, "weight")
}

func (w *lineWriter) credit(s Shrink) {
	switch {
	case s.Method == NoShrink:
	case s.Credit == "none":
		w.text("over_dry", "Over-dry grain", "no credit")
	default:
		w.text("over_dry", "Over-dry grain", "credited with the water it lacks")
		w.cell("over_dry_floor", "Driest moisture credited", s.CreditFloor)
	}
}

func (w *lineWriter) step(s Step) {
	switch {
	case s.Row == "":
	case s.Continuous():
		w.text("step", "Part of a point", "counts as it is")
	default:
		w.text("step", "Part of a point", "counts in steps of "+s.Rounding.String())
	}
}

var handlingWords = map[HandlingMethod]string{
	NoHandling: "none",
	OfWet:      "percent of the wet weight, added to the shrink",
	OfDried:    "percent of the weight after water shrink",
}

func (w *lineWriter) handling(h Handling) {
	w.under("handling", "Handling loss")
	w.text("method", "Method", handlingWords[h.Method])
	w.cell("rate", "Rate", h.Rate)
	if h.Method != NoHandling {
		w.text("always", "Taken", word(h.Always, "from every load", "only above the shrink trigger"))
	}
	w.round(h.Rounding, "weight")
}

var dryingWords = map[DryingMethod]string{
	NoDrying:     "none",
	DryPerPoint:  "one rate for every point",
	DryBandsEach: "every point at the rate of its band",
	DryBandsWhole: "all points at the rate of the band the moisture lies in; " +
		"a rate without points is flat",
}

func (w *lineWriter) drying(d Drying) {
	w.under("drying", "Drying charge")
	w.text("method", "Method", dryingWords[d.Method])
	w.text("basis", "Charged on", basisWords[d.Basis])
	w.cell("trigger", "Charged above", d.Trigger)
	w.cell("to", "Points are counted down to", d.To)
	w.cell("rate", "Rate", d.Rate)
	w.step(d.Step)
	for i, b := range d.Bands {
		w.textAt(nth("band", i), "band "+b.String(), "Moisture "+b.String(), b.Cell.Amount.Written())
	}
	w.cell("minimum", "Least charge", d.Minimum)
	w.round(d.Rounding, "money")
}

// nth is the place of an element of a list of tables in the file.
func nth(list string, i int) string { return list + "." + strconv.Itoa(i) }

func (w *lineWriter) discount(i int, d Discount) {
	w.under("discount."+d.ID, d.Label)
	w.table = nth("discount", i)
	w.text("factor", "Factor", d.Factor.Name)
	w.text("basis", "Taken on", basisWords[d.Basis])
	w.text("untested", "Not tested", untested(d.MustTest))
	for i, b := range d.Table {
		w.textAt(nth("row", i), "row "+b.String(), b.String(), brings(b.Refuse, b.Cell, b.Gives, d.Of))
	}
	switch d.Form {
	case PerUnit:
		w.perUnit(d)
	case YesNo:
		w.textAt(keyOf(d), "present", "Present", brings(d.Refuse, d.Cell, d.Gives, d.Of))
	}
	w.cell("refuse_over", "Turned away over", d.RefuseOver)
	w.cell("refuse_under", "Turned away under", d.RefuseUnder)
	if !d.Unit.IsExact() {
		w.place("round_unit", "Figure per unit rounded to", d.Unit)
	}
	if d.Of == OfWeight {
		w.round(d.Rounding, "weight")
	} else {
		w.round(d.Rounding, "money")
	}
}

// keyOf is the key that says what a discount brings.
func keyOf(d Discount) string {
	if !d.Cell.Given() {
		return "refuse"
	}
	return string(d.Gives)
}

func (w *lineWriter) perUnit(d Discount) {
	w.cell("base", "Base", d.Base)
	side := word(d.Above, " above it", " below it")
	w.textAt(keyOf(d), "figure", "Brings", brings(false, d.Cell, d.Gives, d.Of)+" for every "+d.Per.Amount.Written()+side)
	w.text("part", "A part of that counts", partWords(d.Part))
	w.cell("cap", "At most", d.Cap)
}

func partWords(part quantity.Rounding) string {
	switch part.Rule {
	case quantity.Up:
		return "as a whole one"
	case quantity.Down:
		return "not at all"
	case quantity.HalfUp:
		return "from a half, as a whole one"
	}
	return "as it is"
}

// brings is what a row does: a discount, a premium, nothing, the load refused.
func brings(refuse bool, c Cell, gives Direction, of Of) string {
	what := "nothing"
	if c.Given() && !c.Amount.IsZero() {
		what = string(gives) + " of " + c.Amount.Written()
		if of != OfMoney {
			what += " of the " + string(of)
		}
	}
	switch {
	case !refuse:
		return what
	case c.Given():
		return "turned away; if accepted, " + what
	}
	return "turned away"
}
