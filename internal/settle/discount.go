package settle

import (
	"fmt"
	"slices"
	"strings"

	"tenthpoint/internal/quantity"
	"tenthpoint/internal/rates"
	"tenthpoint/internal/worksheet"
)

// applyDiscount applies the rule a place of the order names.
func applyDiscount(d *calculation, place string) {
	id := strings.TrimPrefix(place, "discount.")
	i := slices.IndexFunc(d.edition.Discounts, func(r rates.Discount) bool { return r.ID == id })
	rule := &d.edition.Discounts[i]
	r := discounting{d, rule}
	d.sheet.Section("Discounts and premiums")
	found, tested := d.found[rule.Factor.ID]
	if !tested {
		r.noDiscount("not tested, so nothing is taken or paid")
		return
	}
	if !r.comparable(found) || r.turnedAway(found) {
		return
	}
	switch rule.Form {
	case rates.ByTable:
		r.byTable(found)
	case rates.PerUnit:
		r.perUnit(found)
	case rates.YesNo:
		r.yesNo(found)
	}
}

// discounting is one discount or premium of a load under way.
type discounting struct {
	*calculation
	rule *rates.Discount
}

// comparable refuses a result in a unit the rule is not written in.
func (r discounting) comparable(found *worksheet.Step) bool {
	want := found.Value().Unit()
	switch {
	case r.rule.Form == rates.PerUnit:
		want = r.rule.Base.Amount.Unit()
	case r.rule.Form == rates.ByTable && r.rule.Table[0].HasHigh:
		want = r.rule.Table[0].High.Unit()
	case r.rule.Form == rates.ByTable:
		want = r.rule.Table[0].Low.Unit()
	}
	if found.Value().Unit() == want {
		return true
	}
	r.refuse(Problem{Field: string(r.rule.Factor.ID), Sentence: fmt.Sprintf("%s is %s; %s is written in %s. Test or type it in %s.", r.rule.Factor.Name, found.Printed(), r.edition.Source(r.rule.Row), want, want)})
	return false
}

// turnedAway refuses a load beyond the rule's limits, unless a manager has
// accepted it; then the limit and that it was accepted stand on the sheet.
func (r discounting) turnedAway(found *worksheet.Step) bool {
	limit, side := r.rule.RefuseOver, "over"
	if r.rule.RefuseUnder.Given() && found.Value().Less(r.rule.RefuseUnder.Amount) {
		limit, side = r.rule.RefuseUnder, "under"
	} else if !limit.Given() || !found.Value().More(limit.Amount) {
		return false
	}
	where := fmt.Sprintf("is %s, %s the limit of %s", found.Printed(), side, limit.Amount.Written())
	if r.refusedBy(where) {
		return true
	}
	step := r.rate(DiscountLine(r.rule.ID)+".limit", r.rule.Label+" limit", limit)
	r.sheet.Note(step, fmt.Sprintf("%s is %s it; %s", found.Printed(), side, accepted))
	return false
}

const accepted = "accepted by a manager"

// refusedBy turns the load away under a rule and reports whether it did.
func (r discounting) refusedBy(limit string) bool {
	if slices.Contains(r.facts.Accepted, r.rule.ID) {
		return false
	}
	r.refuse(Problem{
		Field: string(r.rule.Factor.ID), Accept: r.rule.ID,
		Sentence: fmt.Sprintf("%s %s (%s). Refuse the load, or let a manager accept it.", r.rule.Factor.Name, limit, r.edition.Source(r.rule.Row)),
	})
	return true
}

func (r discounting) byTable(found *worksheet.Step) {
	band, ok := rates.Find(r.rule.Table, found.Value())
	if !ok {
		r.offTable(string(r.rule.Factor.ID), r.rule.Factor.Name, found, r.rule.Row, r.rule.Table)
		return
	}
	where := fmt.Sprintf("%s is in the row %s", found.Printed(), band)
	if band.Refuse {
		if r.refusedBy(fmt.Sprintf("is %s, in the row %s that is turned away", found.Printed(), band)) {
			return
		}
		where += "; " + accepted
	}
	if band.Cell.Amount.IsZero() {
		r.noDiscount(where + ", which brings none")
		return
	}
	rate := r.rate(DiscountRateLine(r.rule.ID), r.rule.Label+" rate", band.Cell)
	r.sheet.Note(rate, where)
	r.apply(band.Gives, rate)
}

func (r discounting) perUnit(found *worksheet.Step) {
	beyond := found.Value().More(r.rule.Base.Amount)
	if !r.rule.Above {
		beyond = found.Value().Less(r.rule.Base.Amount)
	}
	if !beyond {
		side := "below"
		if r.rule.Above {
			side = "above"
		}
		r.noDiscount(fmt.Sprintf("%s is not %s the base, %s", found.Printed(), side, r.rule.Base.Amount.Written()))
		return
	}
	id := DiscountLine(r.rule.ID)
	base := r.rate(id+".base", r.rule.Label+" base", r.rule.Base)
	per := r.rate(id+".per", r.rule.Label+" counted per", r.rule.Per)
	diff := worksheet.Less(base, found)
	if r.rule.Above {
		diff = worksheet.Less(found, base)
	}
	count := r.sheet.Work(id+".count", r.rule.Label+" units", worksheet.Over(diff, per), r.rule.Part, r.edition.Source(r.rule.Row))
	each := r.rate(id+".each", r.rule.Label+" for each", r.rule.Cell)
	var figure worksheet.Operand = worksheet.Times(each, count)
	if r.rule.Cap.Given() {
		figure = worksheet.Lower(figure, r.rate(id+".cap", r.rule.Label+" at most", r.rule.Cap))
	}
	r.apply(r.rule.Gives, r.sheet.Work(DiscountRateLine(r.rule.ID), r.rule.Label+" rate", figure, quantity.Unrounded, ""))
}

func (r discounting) yesNo(found *worksheet.Step) {
	if found.Value().Sign() == 0 {
		r.noDiscount("not present")
		return
	}
	where := "present"
	if r.rule.Refuse {
		if r.refusedBy("is present") {
			return
		}
		where += "; " + accepted
	}
	if r.rule.Cell.Amount.IsZero() {
		r.noDiscount(where + ", which brings no discount")
		return
	}
	rate := r.rate(DiscountRateLine(r.rule.ID), r.rule.Label+" rate", r.rule.Cell)
	r.sheet.Note(rate, where)
	r.apply(r.rule.Gives, rate)
}
