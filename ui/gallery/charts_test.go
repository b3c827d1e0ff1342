package gallery

import (
	"strings"
	"tenthpoint/ui/apptheme"
	"tenthpoint/ui/charts"
	"tenthpoint/ui/model"
	"tenthpoint/ui/paint"
	"tenthpoint/ui/widgettest"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"pgregory.net/rapid"
)

// TestDrawingsStayInside: for any numbers and any size, nothing is drawn outside the widget, and
// edges lie on whole units.
func TestDrawingsStayInside(t *testing.T) {
	newHouse(t)
	permille := rapid.IntRange(-200, 1300)
	rapid.Check(t, func(t *rapid.T) {
		ruler, bars, checks := charts.NewMoistureRuler(), charts.NewBarChart(), charts.NewCheckChart()
		ruler.Set([]model.Mark{
			{Label: "14", At: permille.Draw(t, "point"), Kind: model.PointMark},
			{Label: "trigger", At: permille.Draw(t, "trigger"), Kind: model.LimitMark},
			{Label: "17.2 %", At: permille.Draw(t, "reading"), Kind: model.ReadingMark, State: model.Warn},
		}, model.Band{From: permille.Draw(t, "from"), To: permille.Draw(t, "to"), Around: rapid.Bool().Draw(t, "around")})
		var all []model.Bar
		for range rapid.IntRange(0, 40).Draw(t, "bars") {
			all = append(all, model.Bar{Label: "10", Value: "7", Height: permille.Draw(t, "height")})
		}
		bars.Set(all)
		checks.Set([]model.ChartPoint{{X: permille.Draw(t, "x"), Y: permille.Draw(t, "y"), Label: "!", State: model.Stop}}, []model.Guide{{At: permille.Draw(t, "limit"), State: model.Stop}})
		for _, w := range []fyne.Widget{ruler, bars, checks} {
			size := w.MinSize().AddWidthHeight(float32(rapid.IntRange(0, 900).Draw(t, "wider")), float32(rapid.IntRange(0, 300).Draw(t, "higher")))
			for _, o := range widgettest.DrawnAt(w, size) {
				checkInside(t, w, o, size)
			}
		}
	})
}

func checkInside(t *rapid.T, w fyne.Widget, o fyne.CanvasObject, size fyne.Size) {
	if _, line := o.(*canvas.Line); line {
		return // a line is placed by its two ends
	}
	const hair = 10 // a dot's ring and a label may overhang a little
	at, end := o.Position(), o.Position().Add(o.Size())
	if at.X < -hair || at.Y < -hair || end.X > size.Width+hair || end.Y > size.Height+hair {
		t.Fatalf("%T: %T from %v to %v in %v", w, o, at, end, size)
	}
	if r, ok := o.(*canvas.Rectangle); ok && (at != paint.Whole(at) || r.Size().Width < 0) {
		t.Fatalf("%T: a rectangle at %v, %v large", w, at, r.Size())
	}
}

// TestClampStandsAboutTheReading: how far a reading may be off is a line with
// two ends, not a stretch of colour.
func TestClampStandsAboutTheReading(t *testing.T) {
	newHouse(t)
	r := charts.NewMoistureRuler()
	r.Set([]model.Mark{{Label: "17.2 %", At: 500, Kind: model.ReadingMark, State: model.Warn}}, model.Band{From: 400, To: 600, Label: "tolerance", Around: true})
	objects := widgettest.DrawnAt(r, fyne.NewSize(800, 120))
	parts, pointer := widgettest.Blocks(objects, apptheme.ColorWait), widgettest.Blocks(objects, apptheme.ColorWarn)[0]
	widgettest.Equal(t, "stretches of colour", len(widgettest.Blocks(objects, apptheme.ColorBand)), 0)
	widgettest.Equal(t, "two ends and a line", len(parts), 3)
	left, right := parts[0].Position().X, parts[1].Position().X
	if middle := pointer.Position().X; left >= middle || middle >= right {
		t.Errorf("the clamp runs from %v to %v, the reading stands at %v", left, right, middle)
	}
	r.Set(nil, model.Band{From: 500, To: 500, Around: true})
	widgettest.Equal(t, "a clamp of no width", len(widgettest.Blocks(widgettest.DrawnAt(r, fyne.NewSize(800, 120)), apptheme.ColorWait)), 0)
}

