package tickets

import (
	"context"
	"fmt"
	"strings"
	"testing"

	"tenthpoint/internal/demo"
	"tenthpoint/internal/grain"
	"tenthpoint/internal/load"
	"tenthpoint/internal/office"
	"tenthpoint/internal/quantity"
	"tenthpoint/ui/model"
	"tenthpoint/ui/session"
	"tenthpoint/ui/session/sessiontest"
	yardpkg "tenthpoint/ui/yard"
)

// Each line is understood, said back, and looked for.
func TestTicketLine(t *testing.T) {
	r := sessiontest.DemoRoom(t, 0)
	for _, c := range []struct {
		line, reads string
		want        office.Search
	}{
		{"", "Type a number", office.Search{}},
		{"ticket 1,042", "ticket 1042 and no other", office.Search{Ticket: 1042}},
		{"truck 77", "truck 77 and no other", office.Search{Truck: "77"}},
		{"grower 114", "grower 114 and who shares", office.Search{Grower: "114"}},
		{"2025-10-14", "of 2025-10-14", office.Search{FromDay: "2025-10-14", ToDay: "2025-10-14~"}},
		{"2025-10", "of 2025-10", office.Search{FromDay: "2025-10", ToDay: "2025-10~"}},
		{"2025-1", "of 2025-1", office.Search{FromDay: "2025-1", ToDay: "2025-1~"}},
		{"2025-10-01..2025-10-14", "from 2025-10-01 until 2025-10-14", office.Search{FromDay: "2025-10-01", ToDay: "2025-10-14~"}},
		{"2025-10-01..", "since 2025-10-01", office.Search{FromDay: "2025-10-01"}},
		{"..2025-10", "until 2025-10", office.Search{ToDay: "2025-10~"}},
		{"today", "of 2025-10-14", office.Search{FromDay: "2025-10-14", ToDay: "2025-10-14~"}},
		{"Yesterday", "of 2025-10-13", office.Search{FromDay: "2025-10-13", ToDay: "2025-10-13~"}},
		{"void", "void", office.Search{Phases: []string{string(load.Void)}}},
		{"refused", "rejected", office.Search{Refused: true}},
		{"1042", "“1042” in a number", office.Search{Terms: []office.Term{{Text: "1042"}}}},
		{"2025", "“2025” in a number", office.Search{Terms: []office.Term{{Text: "2025"}}}},
		{"sorg", "“sorg”", office.Search{Terms: []office.Term{{Text: "sorg", Commodities: []string{"sorghum"}}}}},
		{"aske void", "“aske” in a number, name, truck, or grain · void", office.Search{Terms: []office.Term{{Text: "aske"}}, Phases: []string{"void"}}},
		{"TENTHPOINT/1 1042 52300LB 18.4% 857.99BU 3FA9C01D22E4", "ticket 1042", office.Search{Ticket: 1042}},
		{"truck", "“truck”", office.Search{Terms: []office.Term{{Text: "truck"}}}},
	} {
		l := readTicketLine(r.Session, c.line)
		c.want.Limit = pageOfTickets
		if got, want := fmt.Sprintf("%+v", l.search), fmt.Sprintf("%+v", c.want); got != want {
			t.Errorf("%q looks for %s, want %s", c.line, got, want)
		}
		if !strings.Contains(l.words(r.Session.Language), c.reads) {
			t.Errorf("%q reads %q, want %q in it", c.line, l.words(r.Session.Language), c.reads)
		}
	}
}

