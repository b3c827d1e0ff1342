package widgets

import (
	"tenthpoint/ui/widgettest"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
)

// A window does not know where an object is before its first frame, and lays out
// in it what is new. What floats under an object is then put where it belongs.
func TestListGoesWhereItsFieldTurnsOutToBe(t *testing.T) {
	h := newHouse(t)
	pick := NewAutocomplete(widgettest.Growers())
	h.Show(container.NewWithoutLayout(pick), fyne.NewSize(400, 500))
	pick.Resize(fyne.NewSize(200, 30))
	what := pick.list
	h.UI.float(what, pick, fyne.NewSize(200, 60))
	pick.Move(fyne.NewPos(40, 100))
	h.UI.layer.Refresh()
	if at := what.Position(); at != fyne.NewPos(40, 130) {
		t.Errorf("the list stands at %v, want it under its field", at)
	}
	h.UI.sink(what)
	if len(h.UI.floats) != 0 {
		t.Error("a list that is gone is still placed")
	}
}
