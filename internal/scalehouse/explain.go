package scalehouse

import (
	"context"

	"tenthpoint/internal/office"
	"tenthpoint/internal/quantity"
)

// ExplainDay records why something entered after a day was closed counts on that day or before it,
// so that its sheet stays as it was closed. For managers, and for books in which earlier versions
// allowed that.
func ExplainDay(ctx context.Context, d *Desk, day quantity.Date, reason string) error {
	if err := d.MayManage("Explaining what came after a day was closed"); err != nil {
		return err
	}
	sheet, err := office.LateSheet(ctx, d, day)
	if err != nil {
		return err
	}
	f := office.DayExplained{Day: day, Reason: reason, Sheet: sheet}
	if err := f.Check(); err != nil {
		return err
	}
	return d.do(ctx, func(w *Batch) error { return AppendIn(w, f.Kind(), office.ExplainedSubject(day), f) })
}
