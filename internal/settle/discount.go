package settle

import (
	"fmt"
	"slices"
	"strings"

	"tenthpoint/internal/quantity"
	"tenthpoint/internal/rates"
	"tenthpoint/internal/working"
)

// discount applies the rule a place of the order names.
func (d *desk) discount(place string) {
	id := strings.TrimPrefix(place, "discount.")
	i := slices.IndexFunc(d.edition.Discounts, func(r rates.Discount) bool { return r.ID == id })
	rule := d.edition.Discounts[i]
	d.sheet.Section("Discounts and premiums")
	found, tested := d.found[rule.Factor.ID]
	if !tested {
		d.noDiscount(rule, "not tested, so nothing is taken or paid")
		return
	}
	if !d.comparable(rule, found) || d.turnedAway(rule, found) {
		return
	}
	switch rule.Form {
	case rates.ByTable:
		d.byTable(rule, found)
	case rates.PerUnit:
		d.perUnit(rule, found)
	case rates.YesNo:
		d.yesNo(rule, found)
	}
}

// comparable refuses a result in a unit the rule is not written in.
func (d *desk) comparable(rule rates.Discount, found *working.Step) bool {
	want := found.Value().Unit()
	switch {
	case rule.Form == rates.PerUnit:
		want = rule.Base.Amount.Unit()
	case rule.Form == rates.ByTable && rule.Table[0].HasHigh:
		want = rule.Table[0].High.Unit()
	case rule.Form == rates.ByTable:
		want = rule.Table[0].Low.Unit()
	}
	if found.Value().Unit() == want {
		return true
	}
	d.refuse(Problem{Field: string(rule.Factor.ID), Sentence: fmt.Sprintf("%s is %s; %s is written in %s. Test or type it in %s.", rule.Factor.Name, found.Value(), d.edition.Source(rule.Row), want, want)})
	return false
}

// turnedAway refuses a load beyond the rule's limits, unless a manager has
// accepted it.
func (d *desk) turnedAway(rule rates.Discount, found *working.Step) bool {
	over := rule.RefuseOver.Given() && found.Value().More(rule.RefuseOver.Amount)
	under := rule.RefuseUnder.Given() && found.Value().Less(rule.RefuseUnder.Amount)
	present := rule.Refuse && found.Value().Sign() > 0
	if !over && !under && !present {
		return false
	}
	limit := "is present"
	switch {
	case over:
		limit = fmt.Sprintf("is %s, over the limit of %s", found.Printed(), rule.RefuseOver.Amount.Written())
	case under:
		limit = fmt.Sprintf("is %s, under the limit of %s", found.Printed(), rule.RefuseUnder.Amount.Written())
	}
	return d.refusedBy(rule, limit)
}

// refusedBy turns the load away under a rule and reports whether it did.
func (d *desk) refusedBy(rule rates.Discount, limit string) bool {
	if slices.Contains(d.facts.Accepted, rule.ID) {
		return false
	}
	d.refuse(Problem{
		Field: string(rule.Factor.ID), Accept: rule.ID,
		Sentence: fmt.Sprintf("%s %s (%s). Refuse the load, or let a manager accept it.", rule.Factor.Name, limit, d.edition.Source(rule.Row)),
	})
	return true
}

func (d *desk) byTable(rule rates.Discount, found *working.Step) {
	band, ok := rates.Find(rule.Table, found.Value())
	if !ok {
		d.offTable(string(rule.Factor.ID), rule.Factor.Name, found, rule.Row, rule.Table)
		return
	}
	if band.Refuse {
		if !d.refusedBy(rule, fmt.Sprintf("is %s, in the row %s that is turned away", found.Printed(), band)) {
			d.noDiscount(rule, fmt.Sprintf("%s is in the row %s; accepted by a manager, and the row states no discount", found.Printed(), band))
		}
		return
	}
	if band.Cell.Amount.IsZero() {
		d.noDiscount(rule, fmt.Sprintf("%s is in the row %s, which brings none", found.Printed(), band))
		return
	}
	rate := d.rate("discount."+rule.ID+".rate", rule.Label+" rate", band.Cell)
	d.sheet.Note(rate, fmt.Sprintf("%s is in the row %s", found.Printed(), band))
	d.apply(rule, band.Gives, rate)
}

