package yard

import (
	"strings"
	"testing"

	"tenthpoint/internal/elevator"
	"tenthpoint/internal/entrytest"
	"tenthpoint/internal/load"
	"tenthpoint/schedules"
	"tenthpoint/ui/model"
	"tenthpoint/ui/session/sessiontest"
)

// answerAll answers everything that is asked about a load, with the first reason of
// each list.
func answerAll(t *testing.T, r *sessiontest.Room, f *LoadForm) {
	t.Helper()
	for range 9 {
		if !(questions{f}.waiting()) {
			return
		}
		before := len(f.Now.asked)
		questions{f}.ask()
		reason := r.Question().Fields[len(r.Question().Fields)-1].Options[0].Code
		if wrong := r.Answer(map[string]string{"reason": reason}); len(wrong) > 0 || len(f.Now.asked) >= before {
			t.Fatalf("%q is no answer: %v, %s", reason, wrong, r.Last())
		}
	}
}

// Everything that nobody means is refused in its field, or asked about: the ticket
// cannot be issued, and what keeps it back is said in the form, on the slip and by
// the key that issues.
func TestAbsurdLoadsAreHeldBack(t *testing.T) {
	editions, err := schedules.Editions()
	sessiontest.Must(t, err)
	for _, c := range entrytest.Absurd(t, "../..") {
		if c.Typed[0].Field == "day" {
			continue // the window takes a load on the day it comes
		}
		r := sessiontest.RoomAt(t, entrytest.Open(t, c.House, editions))
		f := NewLoadForm(r.Session, nil)
		outcome := typeCase(t, r, f, c)
		question, isAsked := strings.CutPrefix(c.Outcome, "asked ")
		if !isAsked {
			if outcome != c.Outcome {
				t.Errorf("absurd.txt:%d: %v is %s, want %s", c.Line, c.Typed, outcome, c.Outcome)
			}
			continue
		}
		if len(f.Now.asked) == 0 || f.Now.asked[0].ID != question {
			t.Errorf("absurd.txt:%d: %v is asked %v, want %s", c.Line, c.Typed, f.Now.asked, question)
			continue
		}
		said := f.Now.questions()[0].String()
		if f.Now.CanIssue() || f.Now.settlement != nil && !strings.Contains(f.Now.WhyNotIssue(), said) {
			t.Errorf("absurd.txt:%d: it may be issued %v, %q", c.Line, f.Now.CanIssue(), f.Now.WhyNotIssue())
		}
		wantOnSlip(t, f.Preview().Slip, said)
	}
}

// A question is answered once, with a reason of its list, and the answer holds until
// the figure changes.
func TestAnAnswerHoldsForItsFigures(t *testing.T) {
	editions, err := schedules.Editions()
	sessiontest.Must(t, err)
	r := sessiontest.RoomAt(t, entrytest.Open(t, "guarded", editions))
	f := NewLoadForm(r.Session, nil)
	typeCase(t, r, f, entrytest.Case{House: "guarded", Typed: []entrytest.Text{{Field: "moisture", Typed: "36"}}})
	if _, err := f.Issue(); err == nil {
		t.Fatal("a ticket was issued with a question open")
	}
	answerAll(t, r, f)
	if !f.Now.CanIssue() || len(f.Book.Answers) != 1 {
		t.Fatalf("answered, and %q; the book has %v", f.Now.WhyNotIssue(), f.Book.Answers)
	}
	f.Type("moisture", "37")
	if f.Now.CanIssue() {
		t.Error("the answer about 36 % holds for 37 %")
	}
	f.Type("moisture", "36")
	sessiontest.Must(t, f.Commit())
	if !f.Now.CanIssue() {
		t.Errorf("the answer about 36 %% was lost: %s", f.Now.WhyNotIssue())
	}
}

// A weight taken again shows the old one and asks for the reason.
func TestAReplacedWeightIsAskedAbout(t *testing.T) {
	editions, err := schedules.Editions()
	sessiontest.Must(t, err)
	r := sessiontest.RoomAt(t, entrytest.Open(t, "guarded", editions))
	f := NewLoadForm(r.Session, nil)
	typeCase(t, r, f, entrytest.Case{House: "guarded"})
	f.Type(string(load.Gross), "52280")
	field := sessiontest.FieldOf(t, f, string(load.Gross))
	if field.State != model.Warn || !strings.Contains(field.Note, "52,300 lb") || f.Now.CanIssue() {
		t.Errorf("the field says %d %q; it may be issued: %v", field.State, field.Note, f.Now.CanIssue())
	}
	answerAll(t, r, f)
	if !f.Now.CanIssue() {
		t.Errorf("answered, and %s", f.Now.WhyNotIssue())
	}
}

// What the elevator leaves to a manager is answered under a manager's name.
func TestAManagersQuestionAsksForTheManager(t *testing.T) {
	editions, err := schedules.Editions()
	sessiontest.Must(t, err)
	r := sessiontest.RoomAt(t, entrytest.Open(t, "guarded", editions))
	f := NewLoadForm(r.Session, nil)
	typeCase(t, r, f, entrytest.Case{House: "guarded", Typed: []entrytest.Text{
		{Field: "commodity", Typed: "soybeans"}, {Field: "moisture", Typed: "12"}, {Field: "bin", Typed: "B3"}, {Field: "price", Typed: "10.30"},
	}})
	if len(f.Now.asked) != 1 || f.Now.asked[0].Act != elevator.GuardManager {
		t.Fatalf("asked %+v", f.Now.asked)
	}
	questions{f}.ask()
	if r.Question().Fields[0].ID != "who" {
		t.Errorf("asked %+v", r.Question().Fields)
	}
}
