package disputes

import (
	"slices"
	"strings"
	"testing"

	"tenthpoint/internal/demo"
	"tenthpoint/internal/law"
	"tenthpoint/internal/scalehouse"
	"tenthpoint/ui/model"
	"tenthpoint/ui/session/ask"
	"tenthpoint/ui/session/sessiontest"
)

// A dispute goes from the claim to the decision, each step only when it may, and
// its story can be read.
func TestDisputeIsWalkedThrough(t *testing.T) {
	r := sessiontest.DemoRoom(t, 120)
	d := NewDisputes(r.Session)
	if d.HasDispute() || d.CanSend() || len(d.History()) != 1 {
		t.Fatalf("a house without disputes shows %v", d.History())
	}
	d.Raise()
	if wrong := r.Answer(map[string]string{"ticket": "0", "by": "Nils Farrow", "about": "moisture", "claim": "our meter says 16.1"}); wrong["ticket"] == "" {
		t.Error("ticket 0 is disputed")
	}
	r.Answer(map[string]string{"ticket": "120", "by": "Nils Farrow", "about": "moisture", "claim": "our meter says 16.1"})
	if !d.HasDispute() || !d.CanSend() || !d.CanDecide() {
		t.Fatalf("the dispute was not raised: %q", r.Last())
	}
	d.AskSent()
	r.Answer(map[string]string{"to": "state laboratory"})
	if !strings.Contains(r.Last(), "airtight") || !d.CanSend() {
		t.Errorf("sent without an airtight seal; said %q", r.Last())
	}
	d.AskSent()
	r.Answer(map[string]string{"to": "state laboratory", "witness": "Nils Farrow", "airtight": model.TickOn})
	if d.CanSend() || !d.CanResult() {
		t.Fatalf("after sending: said %q", r.Last())
	}
	d.AskResult()
	if wrong := r.Answer(map[string]string{"finding": "17.1 %", "figure": "171"}); wrong["figure"] == "" {
		t.Error("171 % moisture was taken")
	}
	r.Answer(map[string]string{"finding": "17.1 %", "figure": "17.1", "certificate": "88-1"})
	sessiontest.Must(t, r.Session.Desk.SignIn(demo.Clerk))
	d.AskDecide()
	r.Answer(map[string]string{"who": demo.Manager, "decision": "within the tolerance"})
	if d.CanDecide() || d.Rows()[0].State != model.Locked {
		t.Fatalf("after the decision: %+v; said %q", d.Rows(), r.Last())
	}
	var words []string
	for _, s := range d.History() {
		words = append(words, s.Word)
	}
	if want := []string{"raised", "sample sent", "result", "decided", "next"}; !slices.Equal(words, want) {
		t.Errorf("the story is %v, want %v", words, want)
	}
	d.PrintFile()
	d.PrintProof()
	r.Answer(map[string]string{"figure": "16.1"})
	if len(r.Papers) != 2 {
		t.Errorf("printed %d papers, want the file and the proof; said %q", len(r.Papers), r.Last())
	}
}

// A dispute that nobody followed up is told when its day has passed.
func TestDisputeIsLate(t *testing.T) {
	r := sessiontest.DemoRoom(t, 200)
	d := NewDisputes(r.Session)
	d.Raise()
	r.Answer(map[string]string{"ticket": "1", "by": "Nils Farrow", "about": "weight", "claim": "our scale says less"})
	if row := d.Rows()[0]; row.State != model.Stop || row.Cells[6] != "past its day" {
		t.Errorf("a dispute about the first ticket of the season stands as %+v", row)
	}
}

func TestProofRefusesWhatIsNoTicket(t *testing.T) {
	r := sessiontest.DemoRoom(t, 40)
	ask.Proof(r.Session, 0)
	if wrong := r.Answer(map[string]string{"ticket": "none", "figure": "x"}); wrong["ticket"] == "" || wrong["figure"] == "" {
		t.Errorf("wrong is %v", wrong)
	}
	r.Answer(map[string]string{"ticket": "99,999"})
	if r.State != model.Stop || !strings.Contains(r.Last(), "99999") {
		t.Errorf("a ticket that is not there: %q", r.Last())
	}
}

// A day that the law sets is to be confirmed; one that the house has posted is its own.
func TestDeadlineOfTheLawIsToBeConfirmed(t *testing.T) {
	for _, rules := range []string{"us", "canada"} {
		r := sessiontest.DemoRoom(t, 40)
		p := r.Session.Desk.Profile()
		p.Rules = rules
		sessiontest.Must(t, scalehouse.SetProfile(t.Context(), r.Session.Desk, p))
		d := NewDisputes(r.Session)
		d.Raise()
		r.Answer(map[string]string{"ticket": "5", "by": "Nils Farrow", "about": "moisture", "claim": "our own meter says 16.1"})
		if said := d.History()[0].Text; strings.Contains(said, law.Confirm) != (rules == "canada") {
			t.Errorf("under the rules %s it says %q", rules, said)
		}
	}
}
