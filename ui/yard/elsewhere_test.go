package yard

import (
	"strings"
	"testing"
	"time"

	"tenthpoint/internal/demo"
	"tenthpoint/internal/load"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/scalehouse"
	"tenthpoint/ui/session/sessiontest"
)

// Two people at one load are told of each other, and nobody's typing is lost.
func TestTwoPeopleAtOneLoad(t *testing.T) {
	r := sessiontest.EmptyDemo(t)
	y := NewYard(r.Session)
	arrive(t, y, "A")
	id := y.Rows()[0].ID
	y.Take(id)
	y.Form().Type("tare", "20020")
	now, err := time.Parse(time.RFC3339, y.Form().Book.Opened.At)
	sessiontest.Must(t, err)
	other, err := scalehouse.Open(t.Context(), r.Session.Desk.Book(), scalehouse.Options{
		Name: "office", Rates: r.Session.Desk.Rates(), Place: time.UTC, Clock: func() time.Time { return now.Add(time.Minute) },
	})
	sessiontest.Must(t, err)
	sessiontest.Must(t, other.SignIn(demo.SecondClerk))
	weight := load.Weighing{Which: load.Gross, Weight: quantity.Int(52320, quantity.Lb), Source: load.FromScale, Scale: "1"}
	sessiontest.Must(t, scalehouse.Weigh(t.Context(), other, id, weight))
	y.Refresh()
	if !strings.Contains(r.Last(), demo.SecondClerk) || !strings.Contains(r.Last(), id) {
		t.Errorf("after another desk weighed the truck it says %q", r.Last())
	}
	if y.Form().typed.texts["tare"] != "20020" {
		t.Errorf("typed was %q, want 20020", y.Form().typed.texts["tare"])
	}
	sessiontest.Must(t, scalehouse.Refuse(t.Context(), other, id, "musty"))
	y.Refresh()
	if !strings.Contains(r.Last(), demo.SecondClerk) || !strings.Contains(r.Last(), "20020") {
		t.Errorf("after another desk turned the truck away it says %q", r.Last())
	}
}
