package desktop

import (
	"slices"
	"strconv"
	"strings"
	"testing"

	"fyne.io/fyne/v2"

	"tenthpoint/internal/load"
	"tenthpoint/internal/office"
	"tenthpoint/internal/scalehouse"
	"tenthpoint/ui/paperview"
	"tenthpoint/ui/session/sessiontest"
	"tenthpoint/ui/shell"
	"tenthpoint/ui/tickets"
	"tenthpoint/ui/widgets"
)

// wantStops walks the screen in front with Tab.
func (s *scene) wantStops(want ...string) {
	s.t.Helper()
	if got := s.walk(s.Current); !slices.Equal(got, want) {
		s.t.Errorf("Tab walks %q, want %q", got, want)
	}
}

func (s *scene) tickets() *tickets.Screen { return screenOf[*tickets.Screen](s) }

// screenOf is the screen of a kind.
func screenOf[S shell.Screen](s *scene) S {
	s.t.Helper()
	for _, one := range s.Screens {
		if found, ok := one.(S); ok {
			return found
		}
	}
	var none S
	s.t.Fatalf("there is no %T", none)
	return none
}

func TestTicketsTabOrder(t *testing.T) {
	s := newScene(t, shell.Look{}, 40)
	s.Go("tickets")
	// The newest ticket corrects none, so "What changed" is grey and left out.
	s.wantStops("line", "list", "paper", "tickets.print", "tickets.working", "tickets.correct", "tickets.void", "tickets.code")
	s.letters("zebra")
	s.wantStops("line", "list", "tickets.code")
}

// A ticket is found, read, and voided without a mouse.
func TestTicketsByKeyboard(t *testing.T) {
	s := newScene(t, shell.Look{}, 40)
	s.Commands.Run("tickets.find")
	s.letters("issued")
	s.press(fyne.KeyDown)
	screen := s.tickets()
	if screen.FocusOrder().Current() != "list" {
		t.Fatalf("Down leads to %q", screen.FocusOrder().Current())
	}
	first := screen.Tickets.Load().Number
	s.press(fyne.KeyDown)
	chosen := screen.Tickets.Load().Number
	if chosen >= first {
		t.Errorf("Down goes from ticket %d to %d", first, chosen)
	}
	if paper := paperText(screen.Paper.View); !strings.Contains(paper, screen.Tickets.Load().Details.Grower.Name) {
		t.Errorf("the paper is not the chosen ticket's:\n%s", paper)
	}
	s.press(fyne.KeyReturn)
	if screen.FocusOrder().Current() != "paper" {
		t.Errorf("Enter leads to %q", screen.FocusOrder().Current())
	}
	s.Commands.Run("tickets.working")
	if paper := paperText(screen.Paper.View); !strings.Contains(paper, "Every figure is the ticket's") {
		t.Errorf("the working says:\n%s", paper)
	}
	s.Commands.Run("tickets.void")
	s.letters("weighed twice")
	s.press(fyne.KeyEnter, fyne.KeyTab, fyne.KeyReturn)
	l, err := office.Ticket(t.Context(), s.desk, chosen)
	must(t, err)
	if l.Phase != load.Void || l.Ended.Reason != "weighed twice" {
		t.Errorf("ticket %d is %s (%s); the status line says %q", chosen, l.Phase, l.Ended.Reason, s.Status.Text())
	}
}

// A letter typed in the list narrows it further, and Escape begins again before
// it leaves.
func TestTicketsLetterAndEscape(t *testing.T) {
	s := newScene(t, shell.Look{}, 40)
	s.Go("tickets")
	s.press(fyne.KeyDown)
	s.letters("z")
	screen := s.tickets()
	if screen.FocusOrder().Current() != "line" || screen.Tickets.Line() != "z" || screen.Line.Text != "z" {
		t.Errorf("the line is %q on %q", screen.Line.Text, screen.FocusOrder().Current())
	}
	s.press(fyne.KeyEscape)
	if screen.Line.Text != "" || !s.IsFront(indexOf("tickets")) {
		t.Errorf("after Escape the line is %q", screen.Line.Text)
	}
	s.press(fyne.KeyEscape)
	if !s.IsFront(0) {
		t.Error("the second Escape does not leave")
	}
}

// Correcting leads to the yard with the load that is open.
func TestTicketsCorrect(t *testing.T) {
	s := newScene(t, shell.Look{}, 40)
	s.Go("tickets")
	s.letters("issued")
	number := s.tickets().Tickets.Load().Number
	s.Commands.Run("tickets.correct")
	s.answer("wrong tare", "")
	form := yardOf(s.Window).Yard.Form()
	l, err := office.Load(t.Context(), s.desk, form.ID())
	must(t, err)
	if !s.IsFront(0) || l.Corrects != number || yardOf(s.Window).Load.Rows["tare"].Entry.(*widgets.FieldEntry).Text == "" {
		t.Errorf("current is load %s, which corrects %d, want %d", l.ID, l.Corrects, number)
	}
}

// A void ticket is reissued by its key, and its load is open on the yard.
func TestTicketsReissue(t *testing.T) {
	s := newScene(t, shell.Look{}, 40)
	s.Go("tickets")
	s.letters("issued")
	number := s.tickets().Tickets.Load().Number
	must(t, scalehouse.Void(t.Context(), s.desk, number, "torn"))
	s.press(fyne.KeyEscape)
	s.letters("ticket " + strconv.FormatInt(number, 10))
	s.wantStops("line", "list", "paper", "tickets.print", "tickets.working", "tickets.reissue", "tickets.code")
	s.Commands.Run("tickets.reissue")
	s.answer("", "") // the void's own reason, the manager at the desk
	l, err := office.Load(t.Context(), s.desk, yardOf(s.Window).Yard.Form().ID())
	must(t, err)
	if !s.IsFront(0) || l.Reissues != number || l.Why != "torn" || yardOf(s.Window).Load.Rows["tare"].Entry.(*widgets.FieldEntry).Text == "" {
		t.Errorf("current is load %s, for ticket %d, want %d: %q", l.ID, l.Reissues, number, s.Status.Text())
	}
}

func indexOf(id string) int {
	return slices.IndexFunc(Screens, func(row shell.ScreenRow) bool { return row.ID == id })
}

func paperText(v *paperview.SlipView) string {
	if pages := v.InFront(); pages != nil {
		return sessiontest.WordsOf(*pages)
	}
	var lines []string
	for _, l := range v.Lines() {
		lines = append(lines, l.Left+" | "+l.Right+" | "+l.Note)
	}
	return strings.Join(lines, "\n")
}
