package housetest

import (
	"testing"
	"time"

	"tenthpoint/internal/daysheet"
	"tenthpoint/internal/elevator"
	"tenthpoint/internal/load"
	"tenthpoint/internal/office"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/report"
	"tenthpoint/internal/scalehouse"
)

var (
	Oct1 = quantity.MustDate("2026-10-01")
	Oct2 = quantity.MustDate("2026-10-02")
	Wide = report.Page{}.Wide()
)

// Workday is a day with something of everything, closed in the evening, and the
// day after with something that touches it.
func Workday(t testing.TB) *Scene {
	s := New(t)
	for range 6 {
		s.Ticket()
		s.Time = s.Time.Add(25 * time.Minute)
	}
	s.Leave("Pit 1", 40000)
	s.Arrive(50000)
	refused := s.Arrive(51000)
	s.As(Manager)
	Must(t, scalehouse.Refuse(ctx, s.Desk, refused, "smells musty"))
	Must(t, scalehouse.Void(ctx, s.Desk, 3, "wrong truck"))
	id, err := scalehouse.Correct(ctx, s.Desk, 5, "wrong tare")
	Must(t, err)
	Must(t, scalehouse.Weigh(ctx, s.Desk, id, load.Weighing{Which: load.Tare, Weight: quantity.Int(24000, quantity.Lb), Source: load.ByHand, Reason: "indicator dark"}))
	_, err = scalehouse.Issue(ctx, s.Desk, id)
	Must(t, err)
	s.At("2026-10-01 19:05")
	Must(t, scalehouse.CloseDay(ctx, s.Desk, Oct1, "all well"))
	return s
}

// Season is a small book with one of everything: an issued ticket with two
// owners, a void, a correction, a refused load, a truck on the yard, a closed
// day, a grower and a truck.
func Season(t testing.TB) *Scene { return Lived(New(t)) }

// Lived has a season happen in a scene.
func Lived(s *Scene) *Scene {
	t := s.T
	Must(t, scalehouse.SetGrower(ctx, s.Desk, elevator.Grower{ID: "G1", Name: "Ada Field"}))
	Must(t, scalehouse.SetTruck(ctx, s.Desk, elevator.Truck{ID: "T1", Plate: "ABC 1"}))
	shared := s.Whole()
	d := s.Load(shared).Details
	d.Shares = []load.Owner{
		{Party: d.Grower, Parts: Plain(2), Of: Plain(3)},
		{Party: load.Party{ID: "G2", Name: "Bo Acre"}, Parts: Plain(1), Of: Plain(3)},
	}
	Must(t, scalehouse.Amend(ctx, s.Desk, shared, d))
	_, err := scalehouse.Issue(ctx, s.Desk, shared)
	Must(t, err)
	Voided(s)
	Corrected(s)
	TurnedAway(s)
	s.Arrive(60000)
	Must(t, scalehouse.CloseDay(ctx, s.Desk, s.Today(), ""))
	return s
}

// DayPaper is the sheet of a day as a paper.
func (s *Scene) DayPaper(day quantity.Date) report.Document {
	s.T.Helper()
	d, err := office.DayPaper(ctx, s.Desk, day)
	Must(s.T, err)
	return d
}

// DayText is a sheet as text.
func (s *Scene) DayText(d daysheet.Sheet) string {
	s.T.Helper()
	return daysheet.Compose(d, s.Profile()).Text(100)
}

// StillSound compares every closed day with the sheet it was closed with.
func (s *Scene) StillSound(closed ...quantity.Date) {
	s.T.Helper()
	s.Verify()
	for _, day := range closed {
		sheet, err := office.DaySheet(ctx, s.Desk, day)
		Must(s.T, err)
		if sheet.Closed == nil || sheet.Closed.Differs {
			s.T.Errorf("the sheet of %s is not the one that was closed: %+v", day, sheet.Closed)
		}
	}
}

// InBin is the position of a bin for ever after.
func (s *Scene) InBin(bin string) string {
	s.T.Helper()
	rows, err := s.Store.StockBefore(ctx, "9999-01-01")
	Must(s.T, err)
	for _, r := range rows {
		if r.Bin == bin {
			text, _ := r.Weight.MarshalText()
			return string(text)
		}
	}
	return "nothing"
}
