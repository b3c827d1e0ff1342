package yard

import (
	"bytes"
	"context"
	"errors"
	"strings"
	"testing"

	"tenthpoint/internal/demo"
	"tenthpoint/internal/load"
	"tenthpoint/internal/office"
	"tenthpoint/ui/model"
	"tenthpoint/ui/session"
	"tenthpoint/ui/session/sessiontest"
)

// A ticket is issued and printed only when the load is whole; otherwise the reason
// is shown.
func TestIssueOnlyWhole(t *testing.T) {
	r := sessiontest.DemoRoom(t, 0)
	y := NewYard(r.Session)
	fillIn(y.Form(), wholeCorn[:6])
	if y.Issue() {
		t.Fatal("a load without tare was issued")
	}
	sessiontest.WantSaid(t, r, model.Stop, "No tare yet")
	fillIn(y.Form(), wholeCorn[6:])
	y.Form().Type("musty", "perhaps")
	if y.Issue() {
		t.Fatal("a load with an unreadable field was issued")
	}
	sessiontest.WantSaid(t, r, model.Stop, "yes or no")
	y.Form().Type("musty", "no")
	if !y.Issue() {
		t.Fatalf("a whole load was not issued: %s", r.Last())
	}
	sessiontest.WantSaid(t, r, model.OK, "ticket 1 is printed: ticket-1.pdf")
	if pdf := r.Papers["ticket-1"]; !bytes.HasPrefix(pdf, []byte("%PDF")) {
		t.Error("ticket-1 is no PDF")
	}
	l, err := office.Ticket(context.Background(), r.Session.Desk, 1)
	sessiontest.Must(t, err)
	if l.Phase != load.Ticketed || l.Copies != 1 || l.Weigher != demo.Manager {
		t.Errorf("the book has %s, %d copies, weigher %s", l.Phase, l.Copies, l.Weigher)
	}
	if !y.Form().IsBlank() {
		t.Error("no blank form was taken up for the next truck")
	}
	y.PrintAgain()
	if r.Papers["ticket-1-reprint-1"] == nil {
		t.Errorf("no reprint: %s", r.Last())
	}
}

// A printer that fails leaves the ticket issued and says so.
func TestFailedPrintLeavesTheTicket(t *testing.T) {
	r := sessiontest.DemoRoom(t, 0)
	r.Session.Printer = jammed{}
	y := NewYard(r.Session)
	fillIn(y.Form(), wholeCorn)
	if !y.Issue() {
		t.Fatal(r.Last())
	}
	sessiontest.WantSaid(t, r, model.Warn, "ticket 1 is issued and was not printed: the printer is out of paper.")
	if l, err := office.Ticket(context.Background(), r.Session.Desk, 1); err != nil || l.Phase != load.Ticketed {
		t.Errorf("the ticket is %v, %v", l, err)
	}
}

// A printer that is off is reported at once, without the advice to print again what is queued.
func TestPaperThatWaits(t *testing.T) {
	r := sessiontest.DemoRoom(t, 0)
	r.Session.Printer = switchedOff{}
	y := NewYard(r.Session)
	fillIn(y.Form(), wholeCorn)
	if !y.Issue() {
		t.Fatal(r.Last())
	}
	sessiontest.WantSaid(t, r, model.Warn, "Unplugged or turned off")
	if strings.Contains(r.Last(), "again") {
		t.Errorf("said %q", r.Last())
	}
}

type switchedOff struct{}

func (switchedOff) Print(context.Context, string, []byte) (string, error) {
	return "", session.PaperWaits{Why: errors.New("Unplugged or turned off")}
}

type jammed struct{}

func (jammed) Print(context.Context, string, []byte) (string, error) {
	return "", errors.New("the printer is out of paper")
}

