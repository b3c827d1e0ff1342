package desktop

import (
	"context"
	"strings"
	"testing"

	"fyne.io/fyne/v2"

	"tenthpoint/internal/book"
	"tenthpoint/internal/load"
	"tenthpoint/internal/office"
	"tenthpoint/internal/scaleticket"
	"tenthpoint/ui/model"
	"tenthpoint/ui/session"
	"tenthpoint/ui/shell"
)

// reads types a code as a reader of barcodes does: every letter, then Enter.
func (s *scene) reads(code string) {
	s.t.Helper()
	s.letters(code)
	s.press(fyne.KeyReturn)
}

// The square on a slip opens its ticket from whatever has the keyboard, and nothing of it is typed
// there. A slip whose figures are others than the book's is told.
func TestASlipUnderTheReaderOpensItsTicket(t *testing.T) {
	s := newScene(t, shell.Look{}, 40)
	rows, err := s.desk.Reader().Loads(t.Context(), book.LoadFilter{Phases: []string{string(load.Ticketed)}, Limit: 1})
	must(t, err)
	l, err := office.Load(t.Context(), s.desk, rows[0].ID)
	must(t, err)
	ticket, err := session.IssuedTicket(context.Background(), s.Session, l, 0)
	must(t, err)
	square := ticket.SquareLike(scaleticket.Square{}).Text
	s.Commands.Run("load.new")
	yardOf(s.Window).FocusOrder().Focus("gross")
	s.letters("523")
	s.reads(square)
	if got := yardOf(s.Window).Form().Text("gross"); got != "523" {
		t.Errorf("in the gross stands %q", got)
	}
	if s.Front() != "tickets" || s.Status.State() != model.OK {
		t.Fatalf("in front is %s, said %q", s.Front(), s.Status.Text())
	}
	s.reads(square[:len(square)-4])
	if s.Status.State() != model.Stop {
		t.Errorf("of a torn code is said %q", s.Status.Text())
	}
}

// The label of a truck opens its load, or begins one; that of a sample opens the load it is from.
func TestLabelsOpenTheirLoads(t *testing.T) {
	s := newScene(t, shell.Look{}, 40)
	here, err := office.Yard(t.Context(), s.desk)
	must(t, err)
	s.Go("tickets")
	s.reads(scaleticket.TruckMark + here[1].Details.Truck.ID)
	if got := yardOf(s.Window).Form().ID(); s.Front() != "yard" || got != here[1].ID {
		t.Errorf("in front is %s with load %q, want %s", s.Front(), got, here[1].ID)
	}
	s.reads(scaleticket.TruckMark + "4711")
	if f := yardOf(s.Window).Form(); f.ID() == here[1].ID || f.Text("truck") != "4711" {
		t.Errorf("a truck that is not here: load %q of truck %q", f.ID(), f.Text("truck"))
	}
	rows, err := s.desk.Reader().Loads(t.Context(), book.LoadFilter{Newest: true, FromTicket: 1, Limit: 40})
	must(t, err)
	for _, r := range rows {
		if r.Sample != "" {
			s.Commands.Run("load.new")
			yardOf(s.Window).FocusOrder().Focus("grower")
			s.reads(r.Sample)
			if s.Front() != "tickets" {
				t.Errorf("the label of sample %s: in front is %s, said %q", r.Sample, s.Front(), s.Status.Text())
			}
			return
		}
	}
	t.Fatal("no sample has a number")
}

// The label of a truck is printed with the grower's card.
func TestATruckLabelIsPrinted(t *testing.T) {
	s := newScene(t, shell.Look{}, 40)
	s.Go("growers")
	s.letters("123")
	s.Commands.Run("growers.label")
	if len(s.drawer.papers) != 1 || !strings.HasPrefix(s.Status.Text(), "Done") {
		t.Errorf("printed %d papers, said %q", len(s.drawer.papers), s.Status.Text())
	}
}
