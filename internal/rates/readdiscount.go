package rates

import (
	"fmt"

	"tenthpoint/internal/grain"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/tomlfile"
)

func (r *reader) discounts() {
	seen := map[string]bool{}
	for _, t := range r.root.Tables("discount") {
		d := r.discount(t)
		if d.ID != "" && seen[d.ID] {
			t.AddProblem("id", fmt.Sprintf("two discounts are called %q", d.ID), "Give one of them an id of its own.")
			continue
		}
		seen[d.ID] = true
		r.e.Discounts = append(r.e.Discounts, d)
	}
}

func (r *reader) discount(t *tomlfile.Table) Discount {
	factor, id := r.factor(t)
	d := Discount{ID: t.OptionalText("id"), Factor: factor}
	checkName(t, "id", d.ID)
	if d.ID == "" {
		d.ID = id
	}
	t.SetTitle("discount " + d.ID)
	d.Row, d.Label, d.Basis = t.Place(""), t.Text("label"), basis(t)
	d.Form = Form(t.Choice("form", string(ByTable), string(PerUnit), string(YesNo)))
	d.Of = Of(t.Choice("of", string(OfMoney), string(OfPrice), string(OfWeight)))
	d.MustTest = t.Choice("untested", "refuse", "none") == "refuse"
	d.Rounding = lineRounding(t, r.placeOf(d.Of))
	d.Unit = t.OptionalRounding("round_unit", quantity.Unrounded)
	if d.Form == "" || d.Of == "" || !r.formFits(t, d) {
		t.IgnoreRest()
		return d
	}
	r.figures(t, &d)
	return d
}

// placeOf is the rounding of a discount that has none of its own.
func (r *reader) placeOf(of Of) quantity.Rounding {
	if of == OfWeight {
		return r.e.Rounding.Weight
	}
	return r.e.Rounding.Money
}

// formFits holds the form against the kind of factor.
func (r *reader) formFits(t *tomlfile.Table, d Discount) bool {
	switch {
	case d.Factor.ID == "":
		return false // reported with the factor
	case d.Form == YesNo && !d.Factor.YesNo:
		t.AddProblem("form", fmt.Sprintf("%s is measured in %s, it is not present or absent", d.Factor.Name, d.Factor.Unit), "Use the form table or per-unit.")
		return false
	case d.Form != YesNo && d.Factor.YesNo:
		t.AddProblem("form", fmt.Sprintf("%s is present or absent, it is not measured", d.Factor.Name), "Use the form yes-no.")
		return false
	}
	return true
}

func (r *reader) figures(t *tomlfile.Table, d *Discount) {
	units := factorUnits(d.Factor)
	switch d.Form {
	case ByTable:
		r.byTable(t, d, units)
	case PerUnit:
		r.perUnit(t, d, units)
	case YesNo:
		d.Refuse, d.Cell, d.Gives = r.answer(t, d.Of)
		return
	}
	d.RefuseOver, d.RefuseUnder = optionalCell(t, "refuse_over", units...), optionalCell(t, "refuse_under", units...)
	if less(d.RefuseOver, d.RefuseUnder) && d.RefuseOver.Amount.Unit() == d.RefuseUnder.Amount.Unit() {
		t.AddProblem("refuse_over", fmt.Sprintf("%s is turned away over %s and under %s: that is every load", d.Factor.Name, d.RefuseOver.Amount.Written(), d.RefuseUnder.Amount.Written()), "Swap the two limits or mend them.")
	}
	oneUnit(t, *d)
	if unit, found := d.unit(); found {
		d.Factor = d.Factor.In(unit)
	}
}

// oneUnit asks that a discount be written in one of the factor's units only:
// results are compared with it as they stand, never converted on the way.
func oneUnit(t *tomlfile.Table, d Discount) {
	unit, found := d.unit()
	if !found {
		return
	}
	for _, limit := range []struct {
		key string
		Cell
	}{{"per", d.Per}, {"refuse_over", d.RefuseOver}, {"refuse_under", d.RefuseUnder}} {
		if limit.Given() && limit.Amount.Unit() != unit {
			t.AddProblem(limit.key, fmt.Sprintf("%s is in %s, and the rest of the discount in %s", t.Name(limit.key), limit.Amount.Unit(), unit), "Write the whole discount in one unit.")
		}
	}
}

// unit is the unit the factor's values are written in.
func (d Discount) unit() (quantity.Unit, bool) {
	if d.Form == PerUnit {
		return d.Base.Amount.Unit(), d.Base.Given()
	}
	for _, b := range d.Table {
		if u, ok := b.unit(); ok {
			return u, true
		}
	}
	return quantity.Unit{}, false
}

// factor finds the commodity's factor, and its id as written.
func (r *reader) factor(t *tomlfile.Table) (f grain.Factor, id string) {
	id = t.Text("factor")
	f, ok := r.e.Commodity.Factor(grain.FactorID(id))
	if id != "" && !ok && r.e.Commodity.ID != "" {
		t.AddProblem("factor", fmt.Sprintf("%s has no factor %q", r.e.Commodity.Name, id), "Known factors: "+r.factorNames()+".")
	}
	return f, id
}

func (r *reader) factorNames() string {
	names := ""
	for i, f := range r.e.Commodity.Factors {
		if i > 0 {
			names += ", "
		}
		names += string(f.ID)
	}
	return names
}

// factorUnits are the units a factor's limits may be written in: its own, and
// for test weight also kg/hL.
func factorUnits(f grain.Factor) []quantity.Unit {
	if f.Unit == quantity.LbPerBushel {
		return []quantity.Unit{quantity.LbPerBushel, quantity.KgPerHL}
	}
	return []quantity.Unit{f.Unit}
}
