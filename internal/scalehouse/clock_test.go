package scalehouse_test

import (
	"errors"
	"slices"
	"strings"
	"testing"
	"time"

	"tenthpoint/internal/audit"
	"tenthpoint/internal/book"
	"tenthpoint/internal/journal"
	"tenthpoint/internal/message"
	"tenthpoint/internal/office"
	"tenthpoint/internal/scalehouse"
)

// A clock that is before the last fact, or long after it, causes a question, and nothing is written
// until somebody has answered.
func TestSteppedClockIsAskedAbout(t *testing.T) {
	for name, shown := range map[string]string{"set back": "2026-09-30 10:00", "after a dead battery": "2000-01-01 00:00", "a year ahead": "2027-10-01 13:00"} {
		t.Run(name, func(t *testing.T) {
			s := newScene(t)
			id := s.whole()
			s.at(shown)
			before := s.contents()
			if _, err := scalehouse.Issue(ctx, s.Desk, id); !errors.Is(err, message.ClockStepped) {
				t.Errorf("a ticket under that clock: %v", err)
			}
			if err := scalehouse.AnswerClock(ctx, s.Desk, " "); !errors.Is(err, message.Incomplete) {
				t.Errorf("an answer without words: %v", err)
			}
			if s.contents() != before {
				t.Error("something was written")
			}
			s.answered()
			_, err := scalehouse.Issue(ctx, s.Desk, id)
			if shown[:4] == "2026" { // else no rates are in force on that day
				must(t, err)
			} else if errors.Is(err, message.ClockStepped) {
				t.Errorf("asked again: %v", err)
			}
			s.verify()
		})
	}
}

// A clock that steps back by seconds asks nobody, and no fact goes back in time.
func TestSmallStepsOfTheClockLeaveTimesInOrder(t *testing.T) {
	s := newScene(t)
	for _, step := range []time.Duration{time.Minute, -30 * time.Second, -time.Second, -80 * time.Second, 5 * time.Second} {
		s.now = s.now.Add(step)
		s.arrive(52300)
	}
	last := ""
	for f, err := range s.book.Facts(ctx, book.FactFilter{}) {
		must(t, err)
		if f.At < last {
			t.Errorf("fact %d is of %s, after one of %s", f.Seq, f.At, last)
		}
		last = f.At
	}
}

// A day is closed ahead only by somebody who has answered for the clock.
func TestDayClosedAheadIsAskedAbout(t *testing.T) {
	s := newScene(t)
	s.ticket()
	s.at("2026-10-20 18:00")
	s.as(manager)
	if err := scalehouse.CloseDay(ctx, s.Desk, s.Today(), ""); !errors.Is(err, message.ClockStepped) {
		t.Errorf("a day closed 19 days after the last act: %v", err)
	}
	s.answered()
	ahead := s.Today()
	must(t, scalehouse.CloseDay(ctx, s.Desk, ahead, ""))
	s.at("2026-10-02 08:00")
	s.answered()
	_, number := s.ticket()
	l, err := office.Ticket(ctx, s.Desk, number)
	must(t, err)
	if want := ahead.AddDays(1); l.IssuedDay != want {
		t.Errorf("the ticket counts on %s, want %s", l.IssuedDay, want)
	}
	s.stillSound(ahead)
}

// A check tells of every clock that was answered for, and of times that go back
// without an answer: books of earlier programs have them, and are sound.
func TestVerifyTellsOfTheClock(t *testing.T) {
	s := newScene(t)
	s.ticket()
	s.at("2026-09-20 08:00")
	s.answered()
	s.ticket()
	sound := s.verify()
	if len(sound.Remarks) != 1 || !strings.Contains(sound.Remarks[0], "moved by the test") || !strings.Contains(sound.Remarks[0], clerk) {
		t.Errorf("remarks: %q", sound.Remarks)
	}
	must(t, s.book.Write(ctx, func(tx book.Tx) error { // as the program did before it asked
		_, err := tx.Append(journal.Draft{At: "2026-09-19T08:00:00Z", Who: clerk, Desk: "scale house", Kind: "note", Subject: "note", Body: []byte("{}")})
		return err
	}))
	sound, err := audit.Verify(ctx, s.Desk, s.book, nil)
	must(t, err)
	if len(sound.Problems) > 0 || !slices.ContainsFunc(sound.Remarks, func(r string) bool { return strings.Contains(r, "2026-09-19") }) {
		t.Errorf("problems: %q, remarks: %q", sound.Problems, sound.Remarks)
	}
}
