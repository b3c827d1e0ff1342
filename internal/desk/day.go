package desk

import (
	"bytes"
	"context"
	"encoding/json"
	"fmt"

	"tenthpoint/internal/daysheet"
	"tenthpoint/internal/journal"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/settle"
)

// DayClosed is the fact that a business day has been closed.
type DayClosed struct {
	Day    quantity.Date `json:"day"`
	Remark string        `json:"remark,omitempty"`
	// Notes are what stood open that evening.
	Notes daysheet.Notes `json:"notes"`
	// Sheet is the SHA-256 of everything the sheet was made of, so that a sheet
	// printed again is known for the same.
	Sheet string `json:"sheet,omitempty"`
	// Engine says how the sheet was written down to be hashed. It is left out for
	// the first one.
	Engine settle.Engine `json:"engine,omitzero"`
}

// Kind names the fact in the journal.
func (DayClosed) Kind() string { return "day.closed" }

func (w *Batch) isClosed(day quantity.Date) (bool, error) {
	return w.tx.HasStanding(DayClosed{}.Kind(), day.String())
}

// CloseDay closes a business day: what is done later counts in the next day and
// refers to this one. Trucks still on the yard are no obstacle; they will be
// ticketed on the day they leave.
func CloseDay(ctx context.Context, at Actor, day quantity.Date, remark string) error {
	return at.do(ctx, func(w *Batch) error {
		if err := w.desk.mayManage("Closing the day"); err != nil {
			return err
		}
		if today := w.desk.Today(); day.After(today) {
			return fmt.Errorf("%s has not come yet; today is %s. Close a day that is over", day, today)
		}
		closed, err := w.isClosed(day)
		if err != nil {
			return err
		}
		if closed {
			return fmt.Errorf("%s is closed already. Print its sheet again; later changes stand on the day they were made", day)
		}
		f := DayClosed{Day: day, Remark: remark, Engine: w.desk.engine}
		if f.Notes, f.Sheet, err = w.evening(day, f.Engine); err != nil {
			return err
		}
		return w.putRecord("day "+f.Day.String(), f.Day.String(), f)
	})
}

// ClosingOf tells who closed a day and when; found is false while it is open.
func ClosingOf(ctx context.Context, d *Desk, day quantity.Date) (fact journal.Fact, closed DayClosed, found bool, err error) {
	facts, err := d.book.FactsOf(ctx, "day "+day.String())
	if err != nil || len(facts) == 0 {
		return journal.Fact{}, DayClosed{}, false, err
	}
	last := facts[len(facts)-1]
	decoder := json.NewDecoder(bytes.NewReader(last.Body))
	return last, closed, true, decoder.Decode(&closed)
}