// Beyond a limit only a manager lets a load through, under the manager's own
// name and with a reason.
func TestManagerAcceptsBeyondALimit(t *testing.T) {
	r := sessiontest.DemoRoom(t, 0)
	sessiontest.Must(t, r.Session.Desk.SignIn(demo.Clerk))
	session.SetManualReason(r.Session, "read from the indicator")
	f := corn(r)
	if (limits{f}).canAccept() {
		t.Fatal("an ordinary load has a limit to accept")
	}
	f.Type("heating", "yes")
	if !(limits{f}).canAccept() || f.Now.CanIssue() {
		t.Fatalf("heating corn: can accept %v, can issue %v", limits{f}.canAccept(), f.Now.CanIssue())
	}
	limits{f}.ask()
	if !strings.Contains(r.Question().Text, "Heating is present") {
		t.Errorf("asked %q", r.Question().Text)
	}
	if wrong := r.Answer(map[string]string{"who": demo.Manager}); wrong["reason"] == "" {
		t.Fatal("accepted without a reason")
	}
	if wrong := r.Answer(map[string]string{"who": demo.Manager, "reason": "to the dryer at once"}); wrong != nil {
		t.Fatal(wrong)
	}
	if !f.Now.CanIssue() {
		t.Errorf("after the leave the ticket waits for %q", f.Now.WhyNotIssue())
	}
	got := f.inBook().Accepted
	if len(got) != 1 || got[0].Who != demo.Manager || got[0].Reason != "to the dryer at once" {
		t.Errorf("on record: %+v", got)
	}
	if who := r.Session.Desk.Who().Name; who != demo.Clerk {
		t.Errorf("%s is left at the desk, not the clerk", who)
	}
}

// A refused load leaves the yard with its reason.
func TestRefuse(t *testing.T) {
	r := sessiontest.DemoRoom(t, 0)
	y := NewYard(r.Session)
	here := len(y.Rows())
	y.Refuse()
	if len(r.Asked) != 0 {
		t.Fatal("a blank form was asked to be refused")
	}
	fillIn(y.Form(), wholeCorn[:4])
	sessiontest.Must(t, y.Form().Commit())
	id := y.Form().ID()
	y.Refuse()
	if q := r.Question(); !q.Danger || !strings.Contains(q.Title, "77") {
		t.Errorf("asked %+v", q)
	}
	if wrong := r.Answer(map[string]string{"reason": "sour"}); wrong != nil {
		t.Fatal(wrong)
	}
	l, err := office.Load(context.Background(), r.Session.Desk, id)
	sessiontest.Must(t, err)
	if l.Phase != load.TurnedAway || l.Ended.Reason != "sour" || len(y.Rows()) != here || !y.Form().IsBlank() {
		t.Errorf("the load is %s (%s), %d trucks are left", l.Phase, l.Ended.Reason, len(y.Rows()))
	}
}

// A truck typed by mistake is taken back without a reason and is no refusal; once weighed it stays.
func TestWithdraw(t *testing.T) {
	r := sessiontest.DemoRoom(t, 0)
	y := NewYard(r.Session)
	here := len(y.Rows())
	y.Withdraw()
	if len(r.Asked) != 0 || y.Form().Preview().CanWithdraw {
		t.Fatal("a blank form was asked to be withdrawn")
	}
	fillIn(y.Form(), wholeCorn[:3])
	sessiontest.Must(t, y.Form().Commit())
	id := y.Form().ID()
	if !y.Form().Preview().CanWithdraw {
		t.Fatalf("load %s cannot be withdrawn before it is weighed", id)
	}
	y.Withdraw()
	if wrong := r.Answer(nil); wrong != nil {
		t.Fatal(wrong)
	}
	l, err := office.Load(context.Background(), r.Session.Desk, id)
	sessiontest.Must(t, err)
	if l.Phase != load.TakenBack || len(y.Rows()) != here || !y.Form().IsBlank() {
		t.Errorf("the load is %s, %d trucks are left", l.Phase, len(y.Rows()))
	}
	fillIn(y.Form(), wholeCorn[:4])
	if y.Form().Preview().CanWithdraw {
		t.Error("a weighed load can be withdrawn")
	}
}

