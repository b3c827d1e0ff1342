package desktop

import (
	"testing"

	"fyne.io/fyne/v2"

	"tenthpoint/ui/growers"
	"tenthpoint/ui/listdetail"
	"tenthpoint/ui/rates"
	"tenthpoint/ui/shell"
	"tenthpoint/ui/tickets"
)

// listOf is the list of a screen that has one with a detail; nil for others.
func listOf(screen shell.Screen) *listdetail.Screen {
	switch s := screen.(type) {
	case *listdetail.Screen:
		return s
	case *tickets.Screen:
		return s.Screen
	case *growers.Screen:
		return s.Screen
	case *rates.Screen:
		return s.Screen
	}
	return nil
}

// A row that was chosen stays chosen while the facts are read again, on every
// screen with a list.
func TestListsKeepTheirChoice(t *testing.T) {
	s := newScene(t, shell.Look{}, 60)
	seen := 0
	for i, row := range Screens {
		screen := listOf(s.Screens[i])
		if screen == nil {
			continue
		}
		s.Go(row.ID)
		if len(screen.List.Rows()) < 2 {
			continue
		}
		screen.FocusOrder().Focus("list")
		s.press(fyne.KeyDown)
		key := screen.List.ChosenKey()
		if key != screen.List.Rows()[1].Key {
			t.Errorf("%s: Down from the first row chooses %q, want %q", row.ID, key, screen.List.Rows()[1].Key)
		}
		s.Redraw()
		s.Go("yard")
		s.Go(row.ID)
		if got := screen.List.ChosenKey(); got != key {
			t.Errorf("%s: %q is chosen after %q", row.ID, got, key)
		}
		if screen.FocusOrder().Current() == "" {
			t.Errorf("%s: nothing has the keyboard", row.ID)
		}
		seen++
	}
	if seen < 4 {
		t.Errorf("only %d screens have a list of two rows", seen)
	}
}
