package tickets

import (
	"fmt"
	"strings"
	"testing"

	"tenthpoint/internal/load"
	"tenthpoint/ui/model"
	"tenthpoint/ui/session/sessiontest"
	yardpkg "tenthpoint/ui/yard"
)

// reissueRow is one status of a ticket, and what the screen shows and allows for it.
type reissueRow struct {
	name          string
	load          load.Load
	may           bool
	whyNot        string
	state         model.State
	headline      string
	canBeCompared bool
}

// The screen of tickets shows and allows by the status of a ticket.
func TestWhatMayBeReissued(t *testing.T) {
	void := load.Ending{Reason: "torn", Stamp: load.Stamp{Who: "Mae Orton"}}
	s := NewTickets(sessiontest.DemoRoom(t, 0).Session)
	for _, c := range []reissueRow{
		{"in force", load.Load{Phase: load.Ticketed, Number: 7}, false, "Ticket 7 is in force. Only a void ticket is reissued.", model.OK, "Issued", false},
		{"void", load.Load{Phase: load.Void, Number: 7, Ended: void}, true, "", model.Stop, "by Mae Orton: torn", false},
		{"void and reissued", load.Load{Phase: load.Void, Number: 7, Ended: void, Reissue: load.Reissue{By: 9}}, false,
			"Ticket 7 is void and was reissued as ticket 9. Go on with that one.", model.Stop, "Void, reissued as ticket 9: torn", true},
		{"in place of a void one", load.Load{Phase: load.Ticketed, Number: 9, Reissues: 7, Why: "torn"}, false,
			"Ticket 9 is in force.", model.Wait, "In place of ticket 7, void: torn · Issued", true},
		{"corrected", load.Load{Phase: load.Corrected, Number: 7, Ended: load.Ending{By: 8}}, false, "was corrected by ticket 8", model.Locked, "Corrected by ticket 8", true},
		{"rejected", load.Load{Phase: load.TurnedAway}, false, "This load has no ticket.", model.Stop, "Rejected", false},
	} {
		s.Ticket.load = &c.load
		h := s.Ticket.Headline()
		if s.Ticket.CanReissue() != c.may || h.State != c.state || !strings.Contains(h.Text, c.headline) || s.Ticket.HasDifference() != c.canBeCompared {
			t.Errorf("%s: may %v, difference %v, headline %+v", c.name, s.Ticket.CanReissue(), s.Ticket.HasDifference(), h)
		}
		if why := s.Ticket.WhyNotReissue(); !c.may && !strings.Contains(why, c.whyNot) {
			t.Errorf("%s: it is not reissued because %q", c.name, why)
		}
	}
	s.Ticket.load = nil
	if s.Ticket.CanReissue() || s.Ticket.WhyNotReissue() != "No ticket is open." {
		t.Errorf("no ticket in hand: %q", s.Ticket.WhyNotReissue())
	}
}

// A void ticket is reissued: its load is open on the yard, whole, and its
// ticket and the void one name each other on screen and slip.
func TestReissueATicket(t *testing.T) {
	r := sessiontest.DemoRoom(t, 40)
	yard := yardpkg.NewYard(r.Session)
	s := openIssued(r)
	first := s.Load().Number
	s.Void()
	r.Answer(map[string]string{"reason": "torn in the printer"})
	s.Reissue()
	if q := r.Question(); q.Fields[0].Value != "torn in the printer" || q.Danger {
		t.Errorf("it is asked %+v", q)
	}
	if wrong := r.Answer(map[string]string{"reason": " "}); wrong["reason"] == "" {
		t.Error("a ticket is reissued without a reason")
	}
	r.Answer(map[string]string{"reason": "a clean copy"})
	sessiontest.WantSaid(t, r, model.OK, fmt.Sprintf("is the grain of ticket %d, void", first))
	form := yard.Form()
	if r.Screen != "yard" || form.Book == nil || form.Book.Reissues != first || !strings.Contains(form.Preview().Margin.Text, "void: a clean copy") {
		t.Fatalf("in hand on %q is %+v", r.Screen, form.Book)
	}
	number, err := form.Issue()
	sessiontest.Must(t, err)
	for ticket, want := range map[int64][]string{
		first:  {"VOID", fmt.Sprintf("REISSUED AS TICKET %d", number)},
		number: {fmt.Sprintf("IN PLACE OF TICKET %d", first), fmt.Sprintf("ticket %d, void", first)},
	} {
		s.Type(fmt.Sprint("ticket ", ticket))
		s.Reload() // as the screen does when it comes to the front
		for _, words := range want {
			if paper := paperOf(s); !strings.Contains(paper, words) {
				t.Errorf("the slip of ticket %d does not say %q:\n%s", ticket, words, paper)
			}
		}
	}
	if s.Ticket.Turn(DifferencePaper); !strings.Contains(paperOf(s), "What is not as on the void ticket") || !strings.Contains(paperOf(s), "say the same") {
		t.Errorf("the difference says\n%s", paperOf(s))
	}
	states := map[string]string{}
	s.Type("today")
	for _, row := range s.Rows() {
		states[row.Cells[0]] = row.Cells[10]
	}
	if states[fmt.Sprint(first)] != fmt.Sprintf("void, see %d", number) || states[fmt.Sprint(number)] != fmt.Sprintf("reissues %d", first) {
		t.Errorf("the list says %q", states)
	}
}
