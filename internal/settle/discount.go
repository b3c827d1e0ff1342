package settle

import (
	"slices"
	"strings"

	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
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
	d.sheet.Section(message.Words("Discounts and premiums"))
	found, tested := d.found[by.Factor.ID]
	if !tested {
		r.None(message.Words("not tested, so nothing is taken or paid"))
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
	sentence := message.New("%s is %s; %s is written in %s. Test or type it in %s.", r.rule.Factor.Name, found.Said(), r.rule.Source, want, want)
	if factor, _ := r.edition.Commodity.Factor(r.rule.Factor.ID); factor.NamesBushel && want == quantity.KgPerHL {
		// A chart leads from grams and from pounds Avery to kg/hL; no source that was read leads there from Winchester's.
		sentence = message.New("%s is %s; %s is written in %s. Type kg/hL, the grams of half a litre (385 g), or pounds of an Avery bushel (48.1 lb/bu Avery).", r.rule.Factor.Name, found.Said(), r.rule.Source, want)
	}
	r.refuse(Problem{Field: string(r.rule.Factor.ID), Sentence: sentence})
	return false
}

// turnedAway refuses a load beyond the rule's limits, unless a manager has accepted it; then the
// sheet shows the limit and the acceptance.
func (r discounting) turnedAway(found *worksheet.Step) bool {
	under, over := r.rule.RefuseUnder, r.rule.RefuseOver
	switch {
	case under.Given() && found.Value().Less(under.Amount):
		return r.beyond(under, message.New("%s is under it", found.Said()),
			message.New("is %s, under the limit of %s", found.Said(), under.Amount.Written()))
	case over.Given() && found.Value().More(over.Amount):
		return r.beyond(over, message.New("%s is over it", found.Said()),
			message.New("is %s, over the limit of %s", found.Said(), over.Amount.Written()))
	}
	return false
}

// beyond turns away a load beyond a limit or writes down that it was accepted.
func (r discounting) beyond(limit rule.Cell, remark, where message.Text) (away bool) {
	if r.TurnedAway(where) {
		return true
	}
	step := r.Rate(DiscountLine(r.rule.ID)+".limit", r.rule.Labels.Limit, limit)
	r.sheet.Note(step, discount.Accepted(remark))
	return false
}

// Accepted is the row whose figure an accepted load brings.
func (r discounting) Accepted(refused rule.Band) rule.Band { return r.engine.accepted(r, refused) }

// asRefused takes an accepted load at the figure of its own row, as the first three engines do.
func asRefused(_ discounting, refused rule.Band) rule.Band { return refused }

// acceptedByFormat asks the format of the edition, as the fourth engine does.
func acceptedByFormat(r discounting, refused rule.Band) rule.Band {
	return r.edition.Format.Accepted(r.rule, refused)
}

// TurnedAway turns the load away under a rule and reports whether it did.
func (r discounting) TurnedAway(where message.Text) bool {
	if slices.Contains(r.facts.Accepted, r.rule.ID) {
		return false
	}
	r.refuse(Problem{
		Field: string(r.rule.Factor.ID), Accept: r.rule.ID,
		Sentence: message.New("%s %s (%s). Refuse the load, or let a manager accept it.", r.rule.Factor.Name, where, r.rule.Source),
	})
	return true
}
