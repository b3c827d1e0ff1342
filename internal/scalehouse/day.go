package scalehouse

import (
	"context"

	"tenthpoint/internal/daysheet"
	"tenthpoint/internal/message"
	"tenthpoint/internal/office"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/settle"
)

// CloseDay closes a business day: later acts count in the next day. Trucks may still be on the
// yard; they will be ticketed on the day they leave.
func CloseDay(ctx context.Context, at Actor, day quantity.Date, remark string) error {
	return at.do(ctx, func(w *Batch) error {
		if err := w.desk.MayManage("Closing the day"); err != nil {
			return err
		}
		if today := w.desk.Today(); day.After(today) {
			return message.Refused.Errorf("%s has not come yet; today is %s. Close a day that is over", day, today)
		}
		if err := clockFollows(w.desk, w.lastAt, closingRest); err != nil {
			return err
		}
		closed, err := w.HasRecord(office.DayClosed{}.Kind(), day.String())
		if err != nil {
			return err
		}
		if closed {
			return message.Refused.Errorf("%s is closed already. Print its sheet again; later changes stand on the day they were made", day)
		}
		f := office.DayClosed{Day: day, Remark: remark, Engine: w.desk.engine, Pinned: w.desk.engine.Number() > 1, Metric: w.desk.engine.Number() > 1}
		if f.Notes, f.Sheet, err = w.evening(day, f.Engine); err != nil {
			return err
		}
		if f.Engine.Number() == settle.First {
			f.Notes = f.Notes.Sentences()
		}
		return w.putRecord("day "+f.Day.String(), f.Day.String(), f)
	})
}

// evening returns what a day is closed with: its notes, and the hash of its sheet.
func (w *Batch) evening(day quantity.Date, by settle.Engine) (daysheet.Notes, string, error) {
	if err := w.renewRows(""); err != nil {
		return daysheet.Notes{}, "", err
	}
	f, err := office.DayFacts(w.desk, w.tx, day)
	if err != nil {
		return daysheet.Notes{}, "", err
	}
	if f.Notes, err = office.EveningNotes(w.desk, w.tx, day); err != nil {
		return daysheet.Notes{}, "", err
	}
	sum, err := office.SheetHash(daysheet.Make(f), by)
	return f.Notes, sum, err
}
