// Package receipts holds the acts of a scale house on warehouse receipts. Each is a manager's, one
// transaction, whole or not at all.
package receipts

import (
	"context"
	"strings"

	"tenthpoint/internal/message"
	"tenthpoint/internal/numbering"
	"tenthpoint/internal/office/receipts"
	"tenthpoint/internal/paysheet"
	"tenthpoint/internal/receipt"
	"tenthpoint/internal/scalehouse"
)

// Issue issues a receipt for grain in open storage.
func Issue(ctx context.Context, d *scalehouse.Desk, o receipts.Order) (r receipt.Receipt, err error) {
	if err := d.MayManage("Issuing a warehouse receipt"); err != nil {
		return r, err
	}
	err = d.Batch(ctx, func(w *scalehouse.Batch) error {
		around, err := aroundIn(w, o)
		if err != nil {
			return err
		}
		if r, err = receipts.Draft(o, around); err != nil {
			return err
		}
		r, err = put(ctx, w, r)
		return err
	})
	return r, err
}

func aroundIn(w *scalehouse.Batch, o receipts.Order) (around receipts.Around, err error) {
	for _, chosen := range o.Tickets {
		l, err := scalehouse.TicketIn(w, chosen.Number)
		if err != nil {
			return around, err
		}
		around.Tickets = append(around.Tickets, l)
	}
	if around.Receipts, err = scalehouse.RecordsIn[receipt.Receipt](w); err != nil {
		return around, err
	}
	around.Sheets, err = scalehouse.RecordsIn[paysheet.Sheet](w)
	return around, err
}

// put gives a receipt the next number and writes it.
func put(ctx context.Context, w *scalehouse.Batch, r receipt.Receipt) (receipt.Receipt, error) {
	var err error
	if r.Day, err = w.BusinessDay(); err != nil {
		return r, err
	}
	r.By = w.Desk().Signature()
	if r.Number, err = scalehouse.NextIn(w, numbering.Receipt); err != nil {
		return r, err
	}
	return r, scalehouse.PutOwned(ctx, w, r.ID(), nil, r)
}

// Blank leaves the next number blank on purpose, such as for a form that was spoiled.
func Blank(ctx context.Context, d *scalehouse.Desk, reason string) (r receipt.Receipt, err error) {
	if err := d.MayManage("Leaving a receipt blank"); err != nil {
		return r, err
	}
	if reason = strings.TrimSpace(reason); reason == "" {
		return r, message.Incomplete.Errorf("a number is left blank for a reason; write it")
	}
	err = d.Batch(ctx, func(w *scalehouse.Batch) error {
		r, err = put(ctx, w, receipt.Receipt{Blank: reason})
		return err
	})
	return r, err
}

// Surrender takes a receipt in: its grain is in open storage again, to be sold or delivered.
func Surrender(ctx context.Context, d *scalehouse.Desk, number int64, reason string) (receipt.Receipt, error) {
	return end(ctx, d, number, receipt.Surrendered, reason)
}

// Cancel ends a receipt that was an error.
func Cancel(ctx context.Context, d *scalehouse.Desk, number int64, reason string) (receipt.Receipt, error) {
	return end(ctx, d, number, receipt.Cancelled, reason)
}

func end(ctx context.Context, d *scalehouse.Desk, number int64, how receipt.How, reason string) (r receipt.Receipt, err error) {
	if err := d.MayManage("Ending a warehouse receipt"); err != nil {
		return r, err
	}
	err = d.Batch(ctx, func(w *scalehouse.Batch) error {
		r, err = endIn(ctx, w, number, how, reason)
		return err
	})
	return r, err
}

func endIn(ctx context.Context, w *scalehouse.Batch, number int64, how receipt.How, reason string) (receipt.Receipt, error) {
	day, err := w.BusinessDay()
	if err != nil {
		return receipt.Receipt{}, err
	}
	all, err := scalehouse.RecordsIn[receipt.Receipt](w)
	if err != nil {
		return receipt.Receipt{}, err
	}
	for _, was := range all {
		if was.Number != number {
			continue
		}
		is, err := was.End(receipt.Ended{How: how, Day: day, By: w.Desk().Signature(), Reason: strings.TrimSpace(reason)})
		if err != nil {
			return was, err
		}
		return is, scalehouse.PutOwned(ctx, w, is.ID(), was, is)
	}
	return receipt.Receipt{}, receipts.NoReceipt(number)
}

// Replace issues another receipt in the place of a lost one, which bears its number and day.
func Replace(ctx context.Context, d *scalehouse.Desk, number int64, reason string) (next receipt.Receipt, err error) {
	if err := d.MayManage("Replacing a lost receipt"); err != nil {
		return next, err
	}
	err = d.Batch(ctx, func(w *scalehouse.Batch) error {
		lost, err := endIn(ctx, w, number, receipt.Lost, reason)
		if err != nil {
			return err
		}
		next = lost
		next.Ended, next.Replaces, next.OldDay = nil, lost.Number, lost.Day
		next, err = put(ctx, w, next)
		return err
	})
	return next, err
}
