package desk

import (
	"tenthpoint/internal/load"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/takeover"
)

// pastFacts are what is written down of a past load once it is open. Its weights
// were typed over from the old books and say so.
func pastFacts(p *takeover.Past) []load.Fact {
	var out []load.Fact
	for _, w := range p.Facts.Weighed {
		out = append(out, load.Weighed{Weighing: w})
	}
	return append(out, load.Sampled{Sample: *p.Facts.Sample})
}

// pastLoad writes a past load down and issues its ticket. It counts on its own
// day while the book has nothing later, so that a book begun in mid-season has
// the season's days as they were; otherwise on the day it is taken over. Last is
// the day the load before it counts on.
func (w *Work) pastLoad(r takeover.Row, last quantity.Date) (quantity.Date, error) {
	id, err := w.open(load.Opened{Details: *r.Past.Facts.Details})
	if err != nil {
		return last, err
	}
	for _, f := range pastFacts(r.Past) {
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
	day, err := w.pastDay(r.Past.Facts.Details.Day, last)
	if err != nil {
		return last, err
	}
	_, err = w.numberOn(l, day)
	return day, err
}

// pastDay is the day a past load counts on: its own, but no earlier than any
// ticket that has its number already, and after the last day that is closed.
func (w *Work) pastDay(own, last quantity.Date) (quantity.Date, error) {
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