func TestTicketsNarrowAndShow(t *testing.T) {
	r := sessiontest.DemoRoom(t, 150)
	s := NewTickets(r.Session)
	s.Reload()
	all := s.Rows()
	if len(all) != pageOfTickets || !strings.Contains(s.Counted(), "100 of ") {
		t.Fatalf("%d rows, %s", len(all), s.Counted())
	}
	if s.Chosen() != all[0].Key || s.Load() == nil || strings.Count(paperOf(s), "\n") == 0 {
		t.Errorf("the newest ticket is not open: %q", s.Chosen())
	}
	s.Choose(all[len(all)-1].Key)
	if len(s.Rows()) <= pageOfTickets {
		t.Errorf("at the end of the page there are %d rows", len(s.Rows()))
	}
	seen := map[string]bool{}
	for _, row := range s.Rows() {
		if seen[row.Key] || len(row.Cells) != 11 {
			t.Errorf("row %q comes twice or has %d cells", row.Key, len(row.Cells))
		}
		seen[row.Key] = true
	}
	number := fmt.Sprint(s.Load().Number)
	s.Type("ticket " + number)
	if rows := s.Rows(); len(rows) != 1 || rows[0].Cells[0] != number || s.Counted() != "1 found" {
		t.Errorf("ticket %s: %+v, %s", number, rows, s.Counted())
	}
	if paper := paperOf(s); !strings.Contains(paper, number) || !strings.Contains(paper, s.Load().Details.Grower.Name) {
		t.Errorf("the slip of %s says:\n%s", number, paper)
	}
	s.Type("zebra")
	if len(s.Rows()) != 0 || paperOf(s) != "" || !strings.Contains(s.Empty(), "Nothing fits") || s.Ticket.CanReprint() || s.Ticket.CanChange() {
		t.Errorf("zebra: %d rows, %q", len(s.Rows()), s.Empty())
	}
	if !s.Clear() || s.Clear() || len(s.Rows()) != pageOfTickets {
		t.Error("the line was not emptied once")
	}
}

// The cells are the figures of the settlement kept in the book.
func TestTicketCells(t *testing.T) {
	r := sessiontest.DemoRoom(t, 60)
	s := NewTickets(r.Session)
	s.Reload()
	priced := 0
	for _, row := range s.Rows() {
		number, _ := session.Number(row.Cells[0])
		l, err := office.Ticket(context.Background(), r.Session.Desk, number)
		sessiontest.Must(t, err)
		worked, err := office.Resettle(context.Background(), r.Session.Desk, l)
		sessiontest.Must(t, err)
		want := []string{worked.Net.Value().Fixed(0), session.NoFigure, session.NoFigure, session.NoFigure}
		if worked.Bushels != nil {
			want[2] = worked.Bushels.Value().Fixed(2)
		} else if worked.Quantity != nil {
			want[2] = worked.Quantity.Printed()
		}
		if worked.Moisture != nil {
			want[1], want[3] = worked.Moisture.Value().Fixed(1), "later"
		}
		if l.Details.Price != nil && worked.Payable != nil {
			want[3] = worked.Payable.Value().Fixed(2)
			priced++
		}
		if got := row.Cells[6:10]; strings.Join(got, " ") != strings.Join(want, " ") {
			t.Errorf("ticket %d shows %q, want %q", number, got, want)
		}
	}
	if priced == 0 || priced == len(s.Rows()) {
		t.Errorf("%d of %d tickets have a price; the test needs both", priced, len(s.Rows()))
	}
}

func TestTicketsEmptyBook(t *testing.T) {
	s := NewTickets(sessiontest.EmptyRoom(t).Session)
	s.Reload()
	if !strings.Contains(s.Empty(), "Ctrl+N") || s.Counted() != "none" || s.Ticket.WhyNotChange() == "" {
		t.Errorf("an empty book says %q, %q", s.Empty(), s.Counted())
	}
}

func TestVoidATicket(t *testing.T) {
	r := sessiontest.DemoRoom(t, 40)
	s := openIssued(r)
	number := s.Load().Number
	s.Void()
	if wrong := r.Answer(map[string]string{"reason": " "}); wrong["reason"] == "" {
		t.Error("a ticket is voided without a reason")
	}
	if ask := r.Question(); !ask.Danger || ask.State != model.Stop {
		t.Errorf("voiding is asked as %+v", ask)
	}
	r.Answer(map[string]string{"reason": "weighed twice"})
	sessiontest.WantSaid(t, r, model.OK, "is void: weighed twice")
	if l := s.Load(); l.Number != number || l.Phase != load.Void || s.Ticket.CanChange() || !strings.Contains(s.Ticket.WhyNotChange(), "void already") {
		t.Errorf("afterward ticket %d is %s", l.Number, l.Phase)
	}
	if h := s.Ticket.Headline(); h.State != model.Stop || !strings.Contains(h.Text, demo.Manager+": weighed twice") {
		t.Errorf("the headline says %+v", h)
	}
	if !strings.Contains(paperOf(s), "VOID") {
		t.Error("the slip is not stamped")
	}
}

