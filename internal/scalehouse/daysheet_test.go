package scalehouse_test

import (
	"bytes"
	"strings"
	"testing"
	"time"

	"tenthpoint/internal/load"
	"tenthpoint/internal/office"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/report"
	"tenthpoint/internal/scalehouse"
)

var (
	oct1 = quantity.MustDate("2026-10-01")
	oct2 = quantity.MustDate("2026-10-02")
	wide = report.Page{}.Wide()
)

// workday is a day with something of everything, closed in the evening, and the
// day after with something that touches it.
func workday(t testing.TB) *scene {
	s := newScene(t)
	for range 6 {
		s.ticket()
		s.now = s.now.Add(25 * time.Minute)
	}
	s.leave("Pit 1", 40000)
	s.arrive(50000)
	refused := s.arrive(51000)
	s.as(manager)
	must(t, scalehouse.Refuse(ctx, s.Desk, refused, "smells musty"))
	must(t, scalehouse.Void(ctx, s.Desk, 3, "wrong truck"))
	id, err := scalehouse.Correct(ctx, s.Desk, 5, "wrong tare")
	must(t, err)
	must(t, scalehouse.Weigh(ctx, s.Desk, id, load.Weighing{Which: load.Tare, Weight: quantity.Int(24000, quantity.Lb), Source: load.ByHand, Reason: "indicator dark"}))
	_, err = scalehouse.Issue(ctx, s.Desk, id)
	must(t, err)
	s.at("2026-10-01 19:05")
	must(t, scalehouse.CloseDay(ctx, s.Desk, oct1, "all well"))
	return s
}

func (s *scene) dayPaper(day quantity.Date) report.Document {
	s.t.Helper()
	d, err := office.DayPaper(ctx, s.Desk, day)
	must(s.t, err)
	return d
}

func TestDaySheetPapers(t *testing.T) {
	s := workday(t)
	closed := s.dayPaper(oct1)
	golden(t, "day.txt", closed.Text(110))
	golden(t, "day.pdf.txt", pdfText(t, closed, wide))
	s.at("2026-10-02 14:00")
	must(t, scalehouse.Void(ctx, s.Desk, 1, "paid twice"))
	id, err := scalehouse.Correct(ctx, s.Desk, 2, "wrong moisture")
	must(t, err)
	s.sample(id, "19.5")
	_, err = scalehouse.Issue(ctx, s.Desk, id)
	must(t, err)
	golden(t, "day-after.txt", s.dayPaper(oct2).Text(110))
}

// A closed day prints the same bytes whatever happens afterwards.
func TestClosedDayPrintsTheSameForEver(t *testing.T) {
	s := workday(t)
	before := pdf(t, s.dayPaper(oct1), wide)
	s.at("2026-11-20 10:00")
	must(t, scalehouse.Void(ctx, s.Desk, 1, "paid twice"))
	id, err := scalehouse.Correct(ctx, s.Desk, 2, "wrong moisture")
	must(t, err)
	s.sample(id, "19.5")
	_, err = scalehouse.Issue(ctx, s.Desk, id)
	must(t, err)
	s.leave("Pit 1", 10000)
	moved := testProfile()
	moved.Business, moved.Phone = "Test Elevator, under new hands", "555 0199"
	must(t, scalehouse.SetProfile(ctx, s.Desk, moved))
	must(t, s.reprint(8))
	if after := pdf(t, s.dayPaper(oct1), wide); !bytes.Equal(before, after) {
		t.Errorf("the sheet changed:\n%s", s.dayPaper(oct1).Text(110))
	}
	s.verify()
}

// reprint prints a ticket again.
func (s *scene) reprint(number int64) error {
	_, err := scalehouse.RecordPrint(ctx, s.Desk, number)
	return err
}

// Somebody who alters the lists under a closed day is found out by its sheet.
func TestAlteredDayIsToldOnItsSheet(t *testing.T) {
	s := workday(t)
	if strings.Contains(s.dayPaper(oct1).Text(100), "THIS IS NOT THE SHEET") {
		t.Fatal("a sound sheet is doubted")
	}
	unguarded(t, s.book.Path(), `UPDATE loads SET figures = replace(figures, '"28000 lb"', '"29000 lb"') WHERE id = 'L1'`)
	if !strings.Contains(s.dayPaper(oct1).Text(100), "THIS IS NOT THE SHEET THAT WAS CLOSED") {
		t.Error("the sheet does not tell that it was altered")
	}
}

// The position of a day is the one of the day before, and the day.
func TestPositionReconciles(t *testing.T) {
	s := workday(t)
	s.at("2026-10-02 14:00")
	must(t, scalehouse.Void(ctx, s.Desk, 1, "paid twice"))
	s.as(clerk).ticket()
	s.leave("Pit 1", 20000)
	s.at("2026-10-05 09:00")
	s.ticket()
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
	if got := s.inBin("Pit 1"); !amountOf(t, got).Equal(yesterday["Pit 1"]) {
		t.Errorf("the book has %s, the sheets come to %s", got, yesterday["Pit 1"])
	}
}

// Closing in one write with the day's own tickets closes the sheet they made.
func TestDayClosedTogetherWithItsTickets(t *testing.T) {
	s := newScene(t)
	s.as(manager)
	must(t, s.Batch(ctx, func(w *scalehouse.Batch) error {
		for range 3 {
			id, err := scalehouse.OpenLoad(ctx, w, details())
			if err != nil {
				return err
			}
			for _, act := range []func() error{
				func() error { return scalehouse.Weigh(ctx, w, id, scaleWeight(load.Gross, 52000)) },
				func() error { return scalehouse.Weigh(ctx, w, id, scaleWeight(load.Tare, 24000)) },
				func() error { return scalehouse.RecordSample(ctx, w, id, sampleOf("18.0")) },
				func() error { _, err := scalehouse.Issue(ctx, w, id); return err },
			} {
				if err := act(); err != nil {
					return err
				}
			}
		}
		return scalehouse.CloseDay(ctx, w, oct1, "")
	}))
	sheet, err := office.DaySheet(ctx, s.Desk, oct1)
	must(t, err)
	if sheet.Closed == nil || sheet.Closed.Differs || sheet.Numbers.Issued != 3 {
		t.Errorf("closed %+v, %d tickets", sheet.Closed, sheet.Numbers.Issued)
	}
}
