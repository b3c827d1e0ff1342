package main

import (
	"context"
	"tenthpoint/internal/load"
	"tenthpoint/internal/scalehouse"
)

// inPlaceFlags say what a load that takes a ticket's place has otherwise.
type inPlaceFlags struct {
	detailFlags
	weightFlags
	sampleFlags
}

// nothing reports whether nothing is said to be otherwise.
func (f inPlaceFlags) nothing() bool {
	return !f.changed() && !f.tested() && len(f.Gross)+len(f.Tare) == 0 && !f.StoredTare
}

// otherwise is what they say, read.
type otherwise struct {
	details *load.Details // nil leaves them
	weights []load.Weighing
	sample  load.Sample
	limits  []load.Accepted
}

func (f inPlaceFlags) read(p *post, old *load.Load) (out otherwise, err error) {
	d, err := f.detailFlags.apply(p, old.Details)
	if err != nil {
		return out, err
	}
	if f.changed() {
		out.details = &d
	}
	if out.weights, err = f.weighings(p, d.Truck); err != nil {
		return out, err
	}
	if f.tested() {
		if out.sample, err = f.sampleFlags.apply(p, d, old.Sample); err != nil {
			return out, err
		}
	}
	out.limits, err = f.accepted()
	return out, err
}

// noted writes down on a load what is otherwise.
func (o otherwise) noted(ctx context.Context, w *scalehouse.Batch, id string) error {
	if o.details != nil {
		if err := scalehouse.Amend(ctx, w, id, *o.details); err != nil {
			return err
		}
	}
	return noted(ctx, w, id, o.weights, o.sample, o.limits)
}
