package desktop

import (
	"strings"
	"testing"

	"fyne.io/fyne/v2"

	"tenthpoint/ui/apptheme"
	"tenthpoint/ui/model"
	"tenthpoint/ui/setup"
	"tenthpoint/ui/shell"
	"tenthpoint/ui/widgets"
)

// A figure that Enter refused is selected: the next key replaces it, and a letter
// that has no place in it is told.
func TestARefusedFigureIsTypedOver(t *testing.T) {
	s := newScene(t, shell.Look{}, 40)
	s.letCornBeTyped()
	s.focusOrder("yard").Focus("moisture")
	s.write("614.2")
	if at := s.focusOrder("yard").Current(); at != "moisture" || s.Status.State() != model.Warn {
		t.Errorf("after Enter the keyboard is on %q, said %q", at, s.Status.Text())
	}
	s.letters("17.x")
	if got := s.entryText("moisture"); got != "17." {
		t.Errorf("typed over it stands %q", got)
	}
	if said := s.Status.Text(); s.Status.State() != model.Warn || !strings.Contains(said, "Moisture: ") {
		t.Errorf("of the letter is said %q", said)
	}
}

// Whoever leaves a screen takes the keyboard along: no list stays open, and what is
// typed next goes into the screen in front.
func TestLeavingAScreenClosesItsLists(t *testing.T) {
	s := newScene(t, shell.Look{Scale: apptheme.TextOrdinary}, 40)
	s.Go("setup")
	s.focusOrder("setup").Focus("dates")
	s.press(fyne.KeyDown)
	s.letters("Ann Example")
	form := s.Window.Screens[s.Current].(*setup.Screen).Form
	dates := form.Rows["dates"].Entry.(*widgets.Autocomplete)
	if !dates.ListOpen() {
		t.Fatal("no list stands open")
	}
	s.UI.Chord(widgets.Ctrl(fyne.KeyN))
	if dates.ListOpen() {
		t.Error("the list of the screen before stands open")
	}
	s.letters("Hill")
	if got := dates.Text; strings.Contains(got, "Hill") {
		t.Errorf("the screen out of sight took %q", got)
	}
	if at := s.focusOrder("yard").Current(); at != "grower" {
		t.Errorf("on the yard the keyboard is on %q", at)
	}
	s.Go("setup")
	if row := form.Rows["dates"]; !row.IsWrong() {
		t.Errorf("dates %q are not refused", dates.Text)
	}
}
