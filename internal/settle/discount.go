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
	rule := &d.edition.Discounts[i]
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
func (d *desk) comparable(rule *rates.Discount, found *working.Step) bool {
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
	d.refuse(Problem{Field: string(rule.Factor.ID), Sentence: fmt.Sprintf("%s is %s; %s is written in %s. Test or type it in %s.", rule.Factor.Name, found.Printed(), d.edition.Source(rule.Row), want, want)})
	return false
}

// turnedAway refuses a load beyond the rule's limits, unless a manager has
// accepted it; then the limit and that it was accepted stand on the sheet.
func (d *desk) turnedAway(rule *rates.Discount, found *working.Step) bool {
	limit, side := rule.RefuseOver, "over"
	if rule.RefuseUnder.Given() && found.Value().Less(rule.RefuseUnder.Amount) {
		limit, side = rule.RefuseUnder, "under"
	} else if !limit.Given() || !found.Value().More(limit.Amount) {
		return false
	}
	where := fmt.Sprintf("is %s, %s the limit of %s", found.Printed(), side, limit.Amount.Written())
	if d.refusedBy(rule, where) {
		return true
	}
	step := d.rate(DiscountLine(rule.ID)+".limit", rule.Label+" limit", limit)
	d.sheet.Note(step, fmt.Sprintf("%s is %s it; %s", found.Printed(), side, accepted))
	return false
}

const accepted = "accepted by a manager"

// refusedBy turns the load away under a rule and reports whether it did.
func (d *desk) refusedBy(rule *rates.Discount, limit string) bool {
	if slices.Contains(d.facts.Accepted, rule.ID) {
		return false
	}
	d.refuse(Problem{
		Field: string(rule.Factor.ID), Accept: rule.ID,
		Sentence: fmt.Sprintf("%s %s (%s). Refuse the load, or let a manager accept it.", rule.Factor.Name, limit, d.edition.Source(rule.Row)),
	})
	return true
}

func (d *desk) byTable(rule *rates.Discount, found *working.Step) {
	band, ok := rates.Find(rule.Table, found.Value())
	if !ok {
		d.offTable(string(rule.Factor.ID), rule.Factor.Name, found, rule.Row, rule.Table)
		return
	}
	where := fmt.Sprintf("%s is in the row %s", found.Printed(), band)
	if band.Refuse {
		if d.refusedBy(rule, fmt.Sprintf("is %s, in the row %s that is turned away", found.Printed(), band)) {
			return
		}
		where += "; " + accepted
	}
	if band.Cell.Amount.IsZero() {
		d.noDiscount(rule, where+", which brings none")
		return
	}
	rate := d.rate(DiscountRateLine(rule.ID), rule.Label+" rate", band.Cell)
	d.sheet.Note(rate, where)
	d.apply(rule, band.Gives, rate)
}

func (d *desk) perUnit(rule *rates.Discount, found *working.Step) {
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
	id := DiscountLine(rule.ID)
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
	d.apply(rule, rule.Gives, d.sheet.Work(DiscountRateLine(rule.ID), rule.Label+" rate", figure, quantity.Unrounded, ""))
}

func (d *desk) yesNo(rule *rates.Discount, found *working.Step) {
	if found.Value().Sign() == 0 {
		d.noDiscount(rule, "not present")
		return
	}
	where := "present"
	if rule.Refuse {
		if d.refusedBy(rule, "is present") {
			return
		}
		where += "; " + accepted
	}
	if rule.Cell.Amount.IsZero() {
		d.noDiscount(rule, where+", which brings no discount")
		return
	}
	rate := d.rate(DiscountRateLine(rule.ID), rule.Label+" rate", rule.Cell)
	d.sheet.Note(rate, where)
	d.apply(rule, rule.Gives, rate)
}
