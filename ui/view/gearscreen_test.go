package view

import (
	"context"
	"strings"
	"testing"

	"fyne.io/fyne/v2"

	"tenthpoint/ui/model"
)

// People and bins are added and changed by the keyboard alone, and the book is
// checked from here.
func TestGearByKeyboard(t *testing.T) {
	s := newScene(t, Look{}, 40)
	s.Go("gear")
	screen := screenOf[*gearScreen](s)
	s.commands.Run("gear.person")
	s.write("Tove Lindqvist", "clerk", "")
	if rows := screen.people.Rows(); len(rows) != 5 {
		t.Errorf("%d people; the status line says %q", len(rows), s.status.Text())
	}
	screen.ring.Focus("bins")
	s.press(fyne.KeyReturn)
	s.write("Bin 1, east", "")
	if rows := screen.bins.Rows(); !strings.Contains(strings.Join(rows[0].Cells, " "), "Bin 1, east") {
		t.Errorf("the first bin shows %q; the status line says %q", rows[0].Cells, s.status.Text())
	}
	s.commands.Run("gear.verify")
	if s.status.State() != model.OK || !strings.Contains(s.status.Text(), "The book is sound") {
		t.Errorf("after the check the status line says %q", s.status.Text())
	}
	screen.ring.Focus("scales")
	s.press(fyne.KeyReturn)
	if s.stage.FrontDialog() == nil {
		t.Fatal("Enter on a scale asks nothing")
	}
	s.write("1", "20", "140000", "", "")
	if rows := screen.scales.Rows(); rows[0].Cells[2] != "140,000 lb" {
		t.Errorf("the scale shows %q; the status line says %q", rows[0].Cells, s.status.Text())
	}
}

// Looking something up does not take away the bar of long work, nor with it the
// way to stop it.
func TestSmallWorkLeavesTheBar(t *testing.T) {
	s := newScene(t, Look{}, 0)
	nothing := func(context.Context, func(int, int)) error { return nil }
	s.work.Start("Checking the book", func() {})
	s.Run(model.Job{Do: nothing})
	if !s.work.Visible() {
		t.Error("the bar is gone")
	}
	s.Run(model.Job{Title: "Checking the book", Do: nothing})
	if s.work.Visible() {
		t.Error("the bar stays after its work")
	}
}
