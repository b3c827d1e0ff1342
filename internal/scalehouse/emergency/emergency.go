// Package emergency has the acts on the pads of printed tickets that are written on while the power is
// out: a pad is written down, a ticket of it spoiled. That a number is entered once is seen to where
// tickets are issued. The ideas are with [numbering.Pad].
package emergency

import (
	"context"
	"slices"

	"tenthpoint/internal/message"
	"tenthpoint/internal/numbering"
	"tenthpoint/internal/scalehouse"
)

// AddPad writes a pad down: a manager's act. No number is on two of them.
func AddPad(ctx context.Context, d *scalehouse.Desk, p numbering.Pad) error {
	if err := d.MayManage("Writing a pad of emergency tickets down"); err != nil {
		return err
	}
	return d.Batch(ctx, func(w *scalehouse.Batch) error {
		all, err := scalehouse.RecordsIn[numbering.Pad](w)
		if err != nil {
			return err
		}
		if at := slices.IndexFunc(all, func(o numbering.Pad) bool { return p.First <= o.Last && o.First <= p.Last }); at >= 0 {
			return message.Refused.Errorf("numbers %d to %d are on a pad already. Two papers with one number cannot be told apart: give the new pad others", all[at].First, all[at].Last)
		}
		return scalehouse.SetRecord(ctx, w, p.ID(), p)
	})
}

// Spoil declares a ticket of a pad spoiled.
func Spoil(ctx context.Context, d *scalehouse.Desk, number int64, why string) error {
	return d.Batch(ctx, func(w *scalehouse.Batch) error {
		pads, used, err := scalehouse.PadsIn(w)
		if err != nil {
			return err
		}
		if err := numbering.MayEnter(pads, used, number, 0); err != nil {
			return err
		}
		e := numbering.Emergency{Number: number, Why: why, Day: d.Today()}
		return scalehouse.SetRecord(ctx, w, e.ID(), e)
	})
}
