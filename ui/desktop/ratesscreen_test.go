package desktop

import (
	"strings"
	"tenthpoint/ui/rates"
	"tenthpoint/ui/shell"
	"testing"

	"fyne.io/fyne/v2"
)

// An edition is chosen, read, tried and compared by the keyboard alone.
func TestRatesByKeyboard(t *testing.T) {
	s := newScene(t, shell.Look{}, 120)
	s.Go("rates")
	screen := screenOf[*rates.Screen](s)
	s.press(fyne.KeyDown)
	id := screen.Rates.Chosen()
	if text := paperText(screen.Views.Paper); id != screen.List.ChosenKey() || !strings.Contains(text, id) {
		t.Fatalf("current is %q, the paper says:\n%s", id, text)
	}
	s.press(fyne.KeyReturn)
	if screen.FocusOrder().Current() != "paper" {
		t.Errorf("Enter leads to %q", screen.FocusOrder().Current())
	}
	s.Commands.Run("rates.try")
	if !screen.Views.Trial.Visible() || screen.Views.Paper.Visible() || screen.FocusOrder().Current() != "trial" {
		t.Errorf("the trial is not in front, the keyboard is on %q", screen.FocusOrder().Current())
	}
	s.press(fyne.KeyDown, fyne.KeyDown)
	if key := screen.Views.Trial.ChosenKey(); key == "" || !strings.Contains(screen.Views.Explanation.Text(), "At "+key) {
		t.Errorf("at %q is said %q", key, screen.Views.Explanation.Text())
	}
	s.Commands.Run("rates.compare")
	s.press(fyne.KeyEnd)
	if rows := screen.Views.Compared.Rows(); len(rows) == 0 || screen.FocusOrder().Current() != "compared" || screen.Views.Compared.Chosen() != len(rows)-1 {
		t.Errorf("%d rows, the keyboard is on %q", len(rows), screen.FocusOrder().Current())
	}
	s.Commands.Run("rates.load")
	s.answer("30,000", "20.5", "", "", "", "", "", "", "", "", "")
	if said := screen.Views.Explanation.Text(); !strings.Contains(said, "net 30,000 lb, 20.5 %") {
		t.Errorf("tried is %q; the status line says %q", said, s.Status.Text())
	}
	s.Commands.Run("rates.problems")
	if text := paperText(screen.Views.Paper); !screen.Views.Paper.Visible() || !strings.Contains(text, "Your own files") {
		t.Errorf("the problems say:\n%s", text)
	}
}

// The table of a trial and the comparison have room for every column.
func TestRatesTablesFit(t *testing.T) {
	s := newScene(t, shell.Look{}, 120)
	s.Go("rates")
	screen := screenOf[*rates.Screen](s)
	for _, turn := range []string{"rates.try", "rates.compare"} {
		s.Commands.Run(turn)
		for _, row := range screen.List.Rows() {
			screen.Rates.Choose(row.Key)
			screen.Refresh()
			for _, r := range append(screen.Views.Trial.Rows(), screen.Views.Compared.Rows()...) {
				if len(r.Cells) == 0 {
					t.Errorf("%s: an empty row under %s", row.Key, turn)
				}
			}
		}
	}
}