// A clerk voids only under a manager's name, and is at the desk afterward.
func TestVoidByClerk(t *testing.T) {
	r := sessiontest.DemoRoom(t, 40)
	sessiontest.Must(t, r.Session.Desk.SignIn(demo.Clerk))
	s := openIssued(r)
	s.Void()
	if wrong := r.Answer(map[string]string{"reason": "wrong truck"}); wrong["who"] == "" {
		t.Error("no manager was asked for")
	}
	r.Answer(map[string]string{"reason": "wrong truck", "who": demo.Manager})
	if l := s.Load(); l.Phase != load.Void || l.Ended.Who != demo.Manager {
		t.Errorf("the ticket is %s, by %s", l.Phase, l.Ended.Who)
	}
	if who := r.Session.Desk.Who().Name; who != demo.Clerk {
		t.Errorf("afterward %s is at the desk", who)
	}
}

// openIssued opens the newest ticket in force.
func openIssued(r *sessiontest.Room) *Tickets {
	r.T.Helper()
	s := NewTickets(r.Session)
	s.Type("issued")
	if !s.Ticket.CanChange() {
		r.T.Fatal("no ticket in force")
	}
	s.Type(fmt.Sprint("ticket ", s.Load().Number))
	return s
}

func TestCorrectATicket(t *testing.T) {
	r := sessiontest.DemoRoom(t, 40)
	yard := yardpkg.NewYard(r.Session)
	s := openIssued(r)
	old := s.Load()
	s.Correct()
	r.Answer(map[string]string{"reason": "tare read wrong"})
	if r.Screen != "yard" {
		t.Errorf("the screen in front is %q", r.Screen)
	}
	form := yard.Form()
	if form.Book == nil || form.Book.Corrects != old.Number {
		t.Fatalf("the load in hand corrects %+v", form.Book)
	}
	sessiontest.WantSaid(t, r, model.OK, "corrects ticket")
	if first := form.FirstToDo(); first != form.Fields()[0].ID {
		t.Errorf("a correction begins on %q: one Enter too many issues it unchanged", first)
	}
	form.Type("tare", "21,000")
	number, err := form.Issue()
	sessiontest.Must(t, err)
	s.Type(fmt.Sprint("ticket ", number))
	if !s.Ticket.HasDifference() || !strings.Contains(s.Ticket.Headline().Text, "tare read wrong") {
		t.Errorf("ticket %d: difference %v, headline %q", number, s.Ticket.HasDifference(), s.Ticket.Headline().Text)
	}
	s.Ticket.Turn(DifferencePaper)
	paper := paperOf(s)
	tare, _ := old.Weight(load.Tare, "")
	for _, want := range []string{fmt.Sprintf("ticket %d → ticket %d", old.Number, number), "tare read wrong", "Tare", tare.Weight.String() + " → 21,000 lb", "Net", "+"} {
		if !strings.Contains(paper, want) {
			t.Errorf("the difference does not say %q:\n%s", want, paper)
		}
	}
	s.Type(fmt.Sprint("ticket ", old.Number))
	if again := paperOf(s); s.Ticket.Shows() != DifferencePaper || again != paper {
		t.Errorf("from the old ticket the difference is\n%s", again)
	}
	if s.Ticket.CanChange() || !strings.Contains(s.Ticket.WhyNotChange(), fmt.Sprint(number)) {
		t.Error("a corrected ticket may be corrected once more")
	}
}

// paperOf returns the text of the paper in front, a line to a line.
func paperOf(s *Tickets) string {
	if pages := s.Ticket.Pages(); pages != nil {
		return sessiontest.WordsOf(*pages)
	}
	return sessiontest.TextOf(s.Ticket.Card())
}

func TestWorkingOfATicket(t *testing.T) {
	r := sessiontest.DemoRoom(t, 40)
	s := openIssued(r)
	s.Ticket.Turn(WorkingPaper)
	paper := paperOf(s)
	for _, want := range []string{"Every figure is the ticket's", "WEIGHTS", "Net", "−"} {
		if !strings.Contains(paper, want) {
			t.Errorf("the working does not say %q:\n%s", want, paper)
		}
	}
	s.Ticket.load.Settled.Figures["net"] = quantity.Of("0.1", quantity.Percent)
	s.Ticket.lines = map[PaperOf][]model.CardLine{}
	if paper := paperOf(s); !strings.Contains(paper, "Net is 0.1 %") || strings.Contains(paper, "Every figure") {
		t.Errorf("a figure that was tampered with is not named:\n%s", paper)
	}
	s.Ticket.Turn(WorkingPaper)
	if s.Ticket.Shows() != SlipPaper {
		t.Error("the same key does not lead back to the slip")
	}
}

