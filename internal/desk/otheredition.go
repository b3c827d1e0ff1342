package desk

import (
	"fmt"
	"strings"

	"tenthpoint/internal/rates"
)

// otherEdition is the edition to set beside the one a ticket was settled under:
// the one asked for, else the one before it in the same schedule, else the one
// after it. Nil means that there is none.
func otherEdition(d *Desk, used *rates.Edition, asked string) (*rates.Edition, error) {
	if asked != "" {
		return editionByID(d, asked)
	}
	var before, after *rates.Edition
	for _, e := range d.rates.All() {
		if e.Schedule != used.Schedule || e.Commodity.ID != used.Commodity.ID || e.Hash == used.Hash {
			continue
		}
		if e.From.Before(used.From) {
			before = e // they come by their first day
		} else if after == nil {
			after = e
		}
	}
	if before != nil {
		return before, nil
	}
	return after, nil
}

func editionByID(d *Desk, id string) (*rates.Edition, error) {
	if e, ok := d.rates.ByID(id); ok {
		return e, nil
	}
	var known []string
	for _, e := range d.rates.All() {
		known = append(known, e.ID)
	}
	return nil, fmt.Errorf("there is no edition %q. Editions here: %s", id, strings.Join(known, ", "))
}
