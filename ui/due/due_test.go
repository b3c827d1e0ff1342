package due

import (
	"testing"

	"tenthpoint/internal/office/duelist"
	"tenthpoint/ui/model"
	"tenthpoint/ui/session/sessiontest"
)

// The list is in the order of the days, what has passed is marked, a longer span has more, and each
// line says what becomes of it.
func TestDue(t *testing.T) {
	r := sessiontest.SettledRoom(t, 240)
	l := NewList(r.Session)
	l.Reload()
	near := len(l.Rows())
	for i, d := range l.all {
		if i > 0 && l.all[i-1].Day.After(d.Day) {
			t.Errorf("%s stands after %s", d.Day, l.all[i-1].Day)
		}
		if passed := d.Day.Before(r.Session.Desk.Today()); passed != (l.state(d) == model.Stop) {
			t.Errorf("%s is marked %d", d.Day, l.state(d))
		}
		l.Choose(l.Rows()[i].Key)
		if story := l.Story(); len(story) != 3 || story[1].Text == "" {
			t.Errorf("the story of %v: %+v", d.What, story)
		}
	}
	l.Further()
	l.Further()
	if far := len(l.Rows()); near == 0 || far <= near {
		t.Errorf("%d in 14 days, %d in 90", near, far)
	}
	if l.Further(); len(l.Rows()) != near {
		t.Errorf("back at 14 days %d, before %d", len(l.Rows()), near)
	}
}

// A line leads to where it is dealt with.
func TestDueLeadsOn(t *testing.T) {
	r := sessiontest.SettledRoom(t, 120)
	l := NewList(r.Session)
	for kind, screen := range map[duelist.Kind]string{
		duelist.Unsigned: "contracts", duelist.Undelivered: "contracts", duelist.Unpaid: "payments", duelist.Deferred: "payments",
		duelist.FreeUntil: "settle", duelist.Sample: "samples", duelist.Disputed: "disputes", duelist.Undecided: "tickets",
	} {
		l.all, l.chosen = []duelist.Due{{Kind: kind, Grower: "102"}}, "0"
		if l.Open(); r.Screen != screen {
			t.Errorf("%s leads to %s, want %s", kind, r.Screen, screen)
		}
	}
}