func (d *desk) perUnit(rule rates.Discount, found *working.Step) {
	beyond := found.Value().More(rule.Base.Amount)
	if !rule.Above {
		beyond = found.Value().Less(rule.Base.Amount)
	}
	if !beyond {
		side := "below"
		if rule.Above {
			side = "above"
		}
		d.noDiscount(rule, fmt.Sprintf("%s is not %s the base, %s", found.Printed(), side, rule.Base.Amount.Written()))
		return
	}
	id := "discount." + rule.ID
	base := d.rate(id+".base", rule.Label+" base", rule.Base)
	per := d.rate(id+".per", rule.Label+" counted per", rule.Per)
	diff := working.Less(base, found)
	if rule.Above {
		diff = working.Less(found, base)
	}
	count := d.sheet.Work(id+".count", rule.Label+" units", working.Over(diff, per), rule.Part, d.edition.Source(rule.Row))
	each := d.rate(id+".each", rule.Label+" for each", rule.Cell)
	var figure working.Operand = working.Times(each, count)
	if rule.Cap.Given() {
		figure = working.Lower(figure, d.rate(id+".cap", rule.Label+" at most", rule.Cap))
	}
	d.apply(rule, rule.Gives, d.sheet.Work(id+".rate", rule.Label+" rate", figure, quantity.Unrounded, ""))
}

func (d *desk) yesNo(rule rates.Discount, found *working.Step) {
	if found.Value().Sign() == 0 {
		d.noDiscount(rule, "not present")
		return
	}
	if rule.Refuse {
		d.noDiscount(rule, "present; accepted by a manager, and the edition states no discount")
		return
	}
	d.apply(rule, rule.Gives, d.rate("discount."+rule.ID+".rate", rule.Label+" rate", rule.Cell))
}

// apply turns a rule's figure into weight or money.
func (d *desk) apply(rule rates.Discount, gives rates.Gives, rate *working.Step) {
	id, source := "discount."+rule.ID, d.edition.Source(rule.Row)
	switch rule.Of {
	case rates.OfWeight:
		step := d.sheet.Work(id, rule.Label, working.PercentOf(rate, d.on(rule.Basis)), rule.Rounding, source)
		d.add(rule, gives, step)
		d.moveWeight(rule, gives, step)
	case rates.OfPrice:
		if d.facts.Price == nil {
			d.noDiscount(rule, fmt.Sprintf("price later: %s of the price will be due", rate.Printed()))
			return
		}
		d.byMoney(rule, gives, d.sheet.Work(id+".unit", rule.Label+" per unit", working.PercentOf(rate, d.price()), rule.Unit, source))
	default:
		if !rule.Unit.IsExact() {
			rate = d.sheet.Work(id+".unit", rule.Label+" per unit", working.Same(rate), rule.Unit, source)
		}
		d.byMoney(rule, gives, rate)
	}
}

func (d *desk) byMoney(rule rates.Discount, gives rates.Gives, rate *working.Step) {
	units := d.amountOn(rule.Basis, rate.Value().Unit())
	step := d.sheet.Work("discount."+rule.ID, rule.Label, working.Times(rate, units), rule.Rounding, d.edition.Source(rule.Row))
	d.add(rule, gives, step)
}

func (d *desk) moveWeight(rule rates.Discount, gives rates.Gives, step *working.Step) {
	id, label := "after."+rule.ID, "Weight after "+strings.ToLower(rule.Label)
	if gives == rates.Pays {
		d.left = d.sheet.Work(id, label, working.Sum(d.left, step), quantity.Unrounded, "")
		return
	}
	d.off(id, label, step)
}

func (d *desk) noDiscount(rule rates.Discount, reason string) {
	unit := quantity.Dollar
	if rule.Of == rates.OfWeight {
		unit = d.edition.Units.Weight
	}
	step := d.sheet.Skip("discount."+rule.ID, rule.Label, unit, rule.Rounding, reason, d.edition.Source(rule.Row))
	d.add(rule, rates.Docks, step)
}

func (d *desk) add(rule rates.Discount, gives rates.Gives, step *working.Step) {
	d.out.Deductions = append(d.out.Deductions, Deduction{Rule: rule, Gives: gives, Step: step})
}
