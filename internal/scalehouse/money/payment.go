package money

import (
	"context"
	"strings"

	"tenthpoint/internal/message"
	"tenthpoint/internal/numbering"
	"tenthpoint/internal/paysheet"
	"tenthpoint/internal/scalehouse"
)

// Pay writes down what was paid on a settlement sheet: a manager's act.
func Pay(ctx context.Context, d *scalehouse.Desk, p paysheet.Payment) (paysheet.Payment, error) {
	if err := d.MayManage("Writing a payment down"); err != nil {
		return p, err
	}
	p.By = d.Signature()
	if p.Day.After(d.Today()) {
		return p, message.Refused.Errorf("the payment is of %s, and today is %s. Write it down when it is made", p.Day, d.Today())
	}
	err := d.Batch(ctx, func(w *scalehouse.Batch) error {
		if err := scalehouse.OpenDay(w, p.Day); err != nil {
			return err
		}
		s, err := sheetIn(w, p.Sheet)
		if err != nil {
			return err
		}
		before, err := scalehouse.RecordsIn[paysheet.Payment](w)
		if err != nil {
			return err
		}
		if err := s.Pay(p, paysheet.PaidOn(before, p.Sheet)); err != nil {
			return err
		}
		if p.Number, err = scalehouse.NextIn(w, numbering.Payment); err != nil {
			return err
		}
		return scalehouse.SetRecord(ctx, w, p.ID(), p)
	})
	return p, err
}

func sheetIn(w *scalehouse.Batch, number int64) (paysheet.Sheet, error) {
	all, err := scalehouse.RecordsIn[paysheet.Sheet](w)
	if err != nil {
		return paysheet.Sheet{}, err
	}
	for _, s := range all {
		if s.Number == number {
			return s, nil
		}
	}
	return paysheet.Sheet{}, message.NotFound.Errorf("there is no settlement sheet %d here", number)
}

// VoidPayment ends a payment that was stopped or written down wrongly: a manager's act. Its number
// stays with it.
func VoidPayment(ctx context.Context, d *scalehouse.Desk, number int64, reason string) error {
	if err := d.MayManage("Voiding a payment"); err != nil {
		return err
	}
	if reason = strings.TrimSpace(reason); reason == "" {
		return message.Invalid.Errorf("a payment is voided for a reason; write it")
	}
	return d.Batch(ctx, func(w *scalehouse.Batch) error {
		all, err := scalehouse.RecordsIn[paysheet.Payment](w)
		if err != nil {
			return err
		}
		for _, p := range all {
			switch {
			case p.Number != number:
				continue
			case !p.InForce():
				return message.Refused.Errorf("payment %d is void since %s", number, p.Voided.Day)
			}
			p.Voided = &paysheet.Voided{Day: d.Today(), By: d.Signature(), Reason: reason}
			return scalehouse.SetRecord(ctx, w, p.ID(), p)
		}
		return message.NotFound.Errorf("there is no payment %d here", number)
	})
}

// unpaid refuses to void a sheet on which money was paid.
func unpaid(w *scalehouse.Batch, sheet int64) error {
	all, err := scalehouse.RecordsIn[paysheet.Payment](w)
	if err != nil {
		return err
	}
	for _, p := range all {
		if p.InForce() && p.Sheet == sheet {
			return message.Refused.Errorf("payment %d was made on settlement sheet %d. Void the payment first", p.Number, sheet)
		}
	}
	return nil
}
