package status

import (
	"tenthpoint/ui/apptheme"
	"tenthpoint/ui/model"
	"tenthpoint/ui/widgettest"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/test"
)

func exampleStatuses() *List {
	r := NewList()
	r.Set([]model.Status{
		{State: model.Stop, Word: "meter failed", Text: "Meter M1 failed its check. Check it with an oven-dried reference before relying on it."},
		{State: model.Plain, Word: "leave", Text: "Leave it as it is: it is within every limit set."},
	})
	return r
}

// TestStatusesAreWordIconAndColour: what stops has an icon, a word in its colour
// and a ground; a plain remark has none of them.
func TestStatusesAreWordIconAndColour(t *testing.T) {
	widgettest.Window(t)
	objects := widgettest.DrawnAt(exampleStatuses(), fyne.NewSize(400, 200))
	icons := 0
	for _, o := range objects {
		if _, picture := o.(*canvas.Image); picture {
			icons++
		}
	}
	widgettest.Equal(t, "icons", icons, 1)
	widgettest.Equal(t, "grounds", len(widgettest.Blocks(objects, apptheme.ColorStopGround)), 1)
}

// TestStatusesGrowWithTheirSentences: the narrower the list, the higher.
func TestStatusesGrowWithTheirSentences(t *testing.T) {
	widgettest.Window(t)
	r := exampleStatuses()
	test.WidgetRenderer(r)
	r.Resize(fyne.NewSize(900, 100))
	flat := r.MinSize().Height
	r.Resize(fyne.NewSize(220, 100))
	if high := r.MinSize().Height; high <= flat {
		t.Errorf("%v high at 220 units and %v at 900", high, flat)
	}
	r.Set(nil)
	widgettest.Equal(t, "height of nothing", r.MinSize().Height, 0)
}
