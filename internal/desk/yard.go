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
func OpenLoad(ctx context.Context, at Actor, details load.Details) (string, error) {
	return result(ctx, at, func(w *Batch) (string, error) {
		return w.open(load.Opened{Details: details})
	})
}

func (w *Batch) open(f load.Opened) (string, error) {
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
	_, err = w.append(l, f)
	return l.ID, err
}

// Amend changes what is known of a load before its ticket.
func Amend(ctx context.Context, at Actor, id string, details load.Details) error {
	return at.do(ctx, func(w *Batch) error {
		return w.act(id, load.Amended{Details: details}, w.desk.mayWeigh("change a load"))
	})
}

// Weigh writes a weight down. A weight typed by hand says so and why.
func Weigh(ctx context.Context, at Actor, id string, weighing load.Weighing) error {
	return at.do(ctx, func(w *Batch) error {
		if err := w.desk.mayWeigh("weigh"); err != nil {
			return err
		}
		if weighing.Scale == "" && len(w.desk.profile.Scales) > 0 {
			weighing.Scale = w.desk.profile.Scales[0].ID
		}
		if err := fromOurScale(w.desk, weighing); err != nil {
			return err
		}
		return w.act(id, load.Weighed{Weighing: weighing}, nil)
	})
}

// fromOurScale says why a weight cannot have come from the scale it names. A
// stored tare may be older than the scale.
func fromOurScale(d *Desk, w load.Weighing) error {
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

// RecordSample writes the bench's result down.
func RecordSample(ctx context.Context, at Actor, id string, s load.Sample) error {
	return at.do(ctx, func(w *Batch) error {
		s, err := w.withMeterFlags(s)
		if err != nil {
			return err
		}
		return w.act(id, load.Sampled{Sample: s}, w.desk.maySample())
	})
}

// Accept is a manager's leave to settle a load beyond a limit of its edition.
func Accept(ctx context.Context, at Actor, id, limit, reason string) error {
	return at.do(ctx, func(w *Batch) error {
		return w.act(id, load.Accepted{Limit: limit, Reason: reason}, w.desk.mayManage("Accepting a load beyond a limit"))
	})
}

// Refuse turns a load away.
func Refuse(ctx context.Context, at Actor, id, reason string) error {
	return at.do(ctx, func(w *Batch) error {
		day, err := w.businessDay()
		if err != nil {
			return err
		}
		return w.act(id, load.Refused{Reason: reason, Day: day}, w.desk.mayWeigh("refuse a load"))
	})
}

// act lets a fact happen to a load, if the person may.
func (w *Batch) act(id string, f load.Fact, may error) error {
	if may != nil {
		return may
	}
	l, err := w.load(id)
	if err != nil {
		return err
	}
	_, err = w.append(l, f)
	return err
}

// Load is one load as it stands.
func Load(ctx context.Context, d *Desk, id string) (*load.Load, error) {
	facts, err := d.book.FactsOf(ctx, subject(id))
	if err != nil {
		return nil, err
	}
	l, err := Replay(id, facts)
	if err != nil {
		return nil, err
	}
	return l, complete(ctx, d, l)
}

// Yard are the loads that have no ticket yet and were not turned away, in the
// order they came.
func Yard(ctx context.Context, d *Desk) ([]*load.Load, error) {
	rows, err := d.book.Loads(ctx, store.LoadFilter{Phases: []string{string(load.OnYard), string(load.Ready)}})
	if err != nil {
		return nil, err
	}
	out := make([]*load.Load, 0, len(rows))
	for _, r := range rows {
		l, err := Load(ctx, d, r.ID)
		if err != nil {
			return nil, err
		}
		out = append(out, l)
	}
	sortByOpening(out)
	return out, nil
}

// Net is gross less tare of the weights in force, over all drafts; known is
// false while one of them is missing or they do not agree in unit.
func Net(l *load.Load) (net quantity.Amount, known bool) {
	for i, draft := range l.Drafts() {
		gross, okGross := l.Weight(load.Gross, draft)
		tare, okTare := l.Weight(load.Tare, draft)
		if !okGross || !okTare || gross.Weight.Unit() != tare.Weight.Unit() {
			return quantity.Amount{}, false
		}
		one := gross.Weight.Sub(tare.Weight)
		if i == 0 {
			net = one
		} else if net.Unit() == one.Unit() {
			net = net.Add(one)
		} else {
			return quantity.Amount{}, false
		}
		known = true
	}
	return net, known
}
