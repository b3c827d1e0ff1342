package scalehouse_test

import (
	"testing"

	"tenthpoint/internal/dispute"
	"tenthpoint/internal/office"
	"tenthpoint/internal/scalehouse"
	"tenthpoint/internal/scalehouse/disputes"
	"tenthpoint/internal/scalehouse/housetest"
)

// A clock that is back moves every act to the first open day: the day it shows was never closed,
// and still nothing may count before a closed one.
func TestClockSetBackLeavesClosedDaysSound(t *testing.T) {
	s := housetest.New(t)
	s.Ticket()
	s.Ticket()
	s.Ticket()
	s.At("2026-10-02 09:00")
	s.Ticket()
	must(t, scalehouse.CloseDay(ctx, s.As(housetest.Manager).Desk, housetest.Oct2, ""))
	s.At("2026-09-28 10:00")
	s.Answered()
	_, number := s.Ticket()
	must(t, scalehouse.Void(ctx, s.Desk, 1, "wrong truck"))
	must(t, scalehouse.Refuse(ctx, s.Desk, s.Arrive(51000), "smells musty"))
	corrects, err := scalehouse.Correct(ctx, s.Desk, 2, "wrong moisture")
	must(t, err)
	s.Sample(corrects, "19.5")
	_, err = scalehouse.Issue(ctx, s.Desk, corrects)
	must(t, err)
	s.Leave("Pit 1", 20000)
	_, err = disputes.Raise(ctx, s.Desk, dispute.Raised{Ticket: 3, By: "Ada Field", About: "moisture", Claim: "too high"})
	must(t, err)
	l, err := office.Ticket(ctx, s.Desk, number)
	must(t, err)
	if want := housetest.Oct2.AddDays(1); l.IssuedDay != want {
		t.Errorf("the late ticket counts on %s, want %s", l.IssuedDay, want)
	}
	s.StillSound(housetest.Oct2)
	s.At("2026-10-02 18:00")
	must(t, scalehouse.CloseDay(ctx, s.Desk, housetest.Oct1, "")) // an open day before a closed one may still be closed
	s.StillSound(housetest.Oct1, housetest.Oct2)
}
