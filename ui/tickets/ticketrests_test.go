package tickets

import (
	"context"
	"fmt"
	"strings"
	"testing"

	"tenthpoint/internal/load"
	"tenthpoint/internal/office"
	"tenthpoint/internal/office/receipts"
	acts "tenthpoint/internal/scalehouse/receipts"
	"tenthpoint/ui/session/sessiontest"
)

// A ticket that a warehouse receipt rests on is voided with it, after what follows was shown; until
// then nothing is written.
func TestVoidWithWhatRestsOnIt(t *testing.T) {
	r := sessiontest.DemoRoom(t, 60)
	number := receipted(r)
	s := NewTickets(r.Session)
	s.Type(fmt.Sprint("ticket ", number))
	s.Void()
	if q := r.Question(); !strings.Contains(q.Text, "warehouse receipt 1") {
		t.Errorf("it is asked %q", q.Text)
	}
	r.Answer(map[string]string{"reason": "weighed twice"})
	if l := s.Load(); l.Number != number || l.Phase != load.Ticketed {
		t.Fatalf("before the second answer ticket %d is %s", l.Number, l.Phase)
	}
	if q := r.Question(); !q.Danger || !strings.Contains(q.Text, "warehouse receipt 1") {
		t.Errorf("then it is asked %+v", q)
	}
	r.Answer(map[string]string{})
	if l := s.Load(); l.Phase != load.Void {
		t.Errorf("afterward ticket %d is %s", l.Number, l.Phase)
	}
	all, err := receipts.All(context.Background(), r.Session.Desk)
	if sessiontest.Must(t, err); len(all) != 1 || all[0].InForce() {
		t.Errorf("the receipts are %+v", all)
	}
}

// receipted issues a warehouse receipt for the first ticket that may have one.
func receipted(r *sessiontest.Room) int64 {
	r.T.Helper()
	ctx := context.Background()
	for number := int64(1); number < 60; number++ {
		l, err := office.Ticket(ctx, r.Session.Desk, number)
		if err != nil {
			continue
		}
		order := receipts.Order{Grower: l.Details.Grower.ID, Tickets: []receipts.Chosen{{Number: number}}}
		if len(l.Details.Shares) > 0 {
			order.Grower = l.Details.Shares[0].ID
		}
		if _, err := acts.Issue(ctx, r.Session.Desk, order); err == nil {
			return number
		}
	}
	r.T.Fatal("no ticket may have a receipt")
	return 0
}
