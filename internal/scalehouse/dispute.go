package scalehouse

import (
	"context"
	"fmt"

	"tenthpoint/internal/dispute"
	"tenthpoint/internal/journal"
	"tenthpoint/internal/load"
	"tenthpoint/internal/message"
	"tenthpoint/internal/office"
)

// RaiseDispute opens a dispute about a ticket. Its due day follows from the rule that
// holds for it and the day the grain was delivered.
func RaiseDispute(ctx context.Context, d *Desk, f dispute.Raised) (id string, err error) {
	if err := d.mayWeigh("raise a dispute"); err != nil {
		return "", err
	}
	err = d.do(ctx, func(w *Batch) error {
		l, err := w.ticket(f.Ticket)
		if err != nil {
			return err
		}
		if f.Day, err = w.businessDay(); err != nil {
			return err
		}
		rule, err := office.DisputeRule(ctx, d, l, f.Official)
		if err != nil {
			return err
		}
		f.Rule, f.Due = rule.Name, rule.Until(l.Details.Day, l.IssuedDay)
		number, err := w.tx.NextNumber("dispute")
		if err != nil {
			return err
		}
		id = fmt.Sprintf("D%d", number)
		return w.dispute(id, f)
	})
	return id, err
}

// ContinueDispute records the next fact of a dispute: the sample sent, the result, the decision. A
// decision is a manager's.
func ContinueDispute(ctx context.Context, d *Desk, id string, f dispute.Fact) error {
	if err := d.mayWeigh("go on with a dispute"); err != nil {
		return err
	}
	if decided, ok := f.(dispute.Decided); ok {
		if err := d.MayManage("Deciding a dispute"); err != nil {
			return err
		}
		return d.do(ctx, func(w *Batch) error { return w.decide(id, decided) })
	}
	return d.do(ctx, func(w *Batch) error { return w.dispute(id, f) })
}

// decide requires that the corrected ticket exists and replaced the right one, directly or by way
// of others.
func (w *Batch) decide(id string, f dispute.Decided) error {
	d, err := w.disputeNow(id)
	if err != nil {
		return err
	}
	if f.Corrected != 0 {
		l, err := w.ticket(f.Corrected)
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
	return w.dispute(id, f)
}

// carriesResult refuses a ticket that is to settle a dispute about a moisture and still
// has the moisture in dispute, though the other test found another. What is agreed on
// may lie between the two.
func carriesResult(w *Batch, d *dispute.Dispute, corrected *load.Load) error {
	if d.Raised.About != "moisture" || d.Resulted == nil || d.Resulted.Figure == nil {
		return nil
	}
	disputed, err := w.ticket(d.Raised.Ticket)
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
func tookPlaceOf(w *Batch, l *load.Load, number int64) (bool, error) {
	for l.InPlaceOf() > 0 {
		if l.InPlaceOf() == number {
			return true, nil
		}
		before, err := w.ticket(l.InPlaceOf())
		if err != nil {
			return false, err
		}
		l = before
	}
	return false, nil
}

func (w *Batch) dispute(id string, f dispute.Fact) error {
	d, err := w.disputeNow(id)
	if err != nil {
		return err
	}
	if err := d.Apply(f); err != nil {
		return err
	}
	body, err := journal.Canonical(f)
	if err != nil {
		return err
	}
	_, err = enterFact(w, w.draft(f.Kind(), office.DisputeSubject+id, body))
	return err
}

// disputeNow adds a dispute's facts up inside the transaction.
func (w *Batch) disputeNow(id string) (*dispute.Dispute, error) {
	facts, err := w.tx.FactsOf(office.DisputeSubject + id)
	if err != nil {
		return nil, err
	}
	return office.ReplayDispute(id, facts)
}