func TestReprint(t *testing.T) {
	r := sessiontest.DemoRoom(t, 40)
	s := openIssued(r)
	before := s.Load().Copies
	s.Reprint()
	if len(r.Papers) != 1 || s.Load().Copies != before+1 {
		t.Errorf("%d papers, %d copies before, %d after", len(r.Papers), before, s.Load().Copies)
	}
	for name := range r.Papers {
		if !strings.Contains(name, "reprint") {
			t.Errorf("the paper is called %q", name)
		}
	}
}

// Every ticket of a season has its papers, also grain that left.
func TestEveryPaper(t *testing.T) {
	r := sessiontest.DemoRoom(t, 120)
	s := NewTickets(r.Session)
	s.Reload()
	for s.Choose(s.found[len(s.found)-1].ID); s.more; {
		s.Choose(s.found[len(s.found)-1].ID)
	}
	outbound := 0
	for _, row := range s.Rows() {
		s.Choose(row.Key)
		for _, paper := range []PaperOf{SlipPaper, WorkingPaper, DifferencePaper} {
			s.Ticket.shows = paper
			if strings.Count(paperOf(s), "\n") < 3 || s.Ticket.err != nil {
				t.Errorf("paper %d of ticket %s has %d lines, %v", paper, row.Cells[0], strings.Count(paperOf(s), "\n"), s.Ticket.err)
			}
		}
		if s.Load().Details.Direction == load.Outbound {
			outbound++
			s.lookUp(r.CodeOf(s.Load()))
			r.Asked = nil
		}
		s.line = ""
	}
	if outbound == 0 {
		t.Error("no grain has left; the test needs some")
	}
}

func TestRefusedLoads(t *testing.T) {
	r := sessiontest.DemoRoom(t, 400)
	s := NewTickets(r.Session)
	s.Type("refused")
	if len(s.Rows()) == 0 {
		t.Fatal("the demo has no refused load")
	}
	row := s.Rows()[0]
	if row.Cells[0] != session.NoFigure || row.State != model.Stop || s.Ticket.CanReprint() || s.Ticket.CanChange() {
		t.Errorf("a refused load shows %+v", row)
	}
	if h := s.Ticket.Headline(); !strings.Contains(h.Text, "Rejected") || strings.Count(paperOf(s), "\n") == 0 {
		t.Errorf("its headline is %q", h.Text)
	}
	s.Ticket.Turn(WorkingPaper)
	if !strings.Contains(paperOf(s), "never settled") {
		t.Error("its working does not say that there is none")
	}
}

// BenchmarkTicketsKey is a letter typed in the filter of a book of 2,000 loads,
// until the slip of the first match is there.
func BenchmarkTicketsKey(b *testing.B) {
	s := NewTickets(sessiontest.DemoRoom(b, 2000).Session)
	lines := []string{"a", "as", "ask", "aske", "aske c"}
	for i := 0; b.Loop(); i++ {
		s.Type(lines[i%len(lines)])
		if strings.Count(paperOf(s), "\n") == 0 {
			b.Fatal("no slip")
		}
	}
}

// The advice is under the working of load, bench and ticket; the slip keeps "not graded", and no
// figure of the settlement depends on it.
func TestGradeAdviceIsNotOnTheSlip(t *testing.T) {
	r := sessiontest.DemoRoom(t, 40)
	s := openIssued(r)
	s.Ticket.Turn(WorkingPaper)
	working := paperOf(s)
	s.Ticket.Turn(SlipPaper)
	paper := paperOf(s)
	if !strings.Contains(working, "Would grade") || !strings.Contains(working, "not official") {
		t.Errorf("the working says\n%s", working)
	}
	if strings.Contains(paper, "U.S. No.") || strings.Contains(strings.ToLower(paper), "would grade") || !strings.Contains(paper, "not graded") {
		t.Errorf("the slip says\n%s", paper)
	}
	for id := range s.Load().Settled.Figures {
		if strings.Contains(id, "grade") {
			t.Errorf("the settlement has a figure %q", id)
		}
	}
}

// In the list a wheat is named by its class, which has room.
func TestGrainsInTheListAreShort(t *testing.T) {
	for _, c := range grain.All() {
		if name := session.GrainInList(session.Language{}, c.ID); strings.HasPrefix(c.ID, "wheat-") && len(name) > 11 {
			t.Errorf("%s is called %q in a list", c.ID, name)
		}
	}
}
