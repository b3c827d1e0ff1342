package scalehouse

import (
	"context"

	"tenthpoint/internal/quantity"
	"tenthpoint/internal/settle"
)

// SettleBy makes the desk settle new loads and close days by another engine, as
// the program did before there was the current one.
func (d *Desk) SettleBy(n settle.Engine) { d.engine = n }

// IssueOn gives a whole load its ticket on any day, as the program did before
// nothing counted on a closed day or before it.
func IssueOn(ctx context.Context, d *Desk, id string, day quantity.Date) (int64, error) {
	return result(ctx, d, func(w *Batch) (int64, error) {
		l, err := w.load(id)
		if err != nil {
			return 0, err
		}
		if _, err := w.settle(l); err != nil {
			return 0, err
		}
		return w.numberOn(l, day)
	})
}
