package widgets

import (
	"tenthpoint/ui/model"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"
)

// A window forgets how a screen was drawn a minute after it went out of sight,
// and asks for it again when the screen is back, without laying it out.
func TestDrawnAgainAfterAMinuteOutOfSight(t *testing.T) {
	newHouse(t)
	figure := NewFigure("Moisture", "%")
	figure.Set(model.OK, "13.4")
	figure.Resize(fyne.NewSize(200, 100))
	before := len(test.WidgetRenderer(figure).Objects())
	if before == 0 {
		t.Fatal("nothing is drawn at first")
	}
	again := figure.CreateRenderer()
	if after := len(again.Objects()); after != before {
		t.Errorf("%d parts are drawn anew, want the %d of before", after, before)
	}
	changed := figure.CreateRenderer()
	changed.Refresh()
	if after := len(changed.Objects()); after != before {
		t.Errorf("%d parts are drawn anew once the figure has changed, want %d", after, before)
	}
}
