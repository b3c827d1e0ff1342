package desktop

import (
	"strings"
	"tenthpoint/internal/office"
	"tenthpoint/internal/scalehouse"
	"tenthpoint/ui/shell"
	"testing"

	"fyne.io/fyne/v2"
)

// again opens another window on the same book, as after the program was killed:
// the first closes nothing.
func (s *scene) again() *scene {
	next := &scene{t: s.t, desk: s.desk, drawer: s.drawer}
	next.open(shell.Look{})
	return next
}

// Text typed into the focused field is there in the next window, with the same focus: an invalid
// figure, a grower looked for, half a question.
func TestLettersStandInTheNextWindow(t *testing.T) {
	s := newScene(t, shell.Look{}, 40)
	s.press(fyne.KeyF3)
	yardOf(s.Window).Load.FocusOrder.Focus("gross")
	s.letters("52337")
	next := s.again()
	if id := yardOf(next.Window).Form().ID(); id != yardOf(s.Window).Form().ID() {
		t.Errorf("current is %q", id)
	}
	field := yardOf(next.Window).Load.Rows["gross"].Field
	if field.Value != "52337" || !strings.Contains(field.Note, "52,337 lb is not a whole number") {
		t.Errorf("the gross holds %+v", field)
	}
	if at := yardOf(next.Window).Load.FocusOrder.Current(); at != "gross" {
		t.Errorf("the keyboard is on %s", at)
	}
	next.Commands.Run("load.new")
	next.letters("ask")
	third := next.again()
	if got := yardOf(third.Window).Load.Rows["grower"].Field.Value; got != "ask" {
		t.Errorf("the grower looked for is %q", got)
	}
	third.Commands.Run("load.grower")
	third.letters("777")
	third.press(fyne.KeyTab)
	third.letters("Example Hollow")
	fourth := third.again()
	fourth.Commands.Run("load.grower")
	fourth.press(fyne.KeyTab, fyne.KeyTab, fyne.KeyTab, fyne.KeyTab, fyne.KeyReturn)
	if g, ok := growerOf(t, fourth, "777"); !ok || g != "Example Hollow" {
		t.Errorf("grower 777 is %q, %v", g, ok)
	}
}

// A question that was given up is asked again.
func TestAQuestionGivenUpIsForgotten(t *testing.T) {
	s := newScene(t, shell.Look{}, 40)
	s.Commands.Run("load.grower")
	s.letters("777")
	s.press(fyne.KeyEscape)
	drafts, _, err := scalehouse.Drafts(t.Context(), s.desk)
	must(t, err)
	for _, d := range drafts {
		if strings.HasPrefix(d.Place, "ask") {
			t.Errorf("kept is %+v", d)
		}
	}
}

func growerOf(t *testing.T, s *scene, code string) (name string, found bool) {
	t.Helper()
	growers, err := office.Growers(t.Context(), s.desk)
	must(t, err)
	for _, g := range growers {
		if g.ID == code {
			return g.Name, true
		}
	}
	return "", false
}
