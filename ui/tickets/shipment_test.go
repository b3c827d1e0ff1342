package tickets

import (
	"context"
	"fmt"
	"strings"
	"testing"

	"tenthpoint/internal/load"
	"tenthpoint/internal/office"
	"tenthpoint/internal/office/shipments"
	"tenthpoint/ui/session/sessiontest"
)

// What the destination of a load found is asked of its ticket alone, refused where it cannot be, and
// stands on the bill of lading.
func TestWhatTheDestinationFound(t *testing.T) {
	r := sessiontest.DemoRoom(t, 60)
	number := left(r)
	s := NewTickets(r.Session)
	s.Type("ticket 1")
	if s.Ticket.HasLeft() {
		t.Fatal("ticket 1 is of grain that came in")
	}
	s.Type(fmt.Sprint("ticket ", number))
	if !s.Ticket.HasLeft() {
		t.Fatalf("ticket %d left", number)
	}
	s.Arrived()
	if wrong := r.Question().Check(map[string]string{"weight": "none", "found": "moisture"}); wrong["weight"] == "" || wrong["found"] == "" {
		t.Errorf("refused are %v", wrong)
	}
	one, err := shipments.Numbered(context.Background(), r.Session.Desk, number)
	sessiontest.Must(t, err)
	r.Answer(map[string]string{"weight": one.Origin.Weight.Figure(), "found": "moisture=14.4"})
	one, err = shipments.Numbered(context.Background(), r.Session.Desk, number)
	sessiontest.Must(t, err)
	if one.Arrived == nil || !one.Weight.IsZero() || !one.Percent.IsZero() {
		t.Fatalf("it arrived as %+v", one.Arrived)
	}
	paper := shipments.Lading(one, r.Session.Desk.Profile()).Text(80)
	if !strings.Contains(paper, "14.4 %") {
		t.Errorf("the bill of lading says\n%s", paper)
	}
}

// left is the first ticket of the demo of grain that left.
func left(r *sessiontest.Room) int64 {
	r.T.Helper()
	for number := int64(1); number < 60; number++ {
		l, err := office.Ticket(context.Background(), r.Session.Desk, number)
		if err == nil && l.Details.Direction == load.Outbound && l.Phase == load.Ticketed {
			return number
		}
	}
	r.T.Fatal("the demo loads nothing out")
	return 0
}
