package view

import (
	"strings"
	"testing"

	"fyne.io/fyne/v2"
)

// An edition is chosen, read, tried and compared by the keyboard alone.
func TestRatesByKeyboard(t *testing.T) {
	s := newScene(t, Look{}, 120)
	s.Go("rates")
	screen := screenOf[*ratesScreen](s)
	s.press(fyne.KeyDown)
	id := screen.rates.Chosen()
	if text := paperText(screen.paper); id != screen.list.ChosenKey() || !strings.Contains(text, id) {
		t.Fatalf("in hand is %q, the paper says:\n%s", id, text)
	}
	s.press(fyne.KeyReturn)
	if screen.ring.Current() != "paper" {
		t.Errorf("Enter leads to %q", screen.ring.Current())
	}
	s.commands.Run("rates.try")
	if !screen.trial.Visible() || screen.paper.Visible() || screen.ring.Current() != "trial" {
		t.Errorf("the trial is not in front, the keyboard is on %q", screen.ring.Current())
	}
	s.press(fyne.KeyDown, fyne.KeyDown)
	if key := screen.trial.ChosenKey(); key == "" || !strings.Contains(screen.told.Text(), "At "+key) {
		t.Errorf("at %q is said %q", key, screen.told.Text())
	}
	s.commands.Run("rates.compare")
	s.press(fyne.KeyEnd)
	if rows := screen.compared.Rows(); len(rows) == 0 || screen.ring.Current() != "compared" || screen.compared.Chosen() != len(rows)-1 {
		t.Errorf("%d rows, the keyboard is on %q", len(rows), screen.ring.Current())
	}
	s.commands.Run("rates.load")
	s.write("30,000", "20.5", "", "", "", "", "", "", "", "", "")
	if said := screen.told.Text(); !strings.Contains(said, "net 30,000 lb, 20.5 %") {
		t.Errorf("tried is %q; the status line says %q", said, s.status.Text())
	}
	s.commands.Run("rates.problems")
	if text := paperText(screen.paper); !screen.paper.Visible() || !strings.Contains(text, "Your own files") {
		t.Errorf("the problems say:\n%s", text)
	}
}

// The table of a trial and the comparison have room for every column.
func TestRatesTablesFit(t *testing.T) {
	s := newScene(t, Look{}, 120)
	s.Go("rates")
	screen := screenOf[*ratesScreen](s)
	for _, turn := range []string{"rates.try", "rates.compare"} {
		s.commands.Run(turn)
		for _, row := range screen.list.Rows() {
			screen.rates.Choose(row.Key)
			screen.Refresh()
			for _, r := range append(screen.trial.Rows(), screen.compared.Rows()...) {
				if len(r.Cells) == 0 {
					t.Errorf("%s: an empty row under %s", row.Key, turn)
				}
			}
		}
	}
}
