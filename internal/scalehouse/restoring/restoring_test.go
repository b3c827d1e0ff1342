package restoring_test

import (
	"context"
	"slices"
	"testing"

	"tenthpoint/internal/elevator"
	"tenthpoint/internal/entry"
	"tenthpoint/internal/load"
	"tenthpoint/internal/message"
	"tenthpoint/internal/numbering"
	"tenthpoint/internal/office"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/scalehouse"
	"tenthpoint/internal/scalehouse/housetest"
	"tenthpoint/internal/scalehouse/restoring"
	"tenthpoint/internal/scaleticket"
)

var (
	ctx  = context.Background()
	must = housetest.Must
)

// ticketed brings a truck with a moisture to its ticket.
func ticketed(s *housetest.Scene, moisture string) int64 {
	id := s.Arrive(52300)
	s.Sample(id, moisture)
	s.Weigh(id, load.Tare, 24300)
	number, err := scalehouse.Issue(ctx, s.Desk, id)
	must(s.T, err)
	return number
}

// slip is what the square of a ticket's slip says, and its code.
func slip(t *testing.T, s *housetest.Scene, number int64) scaleticket.Square {
	t.Helper()
	l, err := office.Ticket(ctx, s.Desk, number)
	must(t, err)
	again, err := office.Resettle(ctx, s.Desk, l)
	must(t, err)
	code, err := office.Code(ctx, s.Desk, l)
	must(t, err)
	q, _ := scaleticket.QR(scaleticket.Compose(scaleticket.Ticket{House: s.Profile(), Load: l, Settlement: again, Code: code}))
	read, err := scaleticket.ReadSquare(q.Text)
	must(t, err)
	return read
}

// restored is a house that has issued four tickets, and its book as a copy after the first has it.
func restored(t *testing.T) (lost, copied *housetest.Scene) {
	t.Helper()
	lost, copied = housetest.New(t), housetest.New(t)
	for _, moisture := range []string{"18.0", "17.2", "16.4", "19.1"} {
		ticketed(lost, moisture)
	}
	ticketed(copied, "18.0")
	copied.As(housetest.Manager)
	must(t, scalehouse.SetGrower(ctx, copied.Desk, elevator.Grower{ID: "101", Name: "Abner Quist"}))
	_, err := restoring.PassOver(ctx, copied.Desk, map[string]int64{numbering.Ticket: 4, numbering.Sample: 12}, "the disk failed")
	must(t, err)
	return lost, copied
}

// facts are the facts of a form with texts.
func facts(t *testing.T, s *housetest.Scene, texts map[string]string) entry.Facts {
	t.Helper()
	f := entry.New(office.NewEntering(ctx, s.Desk), entry.Start{Past: true, Reason: func(string) string { return "its slip" }})
	for field, text := range texts {
		f.Set(field, text)
	}
	_, err := f.FirstRefused()
	must(t, err)
	return f.Opening()
}

func missing(t *testing.T, s *housetest.Scene) []int64 {
	t.Helper()
	out, err := office.MissingTickets(ctx, s.Desk)
	must(t, err)
	return out
}

func TestTicketsAreEnteredFromTheirSlips(t *testing.T) {
	lost, copied := restored(t)
	if got := missing(t, copied); !slices.Equal(got, []int64{2, 3, 4}) {
		t.Fatalf("missing are %v", got)
	}
	for _, number := range []int64{3, 2} { // in any order
		square := slip(t, lost, number)
		paper := restoring.Paper{Number: number, Square: square, Slip: load.Slip{At: "2026-10-01T19:20:00Z", Code: square.Payload.Code}}
		texts := paper.Texts()
		texts["grower"], texts["truck"] = "101", "7"
		must(t, restoring.Enter(ctx, copied.Desk, paper, facts(t, copied, texts)))
		was, err := office.Ticket(ctx, lost.Desk, number)
		must(t, err)
		is, err := office.TicketByCode(ctx, copied.Desk, square.Payload.Code)
		must(t, err)
		if is.Number != number || len(is.Settled.Figures) != len(was.Settled.Figures) {
			t.Errorf("ticket %d came back as %d with %v, it had %v", number, is.Number, is.Settled.Figures, was.Settled.Figures)
		}
		for line, figure := range was.Settled.Figures {
			if !is.Settled.Figures[line].Equal(figure) {
				t.Errorf("ticket %d: %s is %s, it was %s", number, line, is.Settled.Figures[line], figure)
			}
		}
	}
	must(t, restoring.DeclareLost(ctx, copied.Desk, []int64{4}, "no slip found"))
	if got := missing(t, copied); len(got) != 0 {
		t.Errorf("missing are still %v", got)
	}
	if next := ticketed(copied, "15.0"); next != 5 {
		t.Errorf("the next ticket is %d: a number on paper was given out again", next)
	}
	sound := copied.Verify()
	if sound.Tickets != 4 || len(sound.Remarks) == 0 {
		t.Errorf("%d tickets, remarks %v", sound.Tickets, sound.Remarks)
	}
}

