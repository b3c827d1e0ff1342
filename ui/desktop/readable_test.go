package desktop

import (
	"testing"

	"fyne.io/fyne/v2"

	"tenthpoint/ui/apptheme"
	"tenthpoint/ui/shell"
	"tenthpoint/ui/widgets"
)

// On a high window letters are read across the room, until somebody chooses another size.
func TestLettersGoByTheHeightOfTheWindow(t *testing.T) {
	s := newScene(t, shell.Look{}, 0)
	if s.Look.Scale != apptheme.TextOrdinary {
		t.Errorf("720 lines have letters of %v", s.Look.Scale)
	}
	s.resize(fyne.NewSize(1920, 1040)) // a full screen with a title bar
	if s.Look.Scale != apptheme.TextLargest {
		t.Errorf("1040 lines have letters of %v", s.Look.Scale)
	}
	s.UI.Chord(widgets.Ctrl(fyne.KeyPeriod))
	s.resize(fyne.NewSize(1920, 1080))
	if s.Look.Scale != apptheme.TextOrdinary {
		t.Errorf("chosen was the size after the largest, and the letters are %v", s.Look.Scale)
	}
}
