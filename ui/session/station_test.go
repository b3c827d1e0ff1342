package session_test

import (
	"testing"

	"tenthpoint/internal/scalehouse"

	"tenthpoint/ui/session"
	"tenthpoint/ui/session/sessiontest"
)

// Why weights are typed holds for one person on one day, at the station where it was
// said, also after the program has stopped.
func TestManualReasonHoldsForADay(t *testing.T) {
	r := sessiontest.DemoRoom(t, 0)
	station := &sessiontest.FakeStation{Memory: map[string]string{}}
	r.Session.Station = station
	session.SetManualReason(r.Session, "indicator or link out of order")
	again := session.New(r.Session.Desk, r)
	again.Station = station
	if got := session.ManualReason(again); got != "indicator or link out of order" {
		t.Errorf("after a stop the reason is %q", got)
	}
	others := session.New(r.AgainAt(sessiontest.Noon, "Owen Tarrant").Session.Desk, r)
	others.Station = station
	tomorrow := session.New(r.AgainAt(sessiontest.Noon.AddDate(0, 0, 1), r.Session.Desk.Who().Name).Session.Desk, r)
	tomorrow.Station = station
	if session.ManualReason(others) != "" || session.ManualReason(tomorrow) != "" {
		t.Errorf("another person has %q, the next day %q", session.ManualReason(others), session.ManualReason(tomorrow))
	}
}

// A real house that settles on invented rates wears the mark as the invented elevator
// does, and loses it with its own rates.
func TestExampleRatesAreMarkedAllDay(t *testing.T) {
	r := sessiontest.DemoRoom(t, 0)
	p := r.Session.Desk.Profile()
	p.Demo = false
	sessiontest.Must(t, scalehouse.SetProfile(t.Context(), r.Session.Desk, p))
	if got := r.Session.Masthead().Example; got != "example rates - not for trade" {
		t.Errorf("the house on example rates is marked %q", got)
	}
	if got := sessiontest.EmptyRoom(t).Session.Masthead().Example; got != "" {
		t.Errorf("a house that settles nothing yet is marked %q", got)
	}
}