// Nothing is written of what does not agree with the paper, is not missing, or is not for whoever
// asks.
func TestWhatIsNotTakenFromPaper(t *testing.T) {
	lost, copied := restored(t)
	square := slip(t, lost, 2)
	good := restoring.Paper{Number: 2, Square: square, Slip: load.Slip{At: "2026-10-01T19:20:00Z", Code: square.Payload.Code}}
	texts := good.Texts()
	texts["grower"], texts["truck"] = "101", "7"
	before := copied.Contents()
	try := func(name string, kind message.Kind, change func(*restoring.Paper, map[string]string)) {
		t.Helper()
		p, typed := good, map[string]string{}
		for field, text := range texts {
			typed[field] = text
		}
		change(&p, typed)
		if got := message.KindOf(restoring.Enter(ctx, copied.Desk, p, facts(t, copied, typed))); got != kind {
			t.Errorf("%s: %q, want %q", name, got, kind)
		}
		if copied.Contents() != before {
			t.Fatalf("%s left something in the book", name)
		}
	}
	try("another moisture", message.Refused, func(_ *restoring.Paper, typed map[string]string) { typed["moisture"] = "17.3" })
	try("another tare", message.Refused, func(_ *restoring.Paper, typed map[string]string) { typed["tare"] = "24320" })
	try("a number of the copy", message.Refused, func(p *restoring.Paper, _ map[string]string) { p.Number, p.Square.Ticket = 1, 1 })
	try("the square of another ticket", message.Refused, func(p *restoring.Paper, _ map[string]string) { p.Number = 3 })
	try("no code", message.Incomplete, func(p *restoring.Paper, _ map[string]string) { p.Code = "" })
	try("no hour", message.Incomplete, func(p *restoring.Paper, _ map[string]string) { p.At = "" })
	try("nothing to compare", message.Incomplete, func(p *restoring.Paper, _ map[string]string) { p.Square = scaleticket.Square{} })
	net := quantity.Int(28020, quantity.Lb)
	try("another net typed", message.Refused, func(p *restoring.Paper, _ map[string]string) { p.Square, p.Net = scaleticket.Square{}, &net })

	copied.As(housetest.Clerk)
	try("a clerk's difference", message.Refused, func(p *restoring.Paper, _ map[string]string) { p.Unlike = "the paper is right" })
	for name, act := range map[string]func() error{
		"lost": func() error { return restoring.DeclareLost(ctx, copied.Desk, []int64{2}, "none") },
		"passed": func() error {
			_, err := restoring.PassOver(ctx, copied.Desk, map[string]int64{numbering.Ticket: 9}, "none")
			return err
		},
	} {
		if got := message.KindOf(act()); got != message.Refused || copied.Contents() != before {
			t.Errorf("a clerk may say %s: %q", name, got)
		}
	}
	copied.As(housetest.Manager)
	for name, act := range map[string]func() error{
		"a ticket that is there": func() error { return restoring.DeclareLost(ctx, copied.Desk, []int64{1}, "none") },
		"one of two":             func() error { return restoring.DeclareLost(ctx, copied.Desk, []int64{2, 9}, "none") },
		"a number given out": func() error {
			_, err := restoring.PassOver(ctx, copied.Desk, map[string]int64{numbering.Ticket: 4}, "none")
			return err
		},
		"no number": func() error { _, err := restoring.PassOver(ctx, copied.Desk, nil, "none"); return err },
	} {
		if act() == nil || copied.Contents() != before {
			t.Errorf("%s is passed over or declared lost", name)
		}
	}

	// A manager answers for a paper that differs.
	p := good
	p.Unlike = "the moisture was written over by hand"
	texts["moisture"] = "17.3"
	must(t, restoring.Enter(ctx, copied.Desk, p, facts(t, copied, texts)))
	copied.Verify()
}
