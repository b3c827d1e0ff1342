package view

import (
	"bytes"
	"testing"

	"fyne.io/fyne/v2"

	"tenthpoint/internal/load"
)

// One load from an empty form to the printed ticket, by the keyboard alone:
// every field is filled in the order the ring walks them.
func TestOneLoadByKeyboard(t *testing.T) {
	s := newScene(t, Look{}, 40)
	s.commands.Run("load.new")
	s.write("123", "corn", "77", "52300", "17.2", "56", "", "", "", "", "24120", "P1", "sold", "4.15", "typed by test")
	if got := s.yard().Ring().Current(); got != "issue" {
		t.Fatalf("after the last field the keyboard is on %q, want the ticket", got)
	}
	s.press(fyne.KeyF12)
	if len(s.drawer.papers) != 1 {
		t.Fatalf("printed %d papers, want 1; the status line says %q", len(s.drawer.papers), s.status.Text())
	}
	for name, pdf := range s.drawer.papers {
		if !bytes.HasPrefix(pdf, []byte("%PDF")) {
			t.Errorf("%s is no PDF", name)
		}
	}
	last, found, err := s.desk.LastLoad(t.Context(), "123", "")
	must(t, err)
	if !found || last.Phase != load.Ticketed || last.Details.Remark != "typed by test" || last.Copies != 1 {
		t.Errorf("the book has %+v", last)
	}
	if !s.yard().yard.Form().IsBlank() {
		t.Error("after the ticket the form in hand is not blank")
	}
}