// What usually follows from a grower or a truck is offered, and never replaces a
// typed text.
func TestOffers(t *testing.T) {
	r := sessiontest.DemoRoom(t, 0)
	known := r.Session.Known()
	truck, _ := known.Truck("23")
	tests := []struct {
		name   string
		typed  [][2]string
		fields map[string]string
	}{
		{"a truck brings its grower", [][2]string{{"truck", "23"}}, map[string]string{"grower": truck.Grower}},
		{"a grower typed stays", [][2]string{{"grower", "106"}, {"truck", "23"}}, map[string]string{"grower": "106"}},
		{"an unknown truck brings nobody", [][2]string{{"truck", "nowhere"}}, map[string]string{"grower": "", "commodity": ""}},
		{"nothing follows from nobody", [][2]string{{"grower", "nobody"}}, map[string]string{"truck": "", "commodity": ""}},
	}
	for _, tt := range tests {
		f := NewLoadForm(r.Session, nil)
		fillIn(f, tt.typed)
		for id, want := range tt.fields {
			if got := f.Text(id); got != want {
				t.Errorf("%s: %s is %q, want %q", tt.name, id, got, want)
			}
		}
	}
	y := NewYard(r.Session)
	fillIn(y.Form(), wholeCorn)
	if !y.Issue() {
		t.Fatal(r.Last())
	}
	f := NewLoadForm(r.Session, nil)
	f.Type("grower", "123")
	if got := f.Text("commodity"); got != "corn" {
		t.Errorf("the grower who brought corn is offered %q", got)
	}
}

// The usual shares of a grower come with the grower.
func TestSharesComeWithTheGrower(t *testing.T) {
	r := sessiontest.DemoRoom(t, 0)
	for _, g := range r.Session.Known().Growers {
		f := NewLoadForm(r.Session, nil)
		f.Type("grower", g.ID)
		if got := len(f.Now.Load.Details.Shares); got != len(g.Shares) {
			t.Errorf("%s has %d shares, the load %d", g.Name, len(g.Shares), got)
		}
		if shares := sessiontest.FieldOf(t, f, "grower").Reading; (shares == "") != (len(g.Shares) == 0) {
			t.Errorf("beside %s stands %q", g.Name, shares)
		}
	}
}

// A stored tare is taken with the day it was weighed, and a tare from the scale
// can be stored for next time.
func TestStoredTare(t *testing.T) {
	r := sessiontest.DemoRoom(t, 0)
	f := corn(r, "tare")
	f.Type("truck", "23")
	stored, _ := r.Session.Known().Truck("23")
	if hint := sessiontest.FieldOf(t, f, "tare").Reading; !strings.Contains(hint, stored.Tare.Figure()) {
		t.Errorf("beside the tare stands %q, want the stored %s", hint, stored.Tare)
	}
	if !(storedTare{f}).canUse() || (storedTare{f}).canStore() {
		t.Fatalf("can use %v, can store %v", (storedTare{f}).canUse(), (storedTare{f}).canStore())
	}
	sessiontest.Must(t, storedTare{f}.use())
	tare, _ := f.Now.Load.Weight(load.Tare, "")
	if tare.Source != load.StoredTare || !tare.Weight.Equal(*stored.Tare) || tare.Weighing.Taken != stored.Taken || (storedTare{f}).canUse() {
		t.Errorf("the load has %+v", tare)
	}
	f.Type("tare", "31000")
	if !(storedTare{f}).canStore() {
		t.Fatal("a typed tare cannot be stored")
	}
	sessiontest.Must(t, storedTare{f}.store())
	if again, _ := r.Session.Known().Truck("23"); again.Tare.Figure() != "31,000" || again.Taken != r.Session.Desk.Today() {
		t.Errorf("stored %s of %s", again.Tare, again.Taken)
	}
}

