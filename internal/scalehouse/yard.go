package scalehouse

import (
	"context"
	"fmt"

	"tenthpoint/internal/load"
	"tenthpoint/internal/message"
	"tenthpoint/internal/numbering"
	"tenthpoint/internal/truckscale"
)

// OpenLoad records a truck that has come, and returns the load's id. What is known of it may be
// amended until the ticket.
func OpenLoad(ctx context.Context, at Actor, details load.Details) (string, error) {
	return result(ctx, at, func(w *Batch) (string, error) {
		return w.open(load.Opened{Details: details})
	})
}

func (w *Batch) open(f load.Opened) (string, error) {
	if err := w.desk.MayWeigh("open a load"); err != nil {
		return "", err
	}
	if f.Details.Day.IsZero() {
		day, err := w.BusinessDay()
		if err != nil {
			return "", err
		}
		f.Details.Day = day
	}
	number, err := w.tx.NextNumber(numbering.Load)
	if err != nil {
		return "", err
	}
	l := &load.Load{ID: fmt.Sprintf("L%d", number)}
	w.loads[l.ID] = l
	_, err = w.append(l, f)
	return l.ID, err
}

// Amend changes the details of a load before its ticket.
func Amend(ctx context.Context, at Actor, id string, details load.Details) error {
	return at.do(ctx, func(w *Batch) error {
		return w.act(id, load.Amended{Details: details}, w.desk.MayWeigh("change a load"))
	})
}

// Weigh records a weight. A weight typed by hand says so and why.
func Weigh(ctx context.Context, at Actor, id string, weighing load.Weighing) error {
	return at.do(ctx, func(w *Batch) error {
		if err := w.desk.MayWeigh("weigh"); err != nil {
			return err
		}
		if weighing.Scale == "" && len(w.desk.profile.Scales) > 0 {
			weighing.Scale = w.desk.profile.Scales[0].ID
		}
		if err := fromOurScale(w.desk, weighing); err != nil {
			return err
		}
		if err := inService(w, weighing); err != nil {
			return err
		}
		return w.act(id, load.Weighed{Weighing: weighing}, nil)
	})
}

// fromOurScale returns why a weight cannot have come from the scale it names. A stored tare may be
// older than the scale.
func fromOurScale(d *Desk, w load.Weighing) error {
	if w.Source == load.StoredTare || len(d.profile.Scales) == 0 {
		return nil
	}
	scale, ok := d.profile.Scale(w.Scale)
	if !ok {
		return message.NotFound.Errorf("there is no scale %s at this elevator. Name one that is set up, or add it in the set-up", w.Scale)
	}
	if err := scale.CheckWeight(w.Weight); err != nil {
		return message.Errorf("%s: %w", w.Which, err)
	}
	return nil
}

// RecordSample records the bench's result.
func RecordSample(ctx context.Context, at Actor, id string, s load.Sample) error {
	return at.do(ctx, func(w *Batch) error {
		s, err := w.withMeterFlags(s)
		if err != nil {
			return err
		}
		return w.act(id, load.Sampled{Sample: s}, MaySample(w.desk))
	})
}

// Accept is a manager's leave to settle a load beyond a limit of its edition.
func Accept(ctx context.Context, at Actor, id, limit, reason string) error {
	return at.do(ctx, func(w *Batch) error {
		return w.act(id, load.Accepted{Limit: limit, Reason: reason}, w.desk.MayManage("Accepting a load beyond a limit"))
	})
}

// Withdraw takes back a load that was never weighed, such as one written down for the wrong truck.
func Withdraw(ctx context.Context, at Actor, id string) error {
	return at.do(ctx, func(w *Batch) error {
		return w.act(id, load.Withdrawn{}, w.desk.MayWeigh("withdraw a load"))
	})
}

// Refuse turns a load away.
func Refuse(ctx context.Context, at Actor, id, reason string) error {
	return at.do(ctx, func(w *Batch) error {
		day, err := w.BusinessDay()
		if err != nil {
			return err
		}
		return w.act(id, load.Refused{Reason: reason, Day: day}, w.desk.MayWeigh("refuse a load"))
	})
}

// inService refuses a weight from a scale that is out of service. A stored tare was
// taken before.
func inService(w *Batch, weighing load.Weighing) error {
	if weighing.Source == load.StoredTare {
		return nil
	}
	all, err := RecordsIn[truckscale.Service](w)
	if err != nil {
		return err
	}
	for _, s := range all {
		if s.Scale == weighing.Scale && s.Out {
			return message.Refused.Errorf("scale %s is out of service since %s: %v. No weight is taken from it; a manager puts it back", s.Scale, s.Day, s.Reason)
		}
	}
	return nil
}
