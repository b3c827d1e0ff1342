// Package terms reads what grain is bought and held under: the prices posted for a day, and the grain
// of which nobody has said yet what becomes of it.
package terms

import (
	"iter"

	"tenthpoint/internal/book"
	"tenthpoint/internal/elevator"
	"tenthpoint/internal/journal"
	"tenthpoint/internal/load"
	"tenthpoint/internal/quantity"
)

// Posted is the filter for the facts of prices.
func Posted() book.FactFilter { return book.FactFilter{Kind: elevator.PostedPrice{}.Kind()} }

// PostedOn are the prices posted for a day, every one of them in the order they were written: the
// last one of a grain is in force.
func PostedOn(facts iter.Seq2[journal.Fact, error], day quantity.Date) ([]load.Posted, error) {
	var out []load.Posted
	for f, err := range facts {
		if err != nil {
			return nil, err
		}
		p, err := journal.ReadBody[elevator.PostedPrice](f.Body)
		if err != nil {
			return nil, err
		}
		if p.Day == day {
			out = append(out, load.Posted{Commodity: p.Commodity, Day: p.Day, Price: p.Price, Place: p.Place, Delivery: p.Delivery, At: f.At, Who: f.Who})
		}
	}
	return out, nil
}

// InForce reports whether a posted price is the last one of its grain, place and month.
func InForce(all []load.Posted, i int) bool {
	for _, later := range all[i+1:] {
		if later.Commodity == all[i].Commodity && later.Place == all[i].Place && later.Delivery == all[i].Delivery {
			return false
		}
	}
	return true
}