// A factor that the form does not ask for gets a field of its own.
func TestAnotherResult(t *testing.T) {
	r := sessiontest.DemoRoom(t, 0)
	f := corn(r)
	asked := ""
	ResultsOf(f).AskMore(func(field string) { asked = field })
	if wrong := r.Answer(map[string]string{"factor": "protein"}); wrong != nil || asked != "protein" {
		t.Fatalf("asked for %q: %v", asked, wrong)
	}
	f.Type("protein", "8.4")
	sessiontest.Must(t, f.Commit())
	if got := sessiontest.FieldOf(t, f, "protein"); got.Value != "8.4" || got.Part != model.SamplePart {
		t.Errorf("the field is %+v", got)
	}
}

// What few loads need has a sheet of its own, and only what changed is written.
func TestSeldomFacts(t *testing.T) {
	r := sessiontest.DemoRoom(t, 0)
	f := corn(r)
	sessiontest.Must(t, f.Commit())
	before := len(mustFacts(t, r, f.ID()))
	detailsSheet{f}.ask()
	if wrong := r.Answer(map[string]string{"until": "4/5"}); wrong["until"] == "" {
		t.Error("4/5 was taken for a day")
	}
	if wrong := r.Answer(map[string]string{"until": ""}); wrong != nil {
		t.Fatal(wrong)
	}
	if after := len(mustFacts(t, r, f.ID())); after != before {
		t.Errorf("an unchanged sheet wrote %d facts", after-before)
	}
	detailsSheet{f}.ask()
	if wrong := r.Answer(map[string]string{"driver": "A. Driver", "kept": "shelf 2", "until": "2025-10-17"}); wrong != nil {
		t.Fatal(wrong)
	}
	l := f.inBook()
	if l.Details.Driver != "A. Driver" || l.Sample.Kept != "shelf 2" || l.Sample.Until.String() != "2025-10-17" || l.Sample.Moisture == nil {
		t.Errorf("the book has %+v", l)
	}
}

// A truck and its trailer are weighed apart, and the ticket waits for all four
// weights.
func TestTrailerWeighedApart(t *testing.T) {
	r := sessiontest.DemoRoom(t, 0)
	f := corn(r)
	if !f.Now.CanSplit() {
		t.Fatal("a load in one draft cannot be split")
	}
	f.Split()
	if f.Now.CanSplit() || f.Now.CanIssue() || f.Now.FirstMissing() != "gross.trailer" {
		t.Fatalf("after the split: can issue %v, first missing %q", f.Now.CanIssue(), f.Now.FirstMissing())
	}
	if why := f.Now.WhyNotIssue(); !strings.Contains(why, "Gross, trailer") {
		t.Errorf("the ticket waits for %q", why)
	}
	f.Type("gross.trailer", "30000")
	f.Type("tare.trailer", "9000")
	if net := f.Preview().Figures[0].Value; net != "49,180" || !f.Now.CanIssue() {
		t.Errorf("net %s over both drafts, can issue %v: %s", net, f.Now.CanIssue(), f.Now.WhyNotIssue())
	}
	sessiontest.Must(t, f.Commit())
	again := NewLoadForm(r.Session, f.inBook())
	if got := sessiontest.FieldOf(t, again, "tare.trailer").Value; got != "9,000" || again.Now.CanSplit() {
		t.Errorf("the book gives the trailer a tare of %q", got)
	}
}

// Whether the driver is on the truck goes with the weights that follow.
func TestDriverOnTheTruck(t *testing.T) {
	r := sessiontest.DemoRoom(t, 0)
	f := corn(r, "tare")
	sessiontest.Must(t, f.Commit())
	detailsSheet{f}.ask()
	if wrong := r.Answer(map[string]string{"driverOn": "off"}); wrong != nil {
		t.Fatal(wrong)
	}
	f.Type("tare", "24120")
	sessiontest.Must(t, f.Commit())
	gross, _ := f.inBook().Weight(load.Gross, "")
	tare, _ := f.inBook().Weight(load.Tare, "")
	if gross.DriverOn != "" || tare.DriverOn != "off" {
		t.Errorf("gross with the driver %q, tare with the driver %q", gross.DriverOn, tare.DriverOn)
	}
}
