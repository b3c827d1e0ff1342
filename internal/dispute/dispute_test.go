package dispute

import (
	"strings"
	"testing"

	"tenthpoint/internal/law"
	"tenthpoint/internal/message"
	"tenthpoint/internal/message/errortest"
	"tenthpoint/internal/quantity"
)

var day = quantity.MustDate("2026-10-09") // a Friday

func raised() Raised {
	return Raised{Ticket: 7, By: "Hollis Farm", About: "moisture", Claim: "my own meter says 16.9", Day: day}
}

func sent() Sent {
	return Sent{Sample: "S12", SealedBy: "R. Clerk", Airtight: true, To: "state laboratory", Day: day}
}

func TestLife(t *testing.T) {
	d := Dispute{ID: "D1"}
	facts := []Fact{raised(), sent(), Resulted{By: "state laboratory", Finding: "17.1 %", Day: day}, Decided{Decision: "settle on 17.1", Corrected: 9, Day: day}}
	want := []Phase{Open, Testing, Tested, Closed}
	for i, f := range facts {
		if err := d.Apply(f); err != nil {
			t.Fatalf("%s: %v", f.Kind(), err)
		}
		if d.Phase != want[i] {
			t.Errorf("after %s the phase is %q, want %q", f.Kind(), d.Phase, want[i])
		}
	}
}

// Every move that may not follow is refused with a sentence and changes
// nothing.
func TestIllegalMoves(t *testing.T) {
	dry := sent()
	dry.Airtight = false
	for _, c := range []struct {
		name   string
		before []Fact
		move   Fact
		want   errortest.Want
	}{
		{"send before raising", nil, sent(), errortest.NotFound()},
		{"raise twice", []Fact{raised()}, raised(), errortest.WrongPhase()},
		{"send twice", []Fact{raised(), sent()}, sent(), errortest.WrongPhase("state laboratory")},
		{"send after result", []Fact{raised(), Resulted{By: "x", Finding: "y"}}, sent(), errortest.WrongPhase()},
		{"not airtight", []Fact{raised()}, dry, errortest.WrongPhase()},
		{"no claim", nil, Raised{Ticket: 7, By: "x"}, errortest.WrongPhase()},
		{"no finding", []Fact{raised()}, Resulted{By: "x"}, errortest.WrongPhase()},
		{"no words", []Fact{raised()}, Decided{Stands: true}, errortest.WrongPhase()},
		{"stands and corrected", []Fact{raised()}, Decided{Decision: "x", Stands: true, Corrected: 9}, errortest.WrongPhase()},
		{"neither", []Fact{raised()}, Decided{Decision: "x"}, errortest.WrongPhase()},
		{"decide twice", []Fact{raised(), Decided{Decision: "x", Stands: true, Day: day}}, Decided{Decision: "x", Stands: true}, errortest.WrongPhase("2026-10-09")},
	} {
		t.Run(c.name, func(t *testing.T) {
			d := Dispute{ID: "D1"}
			for _, f := range c.before {
				if err := d.Apply(f); err != nil {
					t.Fatal(err)
				}
			}
			before := d
			err := d.Apply(c.move)
			if !c.want.Met(err) {
				t.Errorf("got %v, want a sentence with %q", err, c.want)
			}
			if d != before {
				t.Errorf("the refused move changed the dispute")
			}
		})
	}
}

func TestDue(t *testing.T) {
	for _, c := range []struct{ rule, issued, want string }{
		{"canada", "2026-10-09", "2026-10-16"},
		{"us", "2026-10-05", "2026-10-07"}, // Monday
		{"us", "2026-10-09", "2026-10-13"}, // Friday: Monday, Tuesday
		{"us", "2026-10-10", "2026-10-13"}, // Saturday
		{"us", "1999-12-31", "2000-01-04"}, // before the day weeks are counted from
	} {
		r, err := RuleFor(law.First(), c.rule)
		if err != nil {
			t.Fatal(err)
		}
		if got := r.Due(quantity.MustDate(c.issued)); got.String() != c.want {
			t.Errorf("%s, issued %s: due %s, want %s", c.rule, c.issued, got, c.want)
		}
	}
	if _, err := RuleFor(law.First(), "moon"); err == nil {
		t.Error("an unknown rule set was taken")
	}
}

func TestFactsRoundTrip(t *testing.T) {
	for kind := range readers {
		if _, err := Read(kind, []byte(`{"unknown":"x"}`)); err == nil {
			t.Errorf("%s took an unknown field", kind)
		}
		if f, err := Read(kind, []byte(`{}`)); err != nil || f.Kind() != kind {
			t.Errorf("%s: %v, %v", kind, f, err)
		}
	}
	if _, err := Read("dispute.eaten", nil); err == nil {
		t.Error("an unknown kind was taken")
	}
}

// TestDaysOfTheLawAreToBeConfirmed: a day that a published rule gives says so, the house's own does
// not.
func TestDaysOfTheLawAreToBeConfirmed(t *testing.T) {
	for rule, confirmed := range map[string]bool{"us": true, "canada": true, House: false} {
		r := raised()
		r.Rule = rule
		said := r.Stated(message.New("by %s", r.Day)).String()
		if r.IsByLaw() != confirmed || strings.HasSuffix(said, law.Confirm) != confirmed || !strings.HasPrefix(said, "by 2026-10-09") {
			t.Errorf("%s: %q", rule, said)
		}
	}
}
