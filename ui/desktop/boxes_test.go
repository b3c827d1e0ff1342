package desktop

import (
	"strings"
	"testing"

	"fyne.io/fyne/v2"

	"tenthpoint/ui/model"
	"tenthpoint/ui/session"
	"tenthpoint/ui/shell"
)

// An act that the book refuses leaves its box open with all that was typed and the
// reason, and nothing else is lost.
func TestARefusedBoxStaysOpen(t *testing.T) {
	s := newScene(t, shell.Look{}, 40)
	s.Go("disputes")
	s.Commands.Run("disputes.raise")
	s.answer("5", "Nils Farrow", "moisture", "", "our own meter says 16.1")
	s.Commands.Run("disputes.sent")
	s.answer("", "state laboratory", "", "Nils Farrow", "", "", "", "", "") // not airtight, which the rules refuse
	box := s.UI.FrontDialog()
	if box == nil || s.Status.State() != model.Stop {
		t.Fatalf("the box is gone, said %q", s.Status.Text())
	}
	for range 8 { // to the box to tick
		s.press(fyne.KeyTab)
	}
	s.press(fyne.KeySpace, fyne.KeyTab, fyne.KeyEnter)
	if s.UI.FrontDialog() != nil || !strings.Contains(s.Status.Text(), "on its way to state laboratory") {
		t.Errorf("with the box ticked: %q", s.Status.Text())
	}
}

// Who gives a box up is told that nothing was done.
func TestGivingUpIsTold(t *testing.T) {
	s := newScene(t, shell.Look{}, 40)
	s.letCornBeTyped()
	in := yardOf(s.Window).Form().ID()
	s.Commands.Run("load.refuse")
	s.letters("sour")
	s.press(fyne.KeyEnter, fyne.KeyTab, fyne.KeyEnter) // past the button to the one that gives up
	if said := s.Status.Text(); s.UI.FrontDialog() != nil || !strings.Contains(said, "Nothing was done: Refuse the load") || yardOf(s.Window).Form().ID() != in {
		t.Errorf("given up, said %q with load %s open", said, yardOf(s.Window).Form().ID())
	}
}

// Why a weight is typed is asked once, and with the answer the keyboard goes on past the weight.
func TestTheKeyboardGoesOnAfterTheReasonOfAWeight(t *testing.T) {
	s := newScene(t, shell.Look{}, 40)
	session.SetManualReason(s.Session, "")
	s.Go("yard")
	s.Commands.Run("load.new")
	s.come("123", "corn", "77")
	s.write("52300")
	s.press(fyne.KeyEnter, fyne.KeyEnter) // the first reason, then the button
	if s.UI.FrontDialog() != nil {
		t.Fatal("a box is still open")
	}
	if at := yardOf(s.Window).Load.FocusOrder.Current(); at != "moisture" {
		t.Errorf("the keyboard is on %q", at)
	}
}
