package yard

import (
	"context"
	"slices"
	"strings"
	"testing"

	"tenthpoint/internal/load"
	"tenthpoint/internal/office"
	"tenthpoint/internal/scaleticket"
	"tenthpoint/ui/model"
	"tenthpoint/ui/session/sessiontest"
)

// leaving is a form on which a truck that takes corn away has been typed.
func leaving(t *testing.T, r *sessiontest.Room) *LoadForm {
	t.Helper()
	f := NewLoadForm(r.Session, nil)
	if err := f.TurnRound(); err != nil {
		t.Fatal(err)
	}
	for _, field := range [][2]string{
		{"grower", "123"}, {"consignee", "Example Feed Mill"}, {"commodity", "corn"}, {"truck", "T9"},
		{"gross", "78,000"}, {"tare", "27,600"}, {"bin", "B1"},
	} {
		f.Type(field[0], field[1])
	}
	return f
}

// Grain that leaves needs no test and no price, and gets a ticket of weights.
func TestTruckTakesGrainAway(t *testing.T) {
	r := sessiontest.DemoRoom(t, 1)
	f := leaving(t, r)
	if sessiontest.FieldOf(t, f, "grower").Label != "Owner" {
		t.Errorf("the grain's owner is called %q", sessiontest.FieldOf(t, f, "grower").Label)
	}
	for _, field := range f.Fields() {
		if slices.Contains([]string{"terms", "price"}, field.ID) || field.Missing {
			t.Errorf("%s is asked for, missing %v", field.ID, field.Missing)
		}
	}
	// 50,400 lb at 56 lb to the bushel of shelled corn (Iowa Code 210.10).
	figures := f.Preview().Figures
	if figures[0].Value != "50,400" || figures[1].Value != "900.00" || figures[1].Unit != "bu" || figures[2].Value != "" {
		t.Errorf("the large figures are %+v", figures)
	}
	wantOnSlip(t, f.Preview().Slip, "Example Feed Mill", "50,400 lb", "outbound", "weighed only, under no rates", "50,400 lb ÷ 56 lb/bu")
	for _, s := range f.Preview().Slip.Sections {
		for _, l := range s.Lines {
			if l.Value == "price not set" || l.Value == "when settled" || l.Value == "no rates chosen" {
				t.Errorf("the slip of grain that leaves promises %q for %s", l.Value, l.Label)
			}
		}
	}
	if f.Preview().Tenth != "" {
		t.Errorf("a tenth is said to be worth %q", f.Preview().Tenth)
	}
	answerAll(t, r, f)
	number, err := f.Issue()
	if err != nil {
		t.Fatal(err)
	}
	l, err := office.Ticket(context.Background(), r.Session.Desk, number)
	if err != nil || l.Details.Direction != load.Outbound || l.Details.Consignee != "Example Feed Mill" || l.Sample.Moisture != nil {
		t.Errorf("the book has %+v, %v", l, err)
	}
	sessiontest.WantSaid(t, r, model.OK, "is printed")
}

// A truck turns round after it is in the book, and back, and keeps what was
// typed.
func TestTruckTurnsRoundInTheBook(t *testing.T) {
	r := sessiontest.DemoRoom(t, 1)
	f := corn(r, "moisture")
	if err := f.Commit(); err != nil {
		t.Fatal(err)
	}
	if f.Now.CanIssue() {
		t.Fatal("a truck that brings grain may go without a test")
	}
	for _, want := range []load.Direction{load.Outbound, load.Inbound} {
		if err := f.TurnRound(); err != nil {
			t.Fatal(err)
		}
		l, err := office.Load(context.Background(), r.Session.Desk, f.ID())
		if err != nil || l.Details.Direction != want || l.Details.Grower.ID != f.Text("grower") {
			t.Fatalf("the book has %+v, %v; want %s", l, err, want)
		}
		answerAll(t, r, f) // nothing lies in the bins of this elevator yet
		if f.Now.CanIssue() != (want == load.Outbound) {
			t.Errorf("%s: issue %v: %s", want, f.Now.CanIssue(), f.Now.WhyNotIssue())
		}
	}
}

func wantOnSlip(t *testing.T, slip scaleticket.Document, words ...string) {
	t.Helper()
	var text strings.Builder
	for _, s := range slip.Sections {
		for _, l := range s.Lines {
			text.WriteString(strings.Join(append([]string{l.Label, l.Value}, l.Notes...), " ") + "\n")
		}
	}
	for _, w := range words {
		if !strings.Contains(strings.ToLower(text.String()), strings.ToLower(w)) {
			t.Errorf("the slip does not say %q:\n%s", w, text.String())
		}
	}
}
