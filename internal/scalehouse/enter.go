package scalehouse

import (
	"context"

	"tenthpoint/internal/entry"
	"tenthpoint/internal/load"
)

// Enter writes the facts of a form into the book, all or none, and returns the
// load's id; an empty id opens a load.
func Enter(ctx context.Context, at Actor, id string, f entry.Facts) (string, error) {
	return result(ctx, at, func(w *Batch) (string, error) {
		id, err := w.openOrAmend(ctx, id, f.Details) // an act may be run again: the caller's id stays
		if err != nil {
			return "", err
		}
		for _, one := range f.Weighed {
			if err := Weigh(ctx, w, id, one); err != nil {
				return id, err
			}
		}
		if f.Sample != nil {
			if err := RecordSample(ctx, w, id, *f.Sample); err != nil {
				return id, err
			}
		}
		for _, one := range f.Accepted {
			if err := Accept(ctx, w, id, one.Limit, one.Reason); err != nil {
				return id, err
			}
		}
		for _, one := range f.Answered {
			if err := Answer(ctx, w, id, one.Guard, one.Reason); err != nil {
				return id, err
			}
		}
		return id, nil
	})
}

func (w *Batch) openOrAmend(ctx context.Context, id string, d *load.Details) (string, error) {
	switch {
	case id != "" && d == nil:
		return id, nil
	case id != "":
		return id, Amend(ctx, w, id, *d)
	case d == nil:
		d = &load.Details{}
	}
	return OpenLoad(ctx, w, *d)
}
