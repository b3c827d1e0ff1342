package desktop

import (
	"context"
	"strings"
	"testing"

	"fyne.io/fyne/v2"

	"tenthpoint/ui/equipment"
	"tenthpoint/ui/model"
	"tenthpoint/ui/shell"
)

// People and bins are added and changed by the keyboard alone, and the book is
// checked from here.
func TestEquipmentByKeyboard(t *testing.T) {
	s := newScene(t, shell.Look{}, 40)
	s.Go("gear")
	screen := screenOf[*equipment.Screen](s)
	s.Commands.Run("gear.person")
	s.answer("Tove Lindqvist", "clerk", "")
	if rows := screen.People.Rows(); len(rows) != 5 {
		t.Errorf("%d people; the status line says %q", len(rows), s.Status.Text())
	}
	screen.FocusOrder().Focus("bins")
	s.press(fyne.KeyReturn)
	s.answer("Bin 1, east", "", "")
	if rows := screen.Bins.Rows(); !strings.Contains(strings.Join(rows[0].Cells, " "), "Bin 1, east") {
		t.Errorf("the first bin shows %q; the status line says %q", rows[0].Cells, s.Status.Text())
	}
	s.Commands.Run("gear.verify")
	if s.Status.State() != model.OK || !strings.Contains(s.Status.Text(), "The book is sound") {
		t.Errorf("after the check the status line says %q", s.Status.Text())
	}
	screen.FocusOrder().Focus("scales")
	s.press(fyne.KeyReturn)
	if s.UI.FrontDialog() == nil {
		t.Fatal("Enter on a scale asks nothing")
	}
	s.answer("1", "20", "140000", "", "")
	if rows := screen.Scales.Rows(); rows[0].Cells[2] != "140,000 lb" {
		t.Errorf("the scale shows %q; the status line says %q", rows[0].Cells, s.Status.Text())
	}
}

// Looking something up does not take away the bar of long work, nor with it the
// way to stop it.
func TestSmallWorkLeavesTheBar(t *testing.T) {
	s := newScene(t, shell.Look{}, 0)
	nothing := func(context.Context, func(int, int)) error { return nil }
	s.Work.Start("Checking the book", func() {})
	s.Run(model.Job{Do: nothing})
	if !s.Work.Visible() {
		t.Error("the bar is gone")
	}
	s.Run(model.Job{Title: "Checking the book", Do: nothing})
	if s.Work.Visible() {
		t.Error("the bar stays after its work")
	}
}
