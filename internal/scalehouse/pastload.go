package scalehouse

import (
	"context"

	"tenthpoint/internal/load"
	"tenthpoint/internal/office"
	"tenthpoint/internal/quantity"
)

// EnterPastLoad records a past load with its weights and its sample, and issues its ticket. It
// counts on its own day while the book has nothing later, so that a book begun in mid-season has
// the season's days as they were; otherwise on the day it is imported. Last is the day the load
// before it counts on, none for the first.
func EnterPastLoad(ctx context.Context, at Actor, details load.Details, facts []load.Fact, last quantity.Date) (quantity.Date, error) {
	return result(ctx, at, func(w *Batch) (quantity.Date, error) {
		id, err := w.open(load.Opened{Details: details})
		if err != nil {
			return last, err
		}
		for _, f := range facts {
			if err := w.act(id, f, nil); err != nil {
				return last, err
			}
		}
		l, err := w.load(id)
		if err != nil {
			return last, err
		}
		if _, err := w.settle(l); err != nil {
			return last, err
		}
		day, err := w.pastDay(details.Day, last)
		if err != nil {
			return last, err
		}
		_, err = w.numberOn(l, day)
		return day, err
	})
}

// pastDay is the day a past load counts on: its own, but no earlier than any
// ticket that has its number already, and after the last day that is closed.
func (w *Batch) pastDay(own, last quantity.Date) (quantity.Date, error) {
	if last.IsZero() {
		if err := w.renewRows(""); err != nil {
			return own, err
		}
		text, err := w.tx.LastIssuedDay()
		if err != nil {
			return own, err
		}
		if last, err = office.ListedDay(text); err != nil {
			return own, err
		}
	}
	day := own
	if day.Before(last) {
		day = last
	}
	return w.openDay(day)
}
