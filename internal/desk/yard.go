package desk

import (
	"context"
	"fmt"

	"tenthpoint/internal/load"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/store"
)

// OpenLoad writes a truck down that has come, and gives back the load's id.
// What is known of it may be amended until the ticket.
func (d *Desk) OpenLoad(ctx context.Context, details load.Details) (id string, err error) {
	err = d.one(ctx, func(w *Work) error {
		id, err = w.OpenLoad(details)
		return err
	})
	return id, err
}

// OpenLoad is [Desk.OpenLoad] as part of the work.
func (w *Work) OpenLoad(details load.Details) (string, error) {
	return w.open(load.Opened{Details: details})
}

func (w *Work) open(f load.Opened) (string, error) {
	if err := w.desk.mayWeigh("open a load"); err != nil {
		return "", err
	}
	if f.Details.Day.IsZero() {
		day, err := w.businessDay()
		if err != nil {
			return "", err
		}
		f.Details.Day = day
	}
	number, err := w.tx.NextNumber("load")
	if err != nil {
		return "", err
	}
	l := &load.Load{ID: fmt.Sprintf("L%d", number)}
	w.loads[l.ID] = l
	_, err = w.happen(l, f)
	return l.ID, err
}

// Amend changes what is known of a load before its ticket.
func (d *Desk) Amend(ctx context.Context, id string, details load.Details) error {
	return d.one(ctx, func(w *Work) error { return w.Amend(id, details) })
}

// Amend is [Desk.Amend] as part of the work.
func (w *Work) Amend(id string, details load.Details) error {
	return w.act(id, load.Amended{Details: details}, w.desk.mayWeigh("change a load"))
}

// Weigh writes a weight down. A weight typed by hand says so and why.
func (d *Desk) Weigh(ctx context.Context, id string, weighing load.Weighing) error {
	return d.one(ctx, func(w *Work) error { return w.Weigh(id, weighing) })
}

// Weigh is [Desk.Weigh] as part of the work.
func (w *Work) Weigh(id string, weighing load.Weighing) error {
	if err := w.desk.mayWeigh("weigh"); err != nil {
		return err
	}
	if weighing.Scale == "" && len(w.desk.profile.Scales) > 0 {
		weighing.Scale = w.desk.profile.Scales[0].ID
	}
	if err := w.desk.fromOurScale(weighing); err != nil {
		return err
	}
	return w.act(id, load.Weighed{Weighing: weighing}, nil)
}

// fromOurScale says why a weight cannot have come from the scale it names. A
// stored tare may be older than the scale.
func (d *Desk) fromOurScale(w load.Weighing) error {
	if w.Source == load.StoredTare || len(d.profile.Scales) == 0 {
		return nil
	}
	scale, ok := d.profile.Scale(w.Scale)
	if !ok {
		return fmt.Errorf("there is no scale %s at this elevator. Name one that is set up, or add it in the set-up", w.Scale)
	}
	if err := scale.CheckWeight(w.Weight); err != nil {
		return fmt.Errorf("%s: %w", w.Which, err)
	}
	return nil
}

// Sample writes the bench's result down.
func (d *Desk) Sample(ctx context.Context, id string, s load.Sample) error {
	return d.one(ctx, func(w *Work) error { return w.Sample(id, s) })
}

// Sample is [Desk.Sample] as part of the work.
func (w *Work) Sample(id string, s load.Sample) error {
	s, err := w.withMeterFlags(s)
	if err != nil {
		return err
	}
	return w.act(id, load.Sampled{Sample: s}, w.desk.maySample())
}

// Accept is a manager's leave to settle a load beyond a limit of its edition.
func (d *Desk) Accept(ctx context.Context, id, limit, reason string) error {
	return d.one(ctx, func(w *Work) error { return w.Accept(id, limit, reason) })
}

// Accept is [Desk.Accept] as part of the work.
func (w *Work) Accept(id, limit, reason string) error {
	return w.act(id, load.Accepted{Limit: limit, Reason: reason}, w.desk.mayManage("Accepting a load beyond a limit"))
}

// Refuse turns a load away.
func (d *Desk) Refuse(ctx context.Context, id, reason string) error {
	return d.one(ctx, func(w *Work) error { return w.Refuse(id, reason) })
}

// Refuse is [Desk.Refuse] as part of the work.
func (w *Work) Refuse(id, reason string) error {
	day, err := w.businessDay()
	if err != nil {
		return err
	}
	return w.act(id, load.Refused{Reason: reason, Day: day}, w.desk.mayWeigh("refuse a load"))
}

// act lets a fact happen to a load, if the person may.
func (w *Work) act(id string, f load.Fact, may error) error {
	if may != nil {
		return may
	}
	l, err := w.load(id)
	if err != nil {
		return err
	}
	_, err = w.happen(l, f)
	return err
}

// Load is one load as it stands.
func (d *Desk) Load(ctx context.Context, id string) (*load.Load, error) {
	facts, err := d.book.FactsOf(ctx, subject(id))
	if err != nil {
		return nil, err
	}
	l, err := Replay(id, facts)
	if err != nil {
		return nil, err
	}
	return l, d.equip(ctx, l)
}

// Yard are the loads that have no ticket yet and were not turned away, in the
// order they came.
func (d *Desk) Yard(ctx context.Context) ([]*load.Load, error) {
	rows, err := d.book.Loads(ctx, store.LoadFilter{Phases: []string{string(load.OnYard), string(load.Ready)}})
	if err != nil {
		return nil, err
	}
	out := make([]*load.Load, 0, len(rows))
	for _, r := range rows {
		l, err := d.Load(ctx, r.ID)
		if err != nil {
			return nil, err
		}
		out = append(out, l)
	}
	sortByOpening(out)
	return out, nil
}

// Net is [load.Load.Net].
func Net(l *load.Load) (net quantity.Amount, known bool) { return l.Net() }
