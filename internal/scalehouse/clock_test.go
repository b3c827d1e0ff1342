package scalehouse_test

import (
	"errors"
	"testing"
	"time"

	"tenthpoint/internal/book"
	"tenthpoint/internal/message"
	"tenthpoint/internal/office"
	"tenthpoint/internal/scalehouse"
	"tenthpoint/internal/scalehouse/housetest"
)

// A clock that is before the last fact, or long after it, causes a question, and nothing is written
// until somebody has answered.
func TestSteppedClockIsAskedAbout(t *testing.T) {
	for name, shown := range map[string]string{"set back": "2026-09-30 10:00", "after a dead battery": "2000-01-01 00:00", "a year ahead": "2027-10-01 13:00"} {
		t.Run(name, func(t *testing.T) {
			s := housetest.New(t)
			id := s.Whole()
			s.At(shown)
			before := s.Contents()
			if _, err := scalehouse.Issue(ctx, s.Desk, id); !errors.Is(err, message.ClockStepped) {
				t.Errorf("a ticket under that clock: %v", err)
			}
			if err := scalehouse.AnswerClock(ctx, s.Desk, " "); !errors.Is(err, message.Incomplete) {
				t.Errorf("an answer without words: %v", err)
			}
			if s.Contents() != before {
				t.Error("something was written")
			}
			s.Answered()
			_, err := scalehouse.Issue(ctx, s.Desk, id)
			if shown[:4] == "2026" { // else no rates are in force on that day
				must(t, err)
			} else if errors.Is(err, message.ClockStepped) {
				t.Errorf("asked again: %v", err)
			}
			s.Verify()
		})
	}
}

// A clock that steps back by seconds asks nobody, and no fact goes back in time.
func TestSmallStepsOfTheClockLeaveTimesInOrder(t *testing.T) {
	s := housetest.New(t)
	for _, step := range []time.Duration{time.Minute, -30 * time.Second, -time.Second, -80 * time.Second, 5 * time.Second} {
		s.Time = s.Time.Add(step)
		s.Arrive(52300)
	}
	last := ""
	for f, err := range s.Store.Facts(ctx, book.FactFilter{}) {
		must(t, err)
		if f.At < last {
			t.Errorf("fact %d is of %s, after one of %s", f.Seq, f.At, last)
		}
		last = f.At
	}
}

// A day is closed ahead only by somebody who has answered for the clock.
func TestDayClosedAheadIsAskedAbout(t *testing.T) {
	s := housetest.New(t)
	s.Ticket()
	s.At("2026-10-20 18:00")
	s.As(housetest.Manager)
	if err := scalehouse.CloseDay(ctx, s.Desk, s.Today(), ""); !errors.Is(err, message.ClockStepped) {
		t.Errorf("a day closed 19 days after the last act: %v", err)
	}
	s.Answered()
	ahead := s.Today()
	must(t, scalehouse.CloseDay(ctx, s.Desk, ahead, ""))
	s.At("2026-10-02 08:00")
	s.Answered()
	_, number := s.Ticket()
	l, err := office.Ticket(ctx, s.Desk, number)
	must(t, err)
	if want := ahead.AddDays(1); l.IssuedDay != want {
		t.Errorf("the ticket counts on %s, want %s", l.IssuedDay, want)
	}
	s.StillSound(ahead)
}
