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
			t.Wrong("id", fmt.Sprintf("two discounts are called %q", d.ID), "Give one of them an id of its own.")
		}
		seen[d.ID] = true
		r.e.Discounts = append(r.e.Discounts, d)
	}
}

func (r *reader) discount(t *tomlfile.Table) Discount {
	t.Call("discount " + t.OptionalText("factor"))
	d := Discount{Row: t.Place(""), Label: t.Text("label"), Basis: basis(t)}
	d.Factor = r.factor(t)
	d.ID = t.OptionalText("id")
	if d.ID == "" {
		d.ID = string(d.Factor.ID)
	}
	d.Form = Form(t.Choice("form", string(ByTable), string(PerUnit), string(YesNo)))
	d.Of = Of(t.Choice("of", string(OfMoney), string(OfPrice), string(OfWeight)))
	d.MustTest = t.Choice("untested", "refuse", "none") == "refuse"
	otherwise := r.e.Rounding.Money
	if d.Of == OfWeight {
		otherwise = r.e.Rounding.Weight
	}
	d.Rounding = t.OptionalRounding("round", otherwise)
	d.Unit = t.OptionalRounding("round_unit", quantity.Unrounded)
	units := factorUnits(d.Factor)
	d.RefuseOver, d.RefuseUnder = optionalCell(t, "refuse_over", units...), optionalCell(t, "refuse_under", units...)
	switch d.Form {
	case ByTable:
		r.byTable(t, &d, units)
	case PerUnit:
		r.perUnit(t, &d, units)
	case YesNo:
		r.yesNo(t, &d)
	}
	return d
}

// factor finds the commodity's factor.
func (r *reader) factor(t *tomlfile.Table) grain.Factor {
	id := t.Text("factor")
	f, ok := r.e.Commodity.Factor(grain.FactorID(id))
	if id != "" && !ok && r.e.Commodity.ID != "" {
		t.Wrong("factor", fmt.Sprintf("%s has no factor %q", r.e.Commodity.Name, id), "Known factors: "+r.factorNames()+".")
	}
	return f
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

func (r *reader) byTable(t *tomlfile.Table, d *Discount, units []quantity.Unit) {
	rows := t.Tables("row")
	for i, row := range rows {
		row.Call(fmt.Sprintf("discount %s row %d", d.ID, i+1))
		b := band(row, units...)
		if b.Refuse = row.Has("refuse") && row.Bool("refuse"); !b.Refuse {
			b.Cell, b.Gives = r.figure(row, d.Of)
		}
		d.Table = append(d.Table, b)
	}
	checkBands(t, rows, d.Table)
}

func (r *reader) perUnit(t *tomlfile.Table, d *Discount, units []quantity.Unit) {
	d.Base, d.Per = cell(t, "base", units...), cell(t, "per", perUnits(units)...)
	d.Above = t.Choice("side", "above", "below") == "above"
	if t.Has("per") && d.Per.Amount.Sign() <= 0 {
		t.Wrong("per", fmt.Sprintf("%s.per is %s: units beyond the base would be divided by it", t.Path(), d.Per.Amount), "Write a size above nought, such as \"1 lb/bu\" or \"0.1 %\".")
		d.Per.Amount = quantity.Int(1, d.Per.Amount.Unit())
	}
	part := t.Choice("part", "exact", "up", "down", "nearest")
	d.Part = map[string]quantity.Rounding{
		"exact": quantity.Unrounded, "up": quantity.To("1", quantity.Up),
		"down": quantity.To("1", quantity.Down), "nearest": quantity.To("1", quantity.HalfUp),
	}[part]
	d.Cell, d.Gives = r.figure(t, d.Of)
	d.Cap = optionalCell(t, "cap", d.Cell.Amount.Unit())
}

// perUnits are the units a step beyond a base may be written in. A difference
// of percents is counted in percent here, as the factor itself is.
func perUnits(units []quantity.Unit) []quantity.Unit { return units }

func (r *reader) yesNo(t *tomlfile.Table, d *Discount) {
	if !d.Factor.YesNo && d.Factor.ID != "" {
		t.Wrong("form", fmt.Sprintf("%s is measured in %s, it is not present or absent", d.Factor.Name, d.Factor.Unit), "Use the form table or per-unit.")
	}
	if d.Refuse = t.Has("refuse") && t.Bool("refuse"); !d.Refuse {
		d.Cell, d.Gives = r.figure(t, d.Of)
	}
}

// figure reads the amount under "discount" or "premium".
func (r *reader) figure(t *tomlfile.Table, of Of) (Cell, Gives) {
	key, gives := "discount", Docks
	if t.Has("premium") {
		key, gives = "premium", Pays
		if t.Has("discount") {
			t.Wrong("discount", t.Path()+" has both a discount and a premium", "Keep the one that is meant.")
			t.OptionalText("discount")
		}
	}
	units := []quantity.Unit{quantity.Percent}
	if of == OfMoney {
		units = perQuantityUnits()
	}
	c := cell(t, key, units...)
	notNegative(t, key, c)
	r.needsBushel(t, key, c)
	if of == OfWeight && c.Amount.Unit() == quantity.Percent && !c.Amount.Less(hundred) {
		t.Wrong(key, fmt.Sprintf("%s of the weight leaves nothing", c.Amount), "Write a percent below 100.")
	}
	return c, gives
}
