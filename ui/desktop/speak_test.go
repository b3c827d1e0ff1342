package desktop

import (
	"strings"
	"tenthpoint/ui/session"
	"tenthpoint/ui/session/sessiontest"
	"tenthpoint/ui/shell"
	"testing"

	"fyne.io/fyne/v2"
)

// A language chosen in the set-up is used at once, on every screen and on the slip, and text typed
// before stays where it was.
func TestAnotherLanguageIsHeardAtOnce(t *testing.T) {
	s := newScene(t, shell.Look{}, 40)
	s.Commands.Run("load.new")
	s.come("123", "corn", "77")
	s.write("52300")
	s.letters("17.2")
	s.Go("setup")
	s.focusOrder("setup").Focus("language")
	s.letters("Français")
	s.press(fyne.KeyEnter)
	s.Commands.Run("setup.save")
	if s.Front() != "setup" || s.Window.Window.MainMenu().Items[0].Label != "Chargement" {
		t.Errorf("in front is %s, the first menu is %q", s.Front(), s.Window.Window.MainMenu().Items[0].Label)
	}
	if got := s.Status.Text(); !strings.Contains(got, "Les réglages sont inscrits.") {
		t.Errorf("the status line says %q", got)
	}
	s.Go("yard")
	f := yardOf(s.Window).Form()
	for id, want := range map[string]string{"truck": "77", "gross": "52\u202f300", "moisture": "17,2"} {
		if got := yardOf(s.Window).Load.Rows[id].Field.Value; got != want {
			t.Errorf("%s holds %q, want %q", id, got, want)
		}
	}
	if slip := sessiontest.WordsOf(session.SlipPages(f.Preview().Slip)); !strings.Contains(slip, "TENEUR EN EAU") {
		t.Errorf("the slip says\n%s", slip)
	}
}
