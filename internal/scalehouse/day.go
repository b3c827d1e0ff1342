package scalehouse

import (
	"context"

	"tenthpoint/internal/daysheet"
	"tenthpoint/internal/journal"
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
		f := office.DayClosed{Day: day, Remark: remark, Engine: w.desk.engine, Pinned: w.desk.engine.Number() > 1}
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
	body, err := journal.Canonical(f)
	if err != nil {
		return err
	}
	return d.do(ctx, func(w *Batch) error {
		_, err := enterFact(w, w.draft(f.Kind(), office.ExplainedSubject(day), body))
		return err
	})
}
