package equipment

import (
	"context"
	"fmt"
	"strings"
	"testing"
	"time"

	"tenthpoint/internal/demo"
	"tenthpoint/internal/elevator"
	"tenthpoint/internal/pin"
	"tenthpoint/internal/scalehouse"
	"tenthpoint/internal/signing"
	"tenthpoint/ui/model"
	"tenthpoint/ui/session/sessiontest"
)

const managersPIN = "2222"

// lockedRoom is a room whose manager has given himself a PIN.
func lockedRoom(t *testing.T) (*Equipment, *sessiontest.Room) {
	t.Helper()
	g, r, _ := gearRoom(t, 0)
	house, err := signing.NewKey(strings.NewReader(strings.Repeat("h", 32)))
	sessiontest.Must(t, err)
	sessiontest.Must(t, scalehouse.RecordKey(context.Background(), r.Session.Desk, signing.HouseKey{Key: house.Public()}))
	g.AskPerson(demo.Manager)
	r.Answer(map[string]string{"pin": managersPIN})
	if !scalehouse.HasPIN(r.Session.Desk, demo.Manager) {
		t.Fatalf("the manager has no PIN: %s", r.Last())
	}
	return g, r
}

// wantPINAsked requires that the question that waits is for the PIN of the manager.
func wantPINAsked(t *testing.T, r *sessiontest.Room) model.Ask {
	t.Helper()
	ask := r.Question()
	if len(ask.Fields) != 1 || ask.Fields[0].ID != "pin" || !ask.Fields[0].Secret || ask.Fields[0].Value != "" {
		t.Fatalf("%q is asked, with %+v", ask.Title, ask.Fields)
	}
	return ask
}

func TestManagersActIsDoneAfterThePIN(t *testing.T) {
	g, r := lockedRoom(t)
	r.Later(6 * time.Minute)
	g.AskPerson(demo.Clerk)
	r.Answer(map[string]string{"role": "tester"})
	wantPINAsked(t, r)
	r.Answer(map[string]string{"pin": "0000"})
	if ask := wantPINAsked(t, r); ask.Fault == "" {
		t.Error("a wrong PIN is asked for again without a word")
	}
	r.Answer(map[string]string{"pin": managersPIN})
	sessiontest.WantSaid(t, r, model.OK, demo.Clerk+" is tester")
	if len(r.Asked) != 0 {
		t.Errorf("%q waits", r.Question().Title)
	}
	g.AskPerson(demo.Clerk) // within the minutes it holds for
	r.Answer(map[string]string{"role": "clerk"})
	sessiontest.WantSaid(t, r, model.OK, demo.Clerk+" is clerk")
}

// What was typed stands there again when the PIN is not at hand.
func TestWithoutThePINTheQuestionComesBack(t *testing.T) {
	g, r := lockedRoom(t)
	r.Later(6 * time.Minute)
	g.AskPerson("")
	r.Answer(map[string]string{"name": "Tove Lindqvist", "role": "tester"})
	ask := wantPINAsked(t, r)
	r.Asked = nil
	ask.GivenUp()
	if again := r.Question(); again.Fields[0].Value != "Tove Lindqvist" {
		t.Errorf("the question comes back with %+v", again.Fields)
	}
}

// A manager who answers at a clerk's desk leaves no way open for the clerk.
func TestManagersPINHoldsForOneActAtAClerksDesk(t *testing.T) {
	g, r := lockedRoom(t)
	sessiontest.Must(t, r.Session.Desk.SignIn(demo.Clerk))
	scalehouse.Unprove(r.Session.Desk, demo.Manager)
	for _, role := range []string{"tester", "clerk"} {
		g.AskPerson(demo.SecondClerk)
		r.Answer(map[string]string{"role": role, "who": demo.Manager})
		wantPINAsked(t, r)
		r.Answer(map[string]string{"pin": managersPIN})
		sessiontest.WantSaid(t, r, model.OK, demo.SecondClerk+" is "+role)
	}
}

// An act without a question of its own is done again by the person.
func TestActByAKeyAsksForThePIN(t *testing.T) {
	_, r := lockedRoom(t)
	r.Session.Fail(pin.Asked{Who: demo.Manager})
	wantPINAsked(t, r)
	r.Answer(map[string]string{"pin": managersPIN})
	if r.State != model.OK || len(r.Asked) != 0 {
		t.Errorf("%v %q", r.State, r.Last())
	}
}

// Answers outlive a power cut, PINs do not.
func TestNoDraftKeepsAPIN(t *testing.T) {
	g, r := lockedRoom(t)
	g.AskPerson(demo.Clerk)
	r.Question().Typed(map[string]string{"pin": "9876", "role": "tester", "gone": "", "who": demo.Manager})
	drafts, err := r.Session.Desk.Book().Drafts(context.Background())
	sessiontest.Must(t, err)
	if text := fmt.Sprint(drafts); strings.Contains(text, "9876") || !strings.Contains(text, "tester") {
		t.Errorf("kept is %s", text)
	}
}

// Which acts ask is ticked in the window, and a forgotten PIN is taken away there.
func TestPINsAreKeptInTheWindow(t *testing.T) {
	g, r := lockedRoom(t)
	askPINActs(r.Session)
	r.Answer(map[string]string{"tickets": model.TickOn})
	if acts := r.Session.Desk.Profile().AskPIN; len(acts) != 1 || acts[0] != elevator.TicketActs {
		t.Errorf("a PIN is asked for %v", acts)
	}
	askPINActs(r.Session)
	r.Answer(map[string]string{"tickets": ""})
	if acts := r.Session.Desk.Profile().AskPIN; len(acts) != 0 {
		t.Errorf("a PIN is still asked for %v", acts)
	}
	g.AskPerson(demo.Clerk)
	r.Answer(map[string]string{"pin": "4711"})
	if !scalehouse.HasPIN(r.Session.Desk, demo.Clerk) {
		t.Fatalf("the clerk has no PIN: %s", r.Last())
	}
	g.AskPerson(demo.Clerk)
	r.Answer(map[string]string{"forgotten": "over the winter"})
	if scalehouse.HasPIN(r.Session.Desk, demo.Clerk) {
		t.Errorf("the clerk's PIN is still there: %s", r.Last())
	}
}
