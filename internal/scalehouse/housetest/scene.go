// Package housetest is a small invented elevator for tests: a desk on an empty book, with rates,
// people and a clock that tests move, and days on which something happened.
package housetest

import (
	"context"
	"testing"
	"time"

	"tenthpoint/internal/audit"
	"tenthpoint/internal/book/sqlite"
	"tenthpoint/internal/book/sqlite/sqlitetest"
	"tenthpoint/internal/elevator"
	"tenthpoint/internal/guard"
	"tenthpoint/internal/load"
	"tenthpoint/internal/message"
	"tenthpoint/internal/office"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/scalehouse"
)

var ctx = context.Background()

// Scene is a small invented elevator with a clock that tests move.
type Scene struct {
	*scalehouse.Desk
	T     testing.TB
	Store *sqlite.Book
	Time  time.Time // what its clock shows
}

// The people of the scene.
const (
	Manager = "Mae Orton"
	Clerk   = "Cal Reyes"
	Tester  = "Tess Lind"
)

// New makes an elevator with an empty book.
func New(t testing.TB) *Scene {
	t.Helper()
	book, err := sqlite.OpenScratch()
	Must(t, err)
	return On(t, book)
}

// On sets the elevator up in an empty book.
func On(t testing.TB, book *sqlite.Book) *Scene {
	t.Helper()
	return onDesk(t, book, book)
}

func onDesk(t testing.TB, book *sqlite.Book, of scalehouse.Book) *Scene {
	t.Helper()
	t.Cleanup(func() { _ = book.Close() })
	var err error
	s := &Scene{T: t, Store: book, Time: time.Date(2026, 10, 1, 13, 0, 0, 0, time.UTC)}
	s.Desk, err = scalehouse.Open(ctx, of, scalehouse.Options{
		Name: "scale house", Rates: Rates(t), Place: time.UTC, Who: Manager,
		Clock: s.Clock(), Check: NoQuestions,
	})
	Must(t, err)
	Must(t, scalehouse.SetProfile(ctx, s.Desk, Profile()))
	for _, p := range []elevator.Person{{Name: Manager, Role: elevator.Manager}, {Name: Clerk, Role: elevator.Clerk}, {Name: Tester, Role: elevator.Tester}} {
		Must(t, scalehouse.SetPerson(ctx, s.Desk, p))
	}
	Must(t, s.SignIn(Clerk))
	return s
}

// NoQuestions lets every load pass the guards: most tests bring one truck again and again.
func NoQuestions(*load.Load, guard.Setting) []guard.Finding { return nil }

// Profile is the set-up of the elevator.
func Profile() elevator.Profile {
	return elevator.Profile{
		Business: "Test Elevator", Street: "1 Siding Road", Town: "Nowhere", Phone: "none", Demo: true,
		Scales: []elevator.Scale{{ID: "1", Division: quantity.Int(20, quantity.Lb), Capacity: quantity.Int(120000, quantity.Lb)}},
		Rules:  "us", Grains: []elevator.GrainRule{{Commodity: "corn", Schedule: "house"}}, RetainDays: 3,
		StopOn: []string{"too-cold"},
	}
}

// Clock is the clock that tests move.
func (s *Scene) Clock() func() time.Time { return func() time.Time { return s.Time } }

// At moves the clock: "2026-10-01 14:05", UTC.
func (s *Scene) At(text string) {
	s.T.Helper()
	now, err := time.Parse("2006-01-02 15:04", text)
	Must(s.T, err)
	s.Time = now
}

// Answered answers for a clock that was moved further than goes without a question.
func (s *Scene) Answered() {
	s.T.Helper()
	Must(s.T, scalehouse.AnswerClock(ctx, s.Desk, "moved by the test"))
}

// As signs somebody in.
func (s *Scene) As(name string) *Scene {
	s.T.Helper()
	Must(s.T, s.SignIn(name))
	return s
}

// House changes the set-up of the elevator.
func (s *Scene) House(change func(*elevator.Profile)) {
	s.T.Helper()
	who := s.Who().Name
	p := s.Profile()
	change(&p)
	Must(s.T, scalehouse.SetProfile(ctx, s.As(Manager).Desk, p))
	s.As(who)
}

// Load reads a load.
func (s *Scene) Load(id string) *load.Load {
	s.T.Helper()
	l, err := office.Load(ctx, s.Desk, id)
	Must(s.T, err)
	return l
}

// Contents is everything the book holds, as text: two equal texts are two equal books.
func (s *Scene) Contents() string { return sqlitetest.Contents(s.T, s.Store.Path()) }

// Verify wants a sound book.
func (s *Scene) Verify() audit.Soundness {
	s.T.Helper()
	sound, err := audit.Verify(ctx, s.Desk, s.Store, nil)
	Must(s.T, err)
	if len(sound.Problems) > 0 {
		s.T.Fatalf("the book is not sound:\n%s", message.Texts("\n", sound.Problems).String())
	}
	return sound
}
