package kit

import (
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
)

// A window does not know where an object is before its first frame, and lays out
// in it what is new. What floats under an object is then put where it belongs.
func TestListGoesWhereItsFieldTurnsOutToBe(t *testing.T) {
	h := newHouse(t)
	pick := NewPickEntry(exampleGrowers())
	h.show(container.NewWithoutLayout(pick), fyne.NewSize(400, 500))
	pick.Resize(fyne.NewSize(200, 30))
	what := pick.list
	h.stage.float(what, pick, fyne.NewSize(200, 60))
	pick.Move(fyne.NewPos(40, 100))
	h.stage.layer.Refresh()
	if at := what.Position(); at != fyne.NewPos(40, 130) {
		t.Errorf("the list stands at %v, want it under its field", at)
	}
	h.stage.sink(what)
	if len(h.stage.floats) != 0 {
		t.Error("a list that is gone is still placed")
	}
}
