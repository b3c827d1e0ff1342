package rates

import (
	"fmt"
	"strings"

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

// order checks that the order names every rule once, and that no rule stands
// on a weight which is only known further down. "discounts" is taken apart
// into the discounts that are not named on their own.
func (r *reader) order(t *tomlfile.Table) {
	if len(r.e.Order) == 0 {
		t.Wrong("order", "edition.order is missing", "List the deductions as they are taken, such as order = [\"shrink\", \"handling\", \"drying\", \"discounts\"].")
		return
	}
	r.e.Order = r.spelledOut(r.e.Order)
	want := r.wanted()
	seen := map[string]bool{}
	for _, place := range r.e.Order {
		if seen[place] {
			t.Wrong("order", fmt.Sprintf("%q stands twice in the order", place), "Name every rule once.")
		}
		if !want[place] {
			t.Wrong("order", fmt.Sprintf("%q in the order is no rule of this edition", place), "Rules here: "+strings.Join(r.rules(), ", ")+".")
		}
		seen[place] = true
	}
	for _, place := range r.rules() {
		if !seen[place] {
			t.Wrong("order", fmt.Sprintf("the order leaves out %q", place), "Name every rule once, also one that takes nothing.")
		}
	}
	r.knownWeights(t)
}

func (r *reader) rules() []string {
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

func (r *reader) wanted() map[string]bool {
	want := map[string]bool{}
	for _, place := range r.rules() {
		want[place] = true
	}
	return want
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

// knownWeights walks the order and asks of each rule that its basis has been
// worked out by then.
func (r *reader) knownWeights(t *tomlfile.Table) {
	_, hasDockage := r.e.Commodity.Dockage()
	done := map[string]bool{dockagePlace: !hasDockage}
	for _, place := range r.e.Order {
		switch basis := r.basisOf(place); {
		case basis == Clean && !done[dockagePlace]:
			t.Wrong("order", fmt.Sprintf("%s is taken on the clean weight, but comes before dockage", place), "Put dockage first.")
		case basis == Dry && !(done[shrinkPlace] && done[handlingPlace]):
			t.Wrong("order", fmt.Sprintf("%s is taken on the dry weight, but comes before shrink and handling", place), "Put shrink and handling before it.")
		}
		if place == handlingPlace && !done[shrinkPlace] {
			t.Wrong("order", "handling comes before shrink", "Handling is taken on the weight that was shrunk: put shrink first.")
		}
		done[place] = true
	}
}

func (r *reader) basisOf(place string) Basis {
	switch place {
	case shrinkPlace:
		return r.e.Shrink.Basis
	case dryingPlace:
		return r.e.Drying.Basis
	}
	for _, d := range r.e.Discounts {
		if place == discountPrefix+d.ID {
			return d.Basis
		}
	}
	return Net
}
