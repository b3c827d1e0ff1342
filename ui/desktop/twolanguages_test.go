package desktop

import (
	"maps"
	"slices"
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"

	"tenthpoint/ui/shell"
)

// A program may have two windows that speak two languages: each says what it would say alone, and
// turning one to another language leaves the other as it is.
func TestTwoLanguagesSideBySide(t *testing.T) {
	left := newScene(t, shell.Look{}, 40)
	english := left.textsOfScreens()
	right := newScene(t, shell.Look{}, 40)
	right.speak("fr")
	french := right.textsOfScreens()
	for id := range english {
		if slices.Equal(english[id], french[id]) {
			t.Errorf("%s: French is English", id)
		}
	}
	says := func(when string, s *scene, want map[string][]string) {
		t.Helper()
		got := s.textsOfScreens()
		for _, id := range slices.Sorted(maps.Keys(want)) {
			if !slices.Equal(got[id], want[id]) {
				t.Errorf("%s, %s says\n%q, want\n%q", when, id, got[id], want[id])
			}
		}
	}
	says("English beside French", left, english)
	says("French beside English", right, french)
	left.speak("fr")
	says("turned to French", left, french)
	right.speak("en")
	says("turned to English", right, english)
	says("left in French", left, french)
}

// textsOfScreens are all texts of a window: its menus, every screen, the sheet of keys, and a
// dialog.
func (s *scene) textsOfScreens() map[string][]string {
	out := map[string][]string{}
	for _, menu := range s.fyne.MainMenu().Items {
		out["menus"] = append(out["menus"], menu.Label)
		for _, item := range menu.Items {
			out["menus"] = append(out["menus"], item.Label)
		}
	}
	for _, row := range Screens {
		s.Go(row.ID)
		out[row.ID] = textsIn(s.fyne.Content())
	}
	s.Go("yard")
	s.Commands.Run("desk.signin")
	out["sign in"] = textsIn(s.fyne.Canvas().Overlays().Top())
	s.UI.FrontDialog().Dismiss()
	return out
}

func textsIn(o fyne.CanvasObject) []string {
	var out []string
	leaves(o, fyne.NewPos(0, 0), func(l leaf) {
		if text, is := l.object.(*canvas.Text); is && text.Text != "" && !strings.Contains(text.Text, "scratch") { // each has its own book
			out = append(out, text.Text)
		}
	})
	return out
}