func TestRulerPlacesItsMarks(t *testing.T) {
	newHouse(t)
	objects := widgettest.DrawnAt(exampleRuler(), fyne.NewSize(800, 120))
	band := widgettest.Blocks(objects, apptheme.ColorBand)
	reading := widgettest.Blocks(objects, apptheme.ColorWarn)
	widgettest.Equal(t, "bands", len(band), 1)
	widgettest.Equal(t, "reading: pointer and tag", len(reading), 2)
	left := band[0].Position().X
	length := band[0].Size().Width / 0.4 // the band ends at 400 of 1000
	got := reading[0].Position().X + reading[0].Size().Width/2
	if want := left + length*0.84; got < want-2 || got > want+2 {
		t.Errorf("17.2 stands at %v, want %v", got, want)
	}
	all := widgettest.Texts(exampleRulerAt(800))
	for _, want := range []string{"13", "18", "dry", "shrink to 15.0", "trigger 15.5", "17.2 %"} {
		if !strings.Contains(all, want) {
			t.Errorf("%q is not on the ruler: %s", want, all)
		}
	}
}

func exampleRulerAt(width float32) *charts.MoistureRuler {
	r := exampleRuler()
	widgettest.DrawnAt(r, fyne.NewSize(width, 120))
	return r
}

// TestLimitNamesStepAside: two limits close together are named on two lines.
func TestLimitNamesStepAside(t *testing.T) {
	newHouse(t)
	top := map[string]float32{}
	for _, l := range widgettest.Letters(exampleRulerAt(500)) {
		top[l.Text] = l.Position().Y
	}
	if top["trigger 15.5"] >= top["shrink to 15.0"] {
		t.Errorf("the names stand on one line: %v", top)
	}
}

func TestBarsAreAsHighAsTheySay(t *testing.T) {
	newHouse(t)
	c := charts.NewBarChart()
	c.Set([]model.Bar{{Height: 1000}, {Height: 500}, {Height: 0}, {Height: 250, State: model.Stop}})
	objects := widgettest.DrawnAt(c, fyne.NewSize(400, 240))
	plain, stopped := widgettest.Blocks(objects, apptheme.ColorBar), widgettest.Blocks(objects, apptheme.ColorStop)
	widgettest.Equal(t, "plain bars", len(plain), 3)
	widgettest.Equal(t, "stopped bars", len(stopped), 1)
	full := plain[0].Size().Height
	for i, want := range []float32{full, full / 2, 0} {
		if got := plain[i].Size().Height; got < want-1 || got > want+1 {
			t.Errorf("bar %d is %v high, want %v", i, got, want)
		}
	}
	if got := stopped[0].Size().Height; got < full/4-1 || got > full/4+1 {
		t.Errorf("the stopped bar is %v high, want %v", got, full/4)
	}
}

// TestCrowdedLabelsThinOut: they never run into each other.
func TestCrowdedLabelsThinOut(t *testing.T) {
	newHouse(t)
	c := charts.NewBarChart()
	bars := make([]model.Bar, 48)
	for i := range bars {
		bars[i] = model.Bar{Label: "12:30", Value: "1,000", Height: 500}
	}
	c.Set(bars)
	widgettest.DrawnAt(c, fyne.NewSize(400, 200))
	letters := widgettest.Letters(c)
	if len(letters) < 3 || len(letters) > 12 {
		t.Errorf("%d labels in 400 units", len(letters))
	}
	for i := 1; i < len(letters); i++ {
		if end := letters[i-1].Position().X + letters[i-1].Size().Width; end > letters[i].Position().X {
			t.Errorf("label %d runs into the next", i-1)
		}
	}
}

func TestEmptyChartsSaySo(t *testing.T) {
	newHouse(t)
	bars, checks := charts.NewBarChart(), charts.NewCheckChart()
	bars.Empty, checks.Empty = "No loads yet today.", "No checks on record."
	widgettest.DrawnAt(bars, fyne.NewSize(300, 150))
	widgettest.DrawnAt(checks, fyne.NewSize(300, 150))
	widgettest.Equal(t, "bars", widgettest.Texts(bars), bars.Empty)
	widgettest.Equal(t, "checks", widgettest.Texts(checks), checks.Empty)
}

func TestCheckPointsOutsideAreRinged(t *testing.T) {
	newHouse(t)
	c := exampleChecks()
	rings, dots, lines := 0, 0, 0
	for _, o := range widgettest.DrawnAt(c, fyne.NewSize(500, 200)) {
		switch each := o.(type) {
		case *canvas.Circle:
			if each.StrokeWidth > 0 {
				rings++
				widgettest.Equal(t, "ring", each.StrokeColor == apptheme.LightPalette[apptheme.ColorStop], true)
			} else {
				dots++
			}
		case *canvas.Line:
			lines++
		}
	}
	widgettest.Equal(t, "dots", dots, 6)
	widgettest.Equal(t, "rings", rings, 1)
	widgettest.Equal(t, "joins", lines, 5)
	if got := widgettest.Texts(c); !strings.Contains(got, "+0.32") || !strings.Contains(got, "+0.2") {
		t.Errorf("the chart says %s", got)
	}
}
