package session_test

import (
	"testing"

	"tenthpoint/internal/audit"
	"tenthpoint/internal/journal"
	"tenthpoint/ui/session"
	"tenthpoint/ui/session/sessiontest"
)

// The desk warns at its start when the book no longer holds the head that this computer last saw,
// and continues with it only when told to.
func TestDeskSaysThatTheBookWasPutBack(t *testing.T) {
	r := sessiontest.EmptyDemo(t)
	station := &sessiontest.FakeStation{Memory: map[string]string{}}
	r.Session.Station = station
	session.CheckHead(r.Session)
	if len(r.Asked) != 0 {
		t.Fatalf("asked at the first start: %+v", r.Asked)
	}
	seen := journal.FindHeads(r.Session.Recall("head"))
	if len(seen) != 1 {
		t.Fatal("the head is not remembered")
	}
	ahead := journal.Head{Seq: seen[0].Seq + 5, Hash: seen[0].Hash}
	r.Session.Remember("head", ahead.String())
	session.NoteHead(r.Session)
	session.CheckHead(r.Session)
	if len(r.Asked) != 1 || r.Session.Recall("head") != ahead.String() {
		t.Fatalf("asked %d times, remembered %s", len(r.Asked), r.Session.Recall("head"))
	}
	r.Asked[0].Then(nil)
	now := journal.FindHeads(r.Session.Recall("head"))
	if err := audit.HoldsHead(t.Context(), r.Session.Desk.Book(), now[0]); err != nil {
		t.Error(err)
	}
}
