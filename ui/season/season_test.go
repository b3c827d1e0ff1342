package season

import (
	"strings"
	"testing"

	"tenthpoint/internal/office"
	"tenthpoint/internal/scalehouse"
	"tenthpoint/ui/model"
	"tenthpoint/ui/session/sessiontest"
	"tenthpoint/ui/tickets"
)

// seasonRoom is the season of a demo house, read.
func seasonRoom(t *testing.T, loads int) (*sessiontest.Room, *Season) {
	r := sessiontest.DemoRoom(t, loads)
	s := NewSeason(r.Session)
	s.Refresh()
	return r, s
}

func stackWith(t *testing.T, p model.Picture) int {
	t.Helper()
	for i, stack := range p.Stacks {
		if stack.Opens != "" {
			return i
		}
	}
	t.Fatalf("%s: no column opens anything", p.Title)
	return 0
}

// Every picture has columns, and each column leads to at least as many tickets as it says.
func TestFromAColumnToItsTickets(t *testing.T) {
	r, s := seasonRoom(t, 160)
	list := tickets.NewTickets(r.Session)
	if len(s.Pictures()) != 6 {
		t.Fatalf("%d pictures", len(s.Pictures()))
	}
	for i, p := range s.Pictures() {
		if len(p.Stacks) == 0 || p.Says == "" {
			t.Errorf("%s: %d columns, says %q", p.Title, len(p.Stacks), p.Says)
		}
		if i == 5 {
			continue // a meter has no tickets
		}
		n := stackWith(t, p)
		r.Screen = ""
		s.Open(i, n)
		if r.Screen != "tickets" || list.Line() != p.Stacks[n].Opens {
			t.Errorf("%s: on screen %q the line is %q, want %q", p.Title, r.Screen, list.Line(), p.Stacks[n].Opens)
		}
		if rows := len(list.Rows()); rows == 0 {
			t.Errorf("%s: %q finds nothing", p.Title, list.Line())
		}
	}
	moisture := s.Pictures()[1]
	n := stackWith(t, moisture)
	s.Open(1, n)
	if got := list.Counted(); !strings.HasPrefix(got, moisture.Stacks[n].Value+" ") {
		t.Errorf("a column of %s leads to %q", moisture.Stacks[n].Value, got)
	}
	r.Screen = ""
	s.Open(5, 0)
	if r.Screen != "" {
		t.Error("a check of a meter led to tickets")
	}
}

// The book is read again when something was written, and not before.
func TestReadWhenTheBookHasGrown(t *testing.T) {
	r, s := seasonRoom(t, 60)
	first := s.shown
	s.Refresh()
	if s.shown != first {
		t.Error("read again though nothing was written")
	}
	last, found, err := office.LastTicket(t.Context(), r.Session.Desk)
	sessiontest.Must(t, err)
	if !found {
		t.Fatal("no ticket")
	}
	sessiontest.Must(t, scalehouse.Void(t.Context(), r.Session.Desk, last, "twice"))
	s.Refresh()
	if s.shown == first {
		t.Error("not read again after a ticket was void")
	}
}

func TestOtherGrainAndOtherDays(t *testing.T) {
	r, s := seasonRoom(t, 160)
	was := s.Pictures()[1].Title
	other := s.shown.Grains[1]
	s.AskGrain()
	r.Answer(map[string]string{"grain": other})
	if got := s.Pictures()[1].Title; got == was || s.Grain() != other {
		t.Errorf("still %q", got)
	}
	day := s.shown.Day
	s.Step(-1)
	if s.shown.Day != day.AddDays(-1) {
		t.Errorf("a day before %s is %s", day, s.shown.Day)
	}
	for range 3 {
		s.Step(+1)
	}
	if _, to := s.Span(); s.shown.Day != to {
		t.Errorf("beyond the last day: %s, want %s", s.shown.Day, to)
	}
	for _, c := range []struct {
		values map[string]string
		state  model.State
	}{
		{map[string]string{"from": "2025-10-09", "to": "2025-10-08"}, model.Stop},
		{map[string]string{"from": "October"}, model.Stop},
	} {
		s.AskDays()
		r.Answer(c.values)
		if from, _ := s.Span(); from.String() != "2025-06-01" {
			t.Errorf("%v was taken: from %s", c.values, from)
		}
	}
	s.AskDays()
	r.Answer(map[string]string{"from": "2025-10-12", "to": "2025-10-13", "day": "2025-10-12"})
	if got := len(s.Pictures()[0].Stacks); got != 2 || s.shown.Day.String() != "2025-10-12" {
		t.Errorf("two days have %d columns, the day is %s", got, s.shown.Day)
	}
}

// A book without a fact is read once, though it has no last one.
func TestEmptySeason(t *testing.T) {
	r := sessiontest.EmptyRoom(t)
	s := NewSeason(r.Session)
	s.Refresh()
	first := s.shown
	s.Refresh()
	if first == nil || s.shown != first {
		t.Error("an empty book is read again and again")
	}
	for _, p := range s.Pictures() {
		if len(p.Stacks) != 0 || p.Empty == "" {
			t.Errorf("%s: %d columns, says %q", p.Title, len(p.Stacks), p.Empty)
		}
	}
}

func TestSeasonIsPrinted(t *testing.T) {
	r, s := seasonRoom(t, 60)
	s.Print()
	if len(r.Papers["season-"+r.Session.Desk.Today().String()]) == 0 {
		t.Errorf("papers: %d", len(r.Papers))
	}
}
