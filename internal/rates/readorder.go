package rates

import (
	"slices"
	"strings"

	"tenthpoint/internal/message"
	"tenthpoint/internal/rates/discount"
	"tenthpoint/internal/rates/rule"
	"tenthpoint/internal/tomlfile"
)

// Places in the order that are not discounts.
const (
	dockagePlace   = "dockage"
	shrinkPlace    = "shrink"
	handlingPlace  = "handling"
	dryingPlace    = "drying"
	discountsPlace = "discounts"
	discountPrefix = "discount."
)

// order checks that the order names every rule once, and that no rule is taken on a weight that
// only a later rule produces. "discounts" expands to the discounts that are not named on their own.
func (r *reader) order(t *tomlfile.Table) {
	wrongKind := t.Has("order") && r.e.Order == nil
	if wrongKind || r.e.Commodity.ID == "" {
		return // reported; which rules there are is not known
	}
	if len(r.e.Order) == 0 {
		t.AddProblem("order", message.New("edition.order names no rule"), message.New("List the deductions as they are taken, such as order = [\"shrink\", \"handling\", \"drying\", \"discounts\"]."))
		return
	}
	r.e.Order = r.spelledOut(r.e.Order)
	if r.everyRuleOnce(t) {
		r.knownWeights(t)
	}
}

func (r *reader) everyRuleOnce(t *tomlfile.Table) (ok bool) {
	rules := r.places()
	seen := map[string]bool{}
	ok = true
	wrong := func(what, remedy message.Text) {
		t.AddProblem("order", what, remedy)
		ok = false
	}
	for _, place := range r.e.Order {
		switch {
		case seen[place]:
			wrong(message.New("%q stands twice in the order", place), message.New("Name every rule once."))
		case !slices.Contains(rules, place):
			wrong(message.New("%q in the order is no rule of this edition", place), message.New("Rules here: %v.", strings.Join(rules, ", ")))
		}
		seen[place] = true
	}
	for _, place := range rules {
		if !seen[place] {
			wrong(message.New("the order leaves out %q", place), message.New("Name every rule once, also one that takes nothing."))
		}
	}
	return ok
}

func (r *reader) places() []string {
	var out []string
	if _, ok := r.e.Commodity.Dockage(); ok {
		out = append(out, dockagePlace)
	}
	out = append(out, shrinkPlace, handlingPlace, dryingPlace)
	for _, d := range r.e.Discounts {
		out = append(out, discountPrefix+d.ID)
	}
	return out
}

func (r *reader) spelledOut(order []string) []string {
	named := map[string]bool{}
	for _, place := range order {
		named[place] = true
	}
	var out []string
	for _, place := range order {
		if place != discountsPlace {
			out = append(out, place)
			continue
		}
		for _, d := range r.e.Discounts {
			if !named[discountPrefix+d.ID] {
				out = append(out, discountPrefix+d.ID)
			}
		}
	}
	return out
}

// knownWeights checks in order that the weight each rule is taken on has been calculated by then.
func (r *reader) knownWeights(t *tomlfile.Table) {
	if _, has := r.e.Commodity.Dockage(); has && r.e.Order[0] != dockagePlace {
		t.AddProblem("order", message.New("%q comes before dockage", r.e.Order[0]), message.New("Dockage is a percent of the net weight and is taken off first (7 CFR 810.104): put it first."))
	}
	done := map[string]bool{}
	for _, place := range r.e.Order {
		if r.e.basisOf(place) == rule.Dry && !(done[shrinkPlace] && done[handlingPlace]) {
			t.AddProblem("order", message.New("%v is taken on the dry weight, but comes before shrink and handling", place), message.New("Put shrink and handling before it, or give it another basis."))
		}
		if place == handlingPlace && !done[shrinkPlace] {
			t.AddProblem("order", message.New("handling comes before shrink"), message.New("Handling is taken on the weight that was shrunk: put shrink first."))
		}
		done[place] = true
	}
}

// basisOf is the weight that the rule at a place of the order is taken on.
func (e *Edition) basisOf(place string) rule.Basis {
	switch place {
	case shrinkPlace:
		return e.Shrink.Basis
	case dryingPlace:
		return e.Drying.Basis
	}
	if d, is := e.discountAt(place); is {
		return d.Basis
	}
	return rule.Net
}

// discountAt is the discount at a place of the order; false for another rule.
func (e *Edition) discountAt(place string) (*discount.Rule, bool) {
	for i := range e.Discounts {
		if place == discountPrefix+e.Discounts[i].ID {
			return &e.Discounts[i], true
		}
	}
	return nil, false
}
