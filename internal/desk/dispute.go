package desk

import (
	"context"
	"encoding/json"
	"fmt"

	"tenthpoint/internal/dispute"
	"tenthpoint/internal/journal"
	"tenthpoint/internal/store"
)

// Raise opens a dispute about a ticket. Its due day follows from the house's
// rule set and the day of the ticket.
func (d *Desk) Raise(ctx context.Context, f dispute.Raised) (id string, err error) {
	if err := d.mayWeigh("raise a dispute"); err != nil {
		return "", err
	}
	rule, err := dispute.RuleFor(d.profile.Rules)
	if err != nil {
		return "", err
	}
	err = d.one(ctx, func(w *Work) error {
		l, err := w.ticket(f.Ticket)
		if err != nil {
			return err
		}
		if f.Day, err = w.businessDay(); err != nil {
			return err
		}
		f.Rule, f.Due = rule.Name, rule.Due(l.IssuedDay)
		number, err := w.tx.NextNumber("dispute")
		if err != nil {
			return err
		}
		id = fmt.Sprintf("D%d", number)
		return w.dispute(id, f)
	})
	return id, err
}

// GoOn writes the next fact of a dispute down: the sample sent, the result, the
// decision. A decision is a manager's.
func (d *Desk) GoOn(ctx context.Context, id string, f dispute.Fact) error {
	if err := d.mayWeigh("go on with a dispute"); err != nil {
		return err
	}
	if decided, ok := f.(dispute.Decided); ok {
		if err := d.mayManage("Deciding a dispute"); err != nil {
			return err
		}
		return d.one(ctx, func(w *Work) error { return w.decide(id, decided) })
	}
	return d.one(ctx, func(w *Work) error { return w.dispute(id, f) })
}

// decide asks that the corrected ticket is there and corrects the right one.
func (w *Work) decide(id string, f dispute.Decided) error {
	d, err := w.disputeNow(id)
	if err != nil {
		return err
	}
	if f.Corrected != 0 {
		l, err := w.ticket(f.Corrected)
		if err != nil {
			return err
		}
		if l.Corrects != d.Raised.Ticket {
			return fmt.Errorf("ticket %d does not correct ticket %d, which dispute %s is about. Correct that ticket first", f.Corrected, d.Raised.Ticket, id)
		}
	}
	return w.dispute(id, f)
}

func (w *Work) dispute(id string, f dispute.Fact) error {
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
	fact, err := w.tx.Append(w.draft(f.Kind(), "dispute "+id, body))
	if err != nil {
		return err
	}
	now, err := journal.Canonical(d)
	if err != nil {
		return err
	}
	return w.tx.PutStanding(store.Standing{Kind: "dispute", ID: id, Seq: fact.Seq, Body: now})
}

// disputeNow adds a dispute's facts up inside the transaction.
func (w *Work) disputeNow(id string) (*dispute.Dispute, error) {
	facts, err := w.tx.FactsOf("dispute " + id)
	if err != nil {
		return nil, err
	}
	d := &dispute.Dispute{ID: id}
	for _, fact := range facts {
		f, err := dispute.Read(fact.Kind, fact.Body)
		if err != nil {
			return nil, err
		}
		if err := d.Apply(f); err != nil {
			return nil, err
		}
	}
	return d, nil
}

// Disputes are all disputes, open ones first.
func (d *Desk) Disputes(ctx context.Context) ([]dispute.Dispute, error) {
	rows, err := d.book.StandingOf(ctx, "dispute")
	if err != nil {
		return nil, err
	}
	var open, closed []dispute.Dispute
	for _, row := range rows {
		var one dispute.Dispute
		if err := json.Unmarshal(row.Body, &one); err != nil {
			return nil, fmt.Errorf("dispute %s cannot be read: %w", row.ID, err)
		}
		if one.Phase == dispute.Closed {
			closed = append(closed, one)
		} else {
			open = append(open, one)
		}
	}
	return append(open, closed...), nil
}
