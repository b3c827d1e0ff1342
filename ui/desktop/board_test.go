package desktop

import (
	"strings"
	"testing"

	"fyne.io/fyne/v2"

	"tenthpoint/ui/lab"
	"tenthpoint/ui/shell"
	"tenthpoint/ui/widgets"
	"tenthpoint/ui/yard/board"
)

// samplesOnTheBoard is how many trucks the board has waiting for their test.
func samplesOnTheBoard(s *scene) int {
	const tests = 1 // the column after that of trucks to be weighed full
	return len(board.Columns(s.Session.Language, s.Yard().Trucks())[tests].Rows)
}

// Yard, board and bench say one number of samples that wait, at every step of a truck.
func TestYardAndBenchCountAlike(t *testing.T) {
	s := newScene(t, shell.Look{}, 40)
	said := func(when string) {
		t.Helper()
		s.Go("bench")
		want := map[int]string{1: "One sample waits", 2: "2 samples wait", 3: "3 samples wait"}[samplesOnTheBoard(s)]
		if got := s.screen("bench").(*lab.BenchScreen).Bench.Hint(); want == "" || !strings.HasPrefix(got, want) {
			t.Errorf("%s the board has %d samples to test, the bench says %q", when, samplesOnTheBoard(s), got)
		}
		s.Go("yard")
	}
	said("in the morning")
	s.Commands.Run("load.new")
	s.come("123", "corn", "77")
	said("with a truck that is not weighed yet")
	s.write("52300")
	said("once it is weighed")
	s.write("17.2")
	said("once it is tested")
}

// The board opens a truck by Enter, and by a click.
func TestTheBoardOpensATruck(t *testing.T) {
	s := newScene(t, shell.Look{}, 40)
	s.UI.Chord(widgets.CtrlShift(fyne.KeyY))
	if s.Front() != "board" {
		t.Fatalf("in front is %s", s.Front())
	}
	chosen := s.screen("board").(*board.Screen).Cards.Chosen()
	s.press(fyne.KeyReturn)
	if got := yardOf(s.Window).Form().ID(); s.Front() != "yard" || got == "" || got != chosen {
		t.Errorf("Enter on %s: in front is %s with the truck %q", chosen, s.Front(), got)
	}
}
