package desk

import (
	"fmt"

	"tenthpoint/internal/load"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/takeover"
)

// pastFacts are what is written down of a past load. Its weights were typed over
// from the old books and say so.
func pastFacts(name string, r takeover.Row) []load.Fact {
	reason := fmt.Sprintf("past load, from line %d of %s", r.Line, name)
	weighed := func(which load.Which, weight quantity.Amount) load.Fact {
		return load.Weighed{Weighing: load.Weighing{Which: which, Weight: weight, Source: load.ByHand, Reason: reason}}
	}
	return []load.Fact{weighed(load.Gross, r.Past.Gross), weighed(load.Tare, r.Past.Tare), load.Sampled{Sample: r.Past.Sample}}
}

// pastReplayed is a past load as it would be, without writing it down.
func pastReplayed(name string, r takeover.Row) (*load.Load, error) {
	stamped := []load.Stamped{{Fact: load.Opened{Details: r.Past.Details}}}
	for _, f := range pastFacts(name, r) {
		stamped = append(stamped, load.Stamped{Fact: f})
	}
	return load.Replay("to be taken over", stamped)
}

// pastLoad writes a past load down and issues its ticket. It counts on its own
// day while the book has nothing later, so that a book begun in mid-season has
// the season's days as they were; otherwise on the day it is taken over. Last is
// the day the load before it counts on.
func (w *Batch) pastLoad(name string, r takeover.Row, last quantity.Date) (quantity.Date, error) {
	id, err := w.open(load.Opened{Details: r.Past.Details})
	if err != nil {
		return last, err
	}
	for _, f := range pastFacts(name, r) {
		if err := w.act(id, f, nil); err != nil {
			return last, err
		}
	}
	l, err := w.load(id)
	if err != nil {
		return last, err
	}
	if err := w.settle(l); err != nil {
		return last, err
	}
	day, err := w.pastDay(r.Past.Details.Day, last)
	if err != nil {
		return last, err
	}
	_, err = w.numberOn(l, day)
	return day, err
}

// pastDay is the day a past load counts on: its own, but no earlier than any
// ticket that has its number already, and after the last day that is closed.
func (w *Batch) pastDay(own, last quantity.Date) (quantity.Date, error) {
	if last.IsZero() {
		if err := w.renewRows(); err != nil {
			return own, err
		}
		var text string
		if err := w.tx.QueryRow("SELECT coalesce(max(issued_day), '') FROM loads").Scan(&text); err != nil {
			return own, err
		}
		var err error
		if last, err = date(text); err != nil {
			return own, err
		}
	}
	day := own
	if day.Before(last) {
		day = last
	}
	return w.openDay(day)
}
