package gallery

import (
	"fmt"
	"image"
	"strings"
	"tenthpoint/internal/grain/look"
	"tenthpoint/ui/apptheme"
	"tenthpoint/ui/charts"
	"tenthpoint/ui/model"
	"tenthpoint/ui/paint"
	"tenthpoint/ui/widgets"
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
		ruler, bars, checks := charts.NewMoistureRuler(), charts.NewColumns(), charts.NewCheckChart()
		ruler.Set([]model.Mark{
			{Label: "14", At: permille.Draw(t, "point"), Kind: model.PointMark},
			{Label: "trigger", At: permille.Draw(t, "trigger"), Kind: model.LimitMark},
			{Label: "17.2 %", At: permille.Draw(t, "reading"), Kind: model.ReadingMark, State: model.Warn},
		}, model.Band{From: permille.Draw(t, "from"), To: permille.Draw(t, "to"), Around: rapid.Bool().Draw(t, "around")})
		all := model.Picture{Base: rapid.IntRange(0, 1000).Draw(t, "base"), Edge: model.PictureEdge{At: permille.Draw(t, "edge"), Label: "trigger"}}
		for range rapid.IntRange(0, 40).Draw(t, "bars") {
			all.Stacks = append(all.Stacks, model.Stack{Label: "10", Value: "7", Parts: []model.StackPart{{Height: permille.Draw(t, "height"), Look: look.Of("corn")}}})
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

// A column is as high as it says, its parts on one another; below zero it goes down.
func TestColumnsAreAsHighAsTheySay(t *testing.T) {
	newHouse(t)
	corn, oats := look.Of("corn"), look.Of("oats")
	c := charts.NewColumns()
	c.Set(model.Picture{Base: 200, Stacks: []model.Stack{
		{Parts: []model.StackPart{{Height: 800, Look: corn}}}, {Parts: []model.StackPart{{Height: 400, Look: corn}}}, {}, {Parts: []model.StackPart{{Height: -200, Look: oats}}},
	}})
	size := fyne.NewSize(400, 240)
	img := surfaceOf(t, widgettest.DrawnAt(c, size), size)
	high := make([]int, 4)
	for i := range high {
		for y := range 240 {
			if _, _, _, alpha := img.At(50+i*100, y).RGBA(); alpha > 0 {
				high[i]++
			}
		}
	}
	if high[0] < 100 || high[1]*2 < high[0]-2 || high[1]*2 > high[0]+2 || high[2] != 0 || high[3]*4 < high[0]-4 || high[3]*4 > high[0]+4 {
		t.Errorf("columns of 800, 400, 0 and -200 are %v high", high)
	}
}

// surfaceOf is the picture of surfaces that a chart draws.
func surfaceOf(t *testing.T, objects []fyne.CanvasObject, size fyne.Size) image.Image {
	t.Helper()
	for _, o := range objects {
		if r, ok := o.(*canvas.Raster); ok {
			return r.Generator(int(size.Width), int(size.Height))
		}
	}
	t.Fatal("no surfaces are drawn")
	return nil
}

// Grains that look alike without colour differ by their lines: two columns of one height have ink
// in different places.
func TestGrainsAreHatchedApart(t *testing.T) {
	newHouse(t)
	inked := map[string]string{}
	for _, id := range []string{"corn", "soybeans", "wheat-hrw", "sorghum", "oats"} {
		c := charts.NewColumns()
		c.Set(model.Picture{Stacks: []model.Stack{{Parts: []model.StackPart{{Height: 1000, Look: look.Of(id)}}}}})
		size := fyne.NewSize(300, 240)
		img := surfaceOf(t, widgettest.DrawnAt(c, size), size)
		ink := apptheme.LookInk(apptheme.Theme{}, look.Of(id))
		var places strings.Builder
		for x := 120; x < 150; x++ {
			for y := 100; y < 130; y++ {
				fmt.Fprint(&places, img.At(x, y) == ink)
			}
		}
		for other, seen := range inked {
			if seen == places.String() {
				t.Errorf("%s and %s have ink in the same places", id, other)
			}
		}
		inked[id] = places.String()
	}
}

// TestCrowdedLabelsThinOut: they never run into each other.
func TestCrowdedLabelsThinOut(t *testing.T) {
	newHouse(t)
	c := charts.NewColumns()
	stacks := make([]model.Stack, 48)
	for i := range stacks {
		stacks[i] = model.Stack{Label: "12:30", Value: "1,000", Parts: []model.StackPart{{Height: 500, Look: look.Other}}}
	}
	c.Set(model.Picture{Stacks: stacks})
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
	columns, checks := charts.NewColumns(), charts.NewCheckChart()
	checks.Empty = "No checks on record."
	columns.Set(model.Picture{Empty: "No loads yet today."})
	widgettest.DrawnAt(columns, fyne.NewSize(300, 150))
	widgettest.DrawnAt(checks, fyne.NewSize(300, 150))
	widgettest.Equal(t, "columns", widgettest.Texts(columns), "No loads yet today.")
	widgettest.Equal(t, "checks", widgettest.Texts(checks), checks.Empty)
}

// Arrows go along a picture and stop at its ends, Enter opens a column, so does a click; whoever
// leaves chooses none.
func TestChooserOfColumns(t *testing.T) {
	h := newHouse(t)
	columns := exampleColumns()
	chooser := widgets.NewChooser(columns)
	var said, opened []int
	chooser.OnChoose, chooser.OnOpen = func(n int) { said = append(said, n) }, func(n int) { opened = append(opened, n) }
	ring := h.Cast(map[string]widgets.Keyed{"picture": chooser, "next": widgets.NewButton("Next", nothing)}, "picture", "next")
	ring.Focus("picture")
	h.Press(fyne.KeyReturn, fyne.KeyRight, fyne.KeyRight, fyne.KeyReturn, fyne.KeyEnd, fyne.KeyRight, fyne.KeyHome, fyne.KeyLeft, fyne.KeyEnter)
	widgettest.Equal(t, "chosen", fmt.Sprint(said), "[0 1 2 0]")
	widgettest.Equal(t, "opened", fmt.Sprint(opened), "[1 0]")
	h.Press(fyne.KeyTab)
	h.At(ring, "next")
	widgettest.Equal(t, "chosen by nobody", columns.Chosen(), -1)
	for n := range columns.Count() {
		for x := float32(0); x < columns.Size().Width; x++ {
			if columns.At(fyne.NewPos(x, 5)) == n {
				chooser.Tapped(&fyne.PointEvent{Position: fyne.NewPos(x, 5)})
				break
			}
		}
	}
	widgettest.Equal(t, "opened by clicks", fmt.Sprint(opened), "[1 0 0 1 2]")
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
