// Package confirming has the acts by which depositors confirm their balances: the sample that is drawn,
// which is a manager's, and the answers.
package confirming

import (
	"context"

	"tenthpoint/internal/confirmation"
	"tenthpoint/internal/office/confirming"
	"tenthpoint/internal/scalehouse"
)

// Enter writes a sample that was drawn under the next number.
func Enter(ctx context.Context, d *scalehouse.Desk, r confirmation.Round) (confirmation.Round, error) {
	if err := d.MayManage("Asking depositors to confirm their balances"); err != nil {
		return r, err
	}
	err := d.Batch(ctx, func(w *scalehouse.Batch) error {
		all, err := scalehouse.RecordsIn[confirmation.Round](w)
		if err != nil {
			return err
		}
		r.Number = int64(len(all) + 1)
		return scalehouse.SetRecord(ctx, w, r.ID(), r)
	})
	return r, err
}

// Note writes the answer to a letter down; the last sample is meant by zero.
func Note(ctx context.Context, d *scalehouse.Desk, round int64, letter int, how confirmation.How, words string) (r confirmation.Round, err error) {
	err = d.Batch(ctx, func(w *scalehouse.Batch) error {
		all, err := scalehouse.RecordsIn[confirmation.Round](w)
		if err != nil {
			return err
		}
		if r, err = confirming.Pick(all, round); err != nil {
			return err
		}
		day, err := w.BusinessDay()
		if err != nil {
			return err
		}
		if r, err = r.Answered(letter, confirmation.Answer{How: how, Day: day, By: d.Signature(), Words: words}); err != nil {
			return err
		}
		return scalehouse.SetRecord(ctx, w, r.ID(), r)
	})
	return r, err
}
