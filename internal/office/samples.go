package office

import (
	"cmp"
	"context"
	"fmt"
	"slices"

	"tenthpoint/internal/book"
	"tenthpoint/internal/dispute"
	"tenthpoint/internal/message"
	"tenthpoint/internal/moisture"
	"tenthpoint/internal/quantity"
)

// Retained is the kept part of a load's sample. A load that takes a ticket's
// place carries its sample on: the sample stays one, known by the load it was taken
// from.
type Retained struct {
	moisture.Sample
	// Load is the load it was taken from; Now is the load whose ticket is valid.
	Load, Now  string
	TicketNo   int64
	GrowerName string
	Until      quantity.Date
}

// SampleDiscarded is a retained sample that is no longer there.
type SampleDiscarded struct {
	Load   string        `json:"load"`
	Number string        `json:"number,omitempty"`
	Place  string        `json:"place"`
	Until  quantity.Date `json:"until"` // the last day it had to be kept
	Day    quantity.Date `json:"day"`
}

// Kind names the fact in the journal.
func (SampleDiscarded) Kind() string { return "sample.discarded" }

// SamplesDue returns the retained samples that may be discarded on a day, the longest due first.
// Samples of tickets under dispute are not among them.
func SamplesDue(ctx context.Context, d Desk, day quantity.Date) ([]Retained, error) {
	all, err := retainedSamples(ctx, d, day.AddDays(-1))
	if err != nil {
		return nil, err
	}
	return slices.DeleteFunc(all, func(r Retained) bool { return !r.DueOn(day) }), nil
}

// SamplesKept are all retained samples that are still there, the soonest due
// first.
func SamplesKept(ctx context.Context, d Desk) ([]Retained, error) {
	return retainedSamples(ctx, d, quantity.Date{})
}

// RetainedSample is the retained sample of a number, or of a load.
func RetainedSample(ctx context.Context, d Desk, name string) (Retained, error) {
	all, err := SamplesKept(ctx, d)
	if err != nil {
		return Retained{}, err
	}
	return SampleNamed(all, name)
}

// SampleNamed is the sample of a number, or of a load, among those kept.
func SampleNamed(all []Retained, name string) (Retained, error) {
	var found []Retained
	for _, r := range all {
		if r.Number == name || r.Load == name || r.Now == name {
			found = append(found, r)
		}
	}
	switch len(found) {
	case 1:
		return found[0], nil
	case 0:
		return Retained{}, message.NotFound.Errorf("no sample %s is kept. Look it up in the list of samples kept, by its number or its load", name)
	}
	return Retained{}, message.Invalid.Errorf("%d samples are called %s, of loads %s and %s. Name the load", len(found), name, found[0].Load, found[1].Load)
}

// retainedSamples lists the samples still kept, those to be kept no longer than a day,
// or with no day all of them.
func retainedSamples(ctx context.Context, d Desk, until quantity.Date) ([]Retained, error) {
	origin, err := d.Reader().Origins(ctx)
	if err != nil {
		return nil, err
	}
	held, err := heldSamples(ctx, d, origin)
	if err != nil {
		return nil, err
	}
	rows, err := d.Reader().Shelf(ctx, book.ShelfFilter{Until: until.String(), Gone: SampleDiscarded{}.Kind()})
	if err != nil {
		return nil, err
	}
	last := map[string]Retained{} // by the load taken from: a correction has the last word
	for _, row := range rows {
		r, err := onShelf(row)
		if err != nil {
			return nil, err
		}
		if from, corrects := origin[r.Now]; corrects {
			r.Load = from
			if gone, err := isDiscarded(ctx, d, from); err != nil {
				return nil, err
			} else if gone {
				continue
			}
		}
		last[r.Load] = r
	}
	var out []Retained
	for from, r := range last {
		r.Held = held[from]
		out = append(out, r)
	}
	slices.SortFunc(out, func(a, b Retained) int {
		return cmp.Or(a.Until.Cmp(b.Until), cmp.Compare(LoadNumber(a.Load), LoadNumber(b.Load)))
	})
	return out, nil
}

// isDiscarded reports whether the sample taken from a load is no longer there.
func isDiscarded(ctx context.Context, d Desk, load string) (bool, error) {
	facts, err := d.Reader().FactsOf(ctx, SampleDiscarded{}.Kind()+" "+load)
	return len(facts) > 0, err
}

// heldSamples are the samples that open disputes need, with the dispute's name.
func heldSamples(ctx context.Context, d Desk, origin map[string]string) (map[string]message.Kept, error) {
	disputes, err := Disputes(ctx, d)
	if err != nil {
		return nil, err
	}
	out := map[string]message.Kept{}
	for _, one := range disputes {
		if one.Phase == dispute.Closed {
			continue
		}
		rows, err := d.Reader().Loads(ctx, book.LoadFilter{Ticket: one.Raised.Ticket})
		if err != nil {
			return nil, err
		}
		for _, r := range rows {
			from, corrects := origin[r.ID]
			if !corrects {
				from = r.ID
			}
			out[from] = message.Kept{Text: message.New("dispute %v about ticket %d", one.ID, one.Raised.Ticket)}
		}
	}
	return out, nil
}

// onShelf converts a row of the read model.
func onShelf(row book.ShelfRow) (Retained, error) {
	r := Retained{Load: row.Load, Now: row.Load, TicketNo: row.Ticket, GrowerName: row.GrowerName}
	r.Number, r.Crop, r.Place = row.Sample, row.Commodity, row.Kept
	var err error
	if r.Taken, err = ListedDay(row.Day); err != nil {
		return r, message.Errorf("load %s: %w", row.Load, err)
	}
	if r.Until, err = ListedDay(row.Until); err != nil {
		return r, message.Errorf("load %s: %w", row.Load, err)
	}
	r.Keep = moisture.Retention{Days: r.Taken.DaysUntil(r.Until)}
	if row.Ticket > 0 {
		r.Ticket = fmt.Sprint(row.Ticket)
	}
	return r, nil
}
