package discount

import (
	"strings"

	"tenthpoint/internal/grain"
	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/rates/rule"
	"tenthpoint/internal/tomlfile"
)

// ReadAll reads the discounts of an edition. What is wrong is reported there.
func ReadAll(tables []*tomlfile.Table, h *rule.Head) []Rule {
	var out []Rule
	seen := map[string]bool{}
	for _, t := range tables {
		r := read(t, h)
		if r.ID != "" && seen[r.ID] {
			t.AddProblem("id", message.New("two discounts are called %q", r.ID), message.New("Give one of them an id of its own."))
			continue
		}
		seen[r.ID] = true
		out = append(out, r)
	}
	return out
}

func read(t *tomlfile.Table, h *rule.Head) Rule {
	factor, id := readFactor(t, h)
	r := Rule{ID: t.OptionalText("id"), Factor: factor}
	rule.CheckName(t, "id", r.ID)
	if r.ID == "" {
		r.ID = id
	}
	t.SetTitle(message.New("place|discount %v", r.ID))
	r.Source, r.Label, r.Basis = t.Source(""), message.Words(t.Text("label")), rule.ReadBasis(t)
	r.Labels = labelsOf(r.Label)
	r.MoistureBasis = rule.ReadOptionalCell(t, "moisture_basis", quantity.Percent)
	r.Form = rule.Choose(t, "form", Forms)
	r.Of = Of(t.Choice("of", string(OfMoney), string(OfPrice), string(OfWeight)))
	r.MustTest = t.Choice("untested", "refuse", "none") == "refuse"
	r.Rounding = rule.LineRounding(t, r.roundedAs(h.Rounding))
	r.UnitRounding = t.OptionalRounding("round_unit", quantity.Unrounded)
	if r.Form == nil || r.Of == "" || r.Factor.ID == "" { // reported
		t.IgnoreRest()
		return r
	}
	r.Form.Read(t, h, &r)
	return r
}

// roundedAs returns the default rounding of a discount.
func (r *Rule) roundedAs(p rule.Places) quantity.Rounding {
	if r.Of == OfWeight {
		return p.Weight
	}
	return p.Money
}

// isMeasured requires a factor that is measured.
func (r *Rule) isMeasured(t *tomlfile.Table) bool {
	if r.Factor.YesNo {
		t.AddProblem("form", message.New("%s is present or absent, it is not measured", r.Factor.Name), message.New("Use the form yes-no."))
		t.IgnoreRest()
	}
	return !r.Factor.YesNo
}

// readLimits reads the limits that turn a measured load away, and requires one unit throughout the
// rule.
func (r *Rule) readLimits(t *tomlfile.Table) {
	units := r.factorUnits()
	r.RefuseOver, r.RefuseUnder = rule.ReadOptionalCell(t, "refuse_over", units...), rule.ReadOptionalCell(t, "refuse_under", units...)
	if rule.Less(r.RefuseOver, r.RefuseUnder) && r.RefuseOver.Amount.Unit() == r.RefuseUnder.Amount.Unit() {
		t.AddProblem("refuse_over", message.New("%s is rejected over %s and under %s: that is every load", r.Factor.Name, r.RefuseOver.Amount.Written(), r.RefuseUnder.Amount.Written()), message.New("Swap the two limits or mend them."))
	}
	r.oneUnit(t)
	if unit, found := r.Unit(); found {
		r.Factor = r.Factor.In(unit)
	}
}

// oneUnit requires that a discount use only one of the factor's units: results are compared with it
// directly, never converted.
func (r *Rule) oneUnit(t *tomlfile.Table) {
	unit, found := r.Unit()
	if !found {
		return
	}
	for _, limit := range []struct {
		key string
		rule.Cell
	}{{"per", r.Per}, {"refuse_over", r.RefuseOver}, {"refuse_under", r.RefuseUnder}} {
		if limit.Given() && limit.Amount.Unit() != unit {
			t.AddProblem(limit.key, message.New("%s is in %s, and the rest of the discount in %s", t.Name(limit.key), limit.Amount.Unit(), unit), message.New("Write the whole discount in one unit."))
		}
	}
}

// readFactor finds the commodity's factor, and its id as written.
func readFactor(t *tomlfile.Table, h *rule.Head) (f grain.Factor, id string) {
	id = t.Text("factor")
	f, ok := h.Commodity.Factor(grain.FactorID(id))
	if id != "" && !ok && h.Commodity.ID != "" {
		t.AddProblem("factor", message.New("%s has no factor %q", h.Commodity.Name, id), message.New("Known factors: %s.", factorNames(h.Commodity)))
	}
	return f, id
}

func factorNames(c grain.Commodity) string {
	names := make([]string, len(c.Factors))
	for i, f := range c.Factors {
		names[i] = string(f.ID)
	}
	return strings.Join(names, ", ")
}

// factorUnits are the units the factor's limits may be written in: its own, and
// for test weight also kg/hL.
func (r *Rule) factorUnits() []quantity.Unit {
	if r.Factor.Unit == quantity.LbPerBushel {
		return []quantity.Unit{quantity.LbPerBushel, quantity.KgPerHL}
	}
	return []quantity.Unit{r.Factor.Unit}
}
