package money

import (
	"context"
	"slices"
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
		sheets, before, err := moneyIn(w)
		if err != nil {
			return err
		}
		at := slices.IndexFunc(sheets, func(s paysheet.Sheet) bool { return s.Number == p.Sheet })
		if at < 0 {
			return message.NotFound.Errorf("there is no settlement sheet %d here", p.Sheet)
		}
		if err := sheets[at].Pay(p, paysheet.BalancesOf(sheets, before)[p.Sheet]); err != nil {
			return err
		}
		if p.Number, err = scalehouse.NextIn(w, numbering.Payment); err != nil {
			return err
		}
		return scalehouse.SetRecord(ctx, w, p.ID(), p)
	})
	return p, err
}

// moneyIn are the settlement sheets and payments as a batch has left them so far.
func moneyIn(w *scalehouse.Batch) (sheets []paysheet.Sheet, payments []paysheet.Payment, err error) {
	if sheets, err = scalehouse.RecordsIn[paysheet.Sheet](w); err != nil {
		return nil, nil, err
	}
	payments, err = scalehouse.RecordsIn[paysheet.Payment](w)
	return sheets, payments, err
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
		sheets, all, err := moneyIn(w)
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
			if err := notTakenBack(sheets, all, p); err != nil {
				return err
			}
			p.Voided = &paysheet.Voided{Day: d.Today(), By: d.Signature(), Reason: reason}
			return scalehouse.SetRecord(ctx, w, p.ID(), p)
		}
		return message.NotFound.Errorf("there is no payment %d here", number)
	})
}

// notTakenBack refuses to void a payment on a void sheet that a later sheet took back: the grower
// would have paid it twice.
func notTakenBack(sheets []paysheet.Sheet, payments []paysheet.Payment, p paysheet.Payment) error {
	left := paysheet.BalancesOf(sheets, payments)[p.Sheet].Add(p.Amount)
	for _, s := range sheets {
		if s.Number == p.Sheet && !s.InForce() && left.Sign() > 0 {
			return message.Refused.Errorf("payment %d was made on settlement sheet %d, which is void, and a later sheet took it back. Void that sheet first", p.Number, s.Number)
		}
	}
	return nil
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
