package scalehouse_test

import (
	"testing"

	"tenthpoint/internal/dispute"
	"tenthpoint/internal/imports"
	"tenthpoint/internal/office"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/scalehouse"
)

// stillSound compares every closed day with the sheet it was closed with.
func (s *scene) stillSound(closed ...quantity.Date) {
	s.t.Helper()
	s.verify()
	for _, day := range closed {
		sheet, err := office.DaySheet(ctx, s.Desk, day)
		must(s.t, err)
		if sheet.Closed == nil || sheet.Closed.Differs {
			s.t.Errorf("the sheet of %s is not the one that was closed: %+v", day, sheet.Closed)
		}
	}
}

// A clock that is back moves every act to the first open day: the day it shows was never closed,
// and still nothing may count before a closed one.
func TestClockSetBackLeavesClosedDaysSound(t *testing.T) {
	s := newScene(t)
	s.ticket()
	s.ticket()
	s.ticket()
	s.at("2026-10-02 09:00")
	s.ticket()
	must(t, scalehouse.CloseDay(ctx, s.as(manager).Desk, oct2, ""))
	s.at("2026-09-28 10:00")
	s.answered()
	_, number := s.ticket()
	must(t, scalehouse.Void(ctx, s.Desk, 1, "wrong truck"))
	must(t, scalehouse.Refuse(ctx, s.Desk, s.arrive(51000), "smells musty"))
	corrects, err := scalehouse.Correct(ctx, s.Desk, 2, "wrong moisture")
	must(t, err)
	s.sample(corrects, "19.5")
	_, err = scalehouse.Issue(ctx, s.Desk, corrects)
	must(t, err)
	s.leave("Pit 1", 20000)
	_, err = scalehouse.RaiseDispute(ctx, s.Desk, dispute.Raised{Ticket: 3, By: "Ada Field", About: "moisture", Claim: "too high"})
	must(t, err)
	l, err := office.Ticket(ctx, s.Desk, number)
	must(t, err)
	if want := oct2.AddDays(1); l.IssuedDay != want {
		t.Errorf("the late ticket counts on %s, want %s", l.IssuedDay, want)
	}
	s.stillSound(oct2)
	s.at("2026-10-02 18:00")
	must(t, scalehouse.CloseDay(ctx, s.Desk, oct1, "")) // an open day before a closed one may still be closed
	s.stillSound(oct1, oct2)
}

// Past loads imported after a day was closed count after it, on whatever day they were delivered.
func TestPastLoadsAfterAClosedDay(t *testing.T) {
	s := newScene(t)
	s.takeOver(imports.Growers, imports.Example(imports.Growers))
	must(t, scalehouse.CloseDay(ctx, s.as(manager).Desk, oct1, "no truck came"))
	s.takeOver(imports.Loads, pastLoads)
	for number := int64(1); number <= 3; number++ {
		l, err := office.Ticket(ctx, s.Desk, number)
		must(t, err)
		if want := oct1.AddDays(1); l.IssuedDay != want {
			t.Errorf("ticket %d counts on %s, want %s", number, l.IssuedDay, want)
		}
	}
	s.stillSound(oct1)
}
