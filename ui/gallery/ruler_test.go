package gallery

import (
	"tenthpoint/ui/apptheme"
	"tenthpoint/ui/charts"
	"tenthpoint/ui/model"
	"tenthpoint/ui/widgettest"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
)

// rulerSizes are all sizes of a ruler.
var rulerSizes = []charts.RulerSize{charts.RulerOrdinary, charts.RulerLow, charts.RulerLowest, charts.RulerTall}

// At any reading and any height of the ruler, its tag and pointer overlap no name of a limit, and a
// name is whole or not there.
func TestReadingCrossesNoName(t *testing.T) {
	newHouse(t)
	const name = "shrink and drying above and to 15.0"
	named := 0
	for _, size := range rulerSizes {
		for at := 0; at <= 1000; at += 25 {
			for _, width := range []float32{420, 560, 900} {
				r := charts.NewMoistureRuler()
				r.SetSize(size)
				r.Set([]model.Mark{{Label: name, At: 170, Kind: model.LimitMark}, {Label: "17.2 %", At: at, Kind: model.ReadingMark, State: model.Warn}})
				objects := widgettest.DrawnAt(r, fyne.NewSize(width, r.Height(size)))
				for _, o := range objects {
					text, ok := o.(*canvas.Text)
					if !ok || text.Text == "17.2 %" {
						continue
					}
					named++
					for _, mark := range widgettest.Blocks(objects, apptheme.ColorWarn) {
						if crosses(text, mark) {
							t.Errorf("size %d, width %v, reading at %d: it lies over %q", size, width, at, text.Text)
						}
					}
				}
			}
		}
	}
	if named < 100 {
		t.Errorf("names were written %d times", named)
	}
}

// crosses reports whether two things lie over one another.
func crosses(a, b fyne.CanvasObject) bool {
	from, other := a.Position(), b.Position()
	to, end := from.Add(a.Size()), other.Add(b.Size())
	return max(from.X, other.X) < min(to.X, end.X) && max(from.Y, other.Y) < min(to.Y, end.Y)
}

// A lower ruler is lower, and each has the height it says.
func TestRulerHeights(t *testing.T) {
	newHouse(t)
	r, before := charts.NewMoistureRuler(), float32(0)
	for _, size := range []charts.RulerSize{charts.RulerLowest, charts.RulerLow, charts.RulerOrdinary, charts.RulerTall} {
		r.SetSize(size)
		if high := r.Height(size); high <= before || r.MinSize().Height != high {
			t.Errorf("size %d is %v high, says %v; the lower one has %v", size, r.MinSize().Height, high, before)
		}
		before = r.Height(size)
	}
}
