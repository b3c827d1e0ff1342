package office_test

import (
	"bytes"
	"strings"
	"testing"

	"tenthpoint/internal/book/sqlite/sqlitetest"
	"tenthpoint/internal/load"
	"tenthpoint/internal/office"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/scalehouse"
	"tenthpoint/internal/scalehouse/housetest"
)

func TestDaySheetPapers(t *testing.T) {
	s := housetest.Workday(t)
	closed := s.DayPaper(housetest.Oct1)
	housetest.Golden(t, "day.txt", closed.Text(110))
	housetest.Golden(t, "day.pdf.txt", housetest.PDFText(t, closed, housetest.Wide))
	s.At("2026-10-02 14:00")
	must(t, scalehouse.Void(ctx, s.Desk, 1, "paid twice"))
	id, err := scalehouse.Correct(ctx, s.Desk, 2, "wrong moisture")
	must(t, err)
	s.Sample(id, "19.5")
	_, err = scalehouse.Issue(ctx, s.Desk, id)
	must(t, err)
	housetest.Golden(t, "day-after.txt", s.DayPaper(housetest.Oct2).Text(110))
}

// A closed day prints the same bytes whatever happens afterwards.
func TestClosedDayPrintsTheSameForEver(t *testing.T) {
	s := housetest.Workday(t)
	before := housetest.PDF(t, s.DayPaper(housetest.Oct1), housetest.Wide)
	s.At("2026-11-20 10:00")
	must(t, scalehouse.Void(ctx, s.Desk, 1, "paid twice"))
	id, err := scalehouse.Correct(ctx, s.Desk, 2, "wrong moisture")
	must(t, err)
	s.Sample(id, "19.5")
	_, err = scalehouse.Issue(ctx, s.Desk, id)
	must(t, err)
	s.Leave("Pit 1", 10000)
	moved := housetest.Profile()
	moved.Business, moved.Phone = "Test Elevator, under new hands", "555 0199"
	must(t, scalehouse.SetProfile(ctx, s.Desk, moved))
	must(t, reprint(s, 8))
	if after := housetest.PDF(t, s.DayPaper(housetest.Oct1), housetest.Wide); !bytes.Equal(before, after) {
		t.Errorf("the sheet changed:\n%s", s.DayPaper(housetest.Oct1).Text(110))
	}
	s.Verify()
}

// reprint prints a ticket again.
func reprint(s *scene, number int64) error {
	_, err := scalehouse.RecordPrint(ctx, s.Desk, number)
	return err
}

// Somebody who alters the lists under a closed day is found out by its sheet.
func TestAlteredDayIsToldOnItsSheet(t *testing.T) {
	s := housetest.Workday(t)
	if strings.Contains(s.DayPaper(housetest.Oct1).Text(100), "THIS IS NOT THE SHEET") {
		t.Fatal("a sound sheet is doubted")
	}
	sqlitetest.Unguarded(t, s.Store.Path(), `UPDATE loads SET figures = replace(figures, '"28000 lb"', '"29000 lb"') WHERE id = 'L1'`)
	if !strings.Contains(s.DayPaper(housetest.Oct1).Text(100), "THIS IS NOT THE SHEET THAT WAS CLOSED") {
		t.Error("the sheet does not tell that it was altered")
	}
}

// The position of a day is the one of the day before, and the day.
func TestPositionReconciles(t *testing.T) {
	s := housetest.Workday(t)
	s.At("2026-10-02 14:00")
	must(t, scalehouse.Void(ctx, s.Desk, 1, "paid twice"))
	s.As(housetest.Clerk).Ticket()
	s.Leave("Pit 1", 20000)
	s.At("2026-10-05 09:00")
	s.Ticket()
	yesterday := map[string]quantity.Amount{}
	for _, day := range []string{"2026-10-01", "2026-10-02", "2026-10-03", "2026-10-05"} {
		sheet, err := office.DaySheet(ctx, s.Desk, quantity.MustDate(day))
		must(t, err)
		for _, m := range sheet.Moves {
			if was, ok := yesterday[m.Bin]; ok && !was.Equal(m.Before) {
				t.Errorf("%s begins with %s in %s, the day before ended with %s", day, m.Before, m.Bin, was)
			}
			yesterday[m.Bin] = m.After
		}
	}
	if got := s.InBin("Pit 1"); !housetest.AmountOf(t, got).Equal(yesterday["Pit 1"]) {
		t.Errorf("the book has %s, the sheets come to %s", got, yesterday["Pit 1"])
	}
}

// Closing in one write with the day's own tickets closes the sheet they made.
func TestDayClosedTogetherWithItsTickets(t *testing.T) {
	s := housetest.New(t)
	s.As(housetest.Manager)
	must(t, s.Batch(ctx, func(w *scalehouse.Batch) error {
		for range 3 {
			id, err := scalehouse.OpenLoad(ctx, w, housetest.Details())
			if err != nil {
				return err
			}
			for _, act := range []func() error{
				func() error { return scalehouse.Weigh(ctx, w, id, housetest.ScaleWeight(load.Gross, 52000)) },
				func() error { return scalehouse.Weigh(ctx, w, id, housetest.ScaleWeight(load.Tare, 24000)) },
				func() error { return scalehouse.RecordSample(ctx, w, id, housetest.SampleOf("18.0")) },
				func() error { _, err := scalehouse.Issue(ctx, w, id); return err },
			} {
				if err := act(); err != nil {
					return err
				}
			}
		}
		return scalehouse.CloseDay(ctx, w, housetest.Oct1, "")
	}))
	sheet, err := office.DaySheet(ctx, s.Desk, housetest.Oct1)
	must(t, err)
	if sheet.Closed == nil || sheet.Closed.Differs || sheet.Numbers.Issued != 3 {
		t.Errorf("closed %+v, %d tickets", sheet.Closed, sheet.Numbers.Issued)
	}
}
