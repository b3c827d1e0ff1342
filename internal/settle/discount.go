package settle

import (
	"fmt"
	"slices"
	"strings"

	"tenthpoint/internal/message"
	"tenthpoint/internal/rates/discount"
	"tenthpoint/internal/rates/rule"
	"tenthpoint/internal/worksheet"
)

// applyDiscount applies the rule a place of the order names.
func applyDiscount(d *calculation, place string) {
	id := strings.TrimPrefix(place, "discount.")
	i := slices.IndexFunc(d.edition.Discounts, func(r discount.Rule) bool { return r.ID == id })
	by := &d.edition.Discounts[i]
	r := discounting{d, by}
	d.sheet.Section("Discounts and premiums")
	found, tested := d.found[by.Factor.ID]
	if !tested {
		r.None("not tested, so nothing is taken or paid")
		return
	}
	if !r.comparable(found) || r.turnedAway(found) {
		return
	}
	by.Form.Work(r, by, found)
}

// discounting is one discount or premium of a load under way.
type discounting struct {
	*calculation
	rule *discount.Rule
}

// comparable refuses a result in a unit the rule is not written in.
func (r discounting) comparable(found *worksheet.Step) bool {
	want, is := r.rule.Unit()
	if !is || found.Value().Unit() == want {
		return true
	}
	r.refuse(Problem{Field: string(r.rule.Factor.ID), Sentence: message.New("%s is %s; %s is written in %s. Test or type it in %s.", r.rule.Factor.Name, found.Printed(), r.edition.Source(r.rule.Row), want, want)})
	return false
}

// turnedAway refuses a load beyond the rule's limits, unless a manager has accepted it; then the
// sheet shows the limit and the acceptance.
func (r discounting) turnedAway(found *worksheet.Step) bool {
	limit, side := r.rule.RefuseOver, "over"
	if r.rule.RefuseUnder.Given() && found.Value().Less(r.rule.RefuseUnder.Amount) {
		limit, side = r.rule.RefuseUnder, "under"
	} else if !limit.Given() || !found.Value().More(limit.Amount) {
		return false
	}
	where := fmt.Sprintf("is %s, %s the limit of %s", found.Printed(), side, limit.Amount.Written())
	if r.TurnedAway(where) {
		return true
	}
	step := r.Rate(DiscountLine(r.rule.ID)+".limit", r.rule.Label+" limit", limit)
	r.sheet.Note(step, fmt.Sprintf("%s is %s it; %s", found.Printed(), side, discount.Accepted))
	return false
}

// Accepted is the row whose figure an accepted load brings.
func (r discounting) Accepted(refused rule.Band) rule.Band { return r.engine.accepted(r, refused) }

// TurnedAway turns the load away under a rule and reports whether it did.
func (r discounting) TurnedAway(where string) bool {
	if slices.Contains(r.facts.Accepted, r.rule.ID) {
		return false
	}
	r.refuse(Problem{
		Field: string(r.rule.Factor.ID), Accept: r.rule.ID,
		Sentence: message.New("%s %s (%s). Refuse the load, or let a manager accept it.", r.rule.Factor.Name, where, r.edition.Source(r.rule.Row)),
	})
	return true
}
