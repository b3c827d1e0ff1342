package yard

import (
	"fmt"
	"slices"
	"strings"
	"tenthpoint/internal/load"
	"tenthpoint/internal/office"
	"tenthpoint/ui/model"
	"tenthpoint/ui/session"
	"tenthpoint/ui/session/sessiontest"
	"testing"
	"time"
)

// The last ticket stays in sight until the next truck is weighed.
func TestTheLastTicketStays(t *testing.T) {
	r := sessiontest.EmptyDemo(t)
	y := NewYard(r.Session)
	if got := y.Form().Preview().Figures[0].Value; got != session.NotYet {
		t.Fatalf("before any ticket there is a net of %q", got)
	}
	fillIn(y.Form(), wholeCorn)
	issued := y.Form().Preview().Figures
	if !y.Issue() {
		t.Fatal(y.Form().Now.WhyNotIssue())
	}
	after := y.Form().Preview()
	for i, f := range after.Figures {
		if f.Value != issued[i].Value || f.Unit != issued[i].Unit || f.State != model.Locked {
			t.Errorf("after the ticket stands %+v, on it %+v", f, issued[i])
		}
	}
	if !strings.Contains(after.Margin.Text, "77") {
		t.Errorf("beside the figures stands %q", after.Margin.Text)
	}
	y.Form().Type("grower", "123")
	if y.Form().Preview().Figures[0].Value != issued[0].Value {
		t.Error("the first letter of the next truck takes the last ticket away")
	}
	y.Form().Type("gross", "40000")
	if got := y.Form().Preview().Figures[0]; got.State == model.Locked {
		t.Errorf("the next truck is weighed, and %+v stands there", got)
	}
}

// A ticket issued by mistake is voided by one key, with its reason, as long as the truck stands there.
func TestTheLastTicketIsVoidedWithinAMinute(t *testing.T) {
	r := sessiontest.EmptyDemo(t)
	y := NewYard(r.Session)
	if y.VoidLast(); len(r.Asked) > 0 {
		t.Fatal("before any ticket one is asked to be voided")
	}
	for at, wait := range []time.Duration{61 * time.Second, 59 * time.Second} {
		fillIn(y.Form(), append(slices.Clone(wholeCorn), [2]string{"truck", fmt.Sprint("T", at)}))
		if !y.Issue() {
			t.Fatal(y.Form().Now.WhyNotIssue())
		}
		r.Later(wait)
		if got, want := y.CanVoidLast(), wait < time.Minute; got != want {
			t.Errorf("after %s the ticket can be voided by its key: %t", wait, got)
		}
	}
	y.Form().Type("grower", "123") // the next truck is typed already
	y.VoidLast()
	r.Answer(map[string]string{"reason": "wrong truck"})
	number, _, err := office.LastTicket(t.Context(), r.Session.Desk)
	sessiontest.Must(t, err)
	l, err := office.Ticket(t.Context(), r.Session.Desk, number)
	sessiontest.Must(t, err)
	if l.Phase != load.Void || l.Ended.Reason != "wrong truck" || y.CanVoidLast() {
		t.Errorf("ticket %d is %s for %q; it can be voided again: %t", number, l.Phase, l.Ended.Reason, y.CanVoidLast())
	}
	if got := y.Form().Preview().Figures[0]; got.State == model.Locked {
		t.Errorf("a void ticket stays in sight: %+v", got)
	}
}
