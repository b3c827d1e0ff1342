// Package disputes has the acts on a disagreement about a ticket.
package disputes

import (
	"context"
	"fmt"

	"tenthpoint/internal/dispute"
	"tenthpoint/internal/load"
	"tenthpoint/internal/message"
	"tenthpoint/internal/numbering"
	"tenthpoint/internal/office"
	"tenthpoint/internal/scalehouse"
)

// Raise opens a dispute about a ticket. Its due day follows from the rule that
// holds for it and the day the grain was delivered.
func Raise(ctx context.Context, d *scalehouse.Desk, f dispute.Raised) (id string, err error) {
	if err := d.MayWeigh("raise a dispute"); err != nil {
		return "", err
	}
	err = d.Batch(ctx, func(w *scalehouse.Batch) error {
		l, err := scalehouse.IssuedIn(w, f.Ticket)
		if err != nil {
			return err
		}
		if f.Day, err = w.BusinessDay(); err != nil {
			return err
		}
		rule, err := office.DisputeRule(ctx, d, l, f.Official)
		if err != nil {
			return err
		}
		f.Rule, f.Due = rule.Name, rule.Until(l.Details.Day, l.IssuedDay)
		number, err := scalehouse.NextIn(w, numbering.Dispute)
		if err != nil {
			return err
		}
		id = fmt.Sprintf("D%d", number)
		return continued(w, id, f)
	})
	return id, err
}

// Continue records the next fact of a dispute: the sample sent, the result, the decision. A
// decision is a manager's.
func Continue(ctx context.Context, d *scalehouse.Desk, id string, f dispute.Fact) error {
	if err := d.MayWeigh("go on with a dispute"); err != nil {
		return err
	}
	if decided, ok := f.(dispute.Decided); ok {
		if err := d.MayManage("Deciding a dispute"); err != nil {
			return err
		}
		return d.Batch(ctx, func(w *scalehouse.Batch) error { return decide(w, id, decided) })
	}
	return d.Batch(ctx, func(w *scalehouse.Batch) error { return continued(w, id, f) })
}

// decide requires that the corrected ticket exists and replaced the right one, directly or by way
// of others.
func decide(w *scalehouse.Batch, id string, f dispute.Decided) error {
	d, err := disputeIn(w, id)
	if err != nil {
		return err
	}
	if f.Corrected != 0 {
		l, err := scalehouse.IssuedIn(w, f.Corrected)
		if err != nil {
			return err
		}
		takes, err := tookPlaceOf(w, l, d.Raised.Ticket)
		if err != nil {
			return err
		}
		if !takes {
			return message.Refused.Errorf("ticket %d does not correct ticket %d, which dispute %s is about. Correct that ticket first", f.Corrected, d.Raised.Ticket, id)
		}
		if err := carriesResult(w, d, l); err != nil {
			return err
		}
	}
	return continued(w, id, f)
}

// carriesResult refuses a ticket that is to settle a dispute about a moisture and still
// has the moisture in dispute, though the other test found another. What is agreed on
// may lie between the two.
func carriesResult(w *scalehouse.Batch, d *dispute.Dispute, corrected *load.Load) error {
	if d.Raised.About != "moisture" || d.Resulted == nil || d.Resulted.Figure == nil {
		return nil
	}
	disputed, err := scalehouse.IssuedIn(w, d.Raised.Ticket)
	if err != nil {
		return err
	}
	was, now := disputed.Sample.Moisture, corrected.Sample.Moisture
	if was == nil || now == nil || !now.Percent.Equal(was.Percent) || now.Percent.Equal(*d.Resulted.Figure) {
		return nil
	}
	return message.Refused.Errorf("ticket %d has the moisture %s, as ticket %d has, and the result of dispute %s is %s. Correct the moisture first, or let the ticket stand", corrected.Number, now.Percent, d.Raised.Ticket, d.ID, *d.Resulted.Figure)
}

// tookPlaceOf reports whether a load's ticket corrects or reissues a ticket, or
// one that did so before it.
func tookPlaceOf(w *scalehouse.Batch, l *load.Load, number int64) (bool, error) {
	for l.InPlaceOf() > 0 {
		if l.InPlaceOf() == number {
			return true, nil
		}
		before, err := scalehouse.IssuedIn(w, l.InPlaceOf())
		if err != nil {
			return false, err
		}
		l = before
	}
	return false, nil
}

func continued(w *scalehouse.Batch, id string, f dispute.Fact) error {
	d, err := disputeIn(w, id)
	if err != nil {
		return err
	}
	if err := d.Apply(f); err != nil {
		return err
	}
	return scalehouse.AppendIn(w, f.Kind(), office.DisputeSubject+id, f)
}

// disputeIn adds a dispute's facts up inside the transaction.
func disputeIn(w *scalehouse.Batch, id string) (*dispute.Dispute, error) {
	facts, err := scalehouse.FactsIn(w, office.DisputeSubject+id)
	if err != nil {
		return nil, err
	}
	return office.ReplayDispute(id, facts)
}
