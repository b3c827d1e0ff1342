package gallery

import (
	"strings"
	"tenthpoint/ui/apptheme"
	"tenthpoint/ui/model"
	"tenthpoint/ui/paint"
	"tenthpoint/ui/widgets"
	"tenthpoint/ui/widgets/status"
	"tenthpoint/ui/widgettest"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/test"
)

func TestButtonKeys(t *testing.T) {
	h := newHouse(t)
	pressed := 0
	a, b := widgets.NewButton("a", func() { pressed++ }), widgets.NewButton("b", nothing)
	ring := h.Cast(map[string]widgets.Keyed{"a": a, "b": b}, "a", "b")
	ring.Focus("a")
	h.Press(fyne.KeyReturn, fyne.KeyEnter, fyne.KeySpace)
	widgettest.Equal(t, "pressed", pressed, 3)
	h.Press(fyne.KeyRight)
	h.At(ring, "b")
	h.Press(fyne.KeyUp)
	h.At(ring, "a")
	a.Disable()
	a.Press()
	test.Tap(a)
	widgettest.Equal(t, "pressed while grey", pressed, 3)
}

func TestTick(t *testing.T) {
	h := newHouse(t)
	tick := widgets.NewCheckbox("Use the stored tare")
	var said []bool
	tick.OnToggle = func(on bool) { said = append(said, on) }
	ring := h.Cast(map[string]widgets.Keyed{"tick": tick, "next": widgets.NewFieldEntry()}, "tick", "next")
	tick.SetOn(true)
	widgettest.Equal(t, "said when shown", len(said), 0)
	ring.Focus("tick")
	h.Press(fyne.KeySpace)
	test.Tap(tick)
	widgettest.Equal(t, "on", tick.On(), true)
	widgettest.Equal(t, "said", len(said), 2)
	ring.Focus("tick")
	h.Press(fyne.KeyReturn)
	h.At(ring, "next")
	tick.Disable()
	test.Tap(tick)
	widgettest.Equal(t, "on while grey", tick.On(), true)
}

func TestFieldSaysOneThingAtATime(t *testing.T) {
	newHouse(t)
	f := widgets.NewField("Moisture", "%", widgets.NewFigureEntry())
	said := func(state model.State, text string) {
		t.Helper()
		gotState, gotText := f.Says()
		widgettest.Equal(t, "note", gotText, text)
		widgettest.Equal(t, "state", gotState, state)
	}
	f.SetReading("= 17.2 %")
	said(model.Plain, "= 17.2 %")
	f.SetProblem("17,2 has a comma: write 17.2.")
	said(model.Stop, "17,2 has a comma: write 17.2.")
	f.SetReading("= 17.3 %") // waits until the problem is gone
	said(model.Stop, "17,2 has a comma: write 17.2.")
	f.SetProblem("")
	said(model.Plain, "= 17.3 %")
	f.SetNote(model.Warn, "near a limit")
	said(model.Warn, "near a limit")
	f.SetNote(model.OK, "")
	said(model.Plain, "= 17.3 %")
	f.SetReading("")
	said(model.Plain, "")
}

func TestFieldShowsWordAndIcon(t *testing.T) {
	h := newHouse(t)
	f := widgets.NewField("Tare", "lb", widgets.NewFigureEntry())
	f.SetProblem("Weigh again.")
	h.Show(widgets.NewSheet(f), fyne.NewSize(500, 60))
	got := widgettest.Texts(f)
	for _, want := range []string{"Tare", "lb", "Weigh again."} {
		if !strings.Contains(got, want) {
			t.Errorf("%q is not among %q", want, got)
		}
	}
	icons := 0
	for _, o := range test.WidgetRenderer(f.Note).Objects() {
		if _, ok := o.(*canvas.Image); ok {
			icons++
		}
	}
	widgettest.Equal(t, "icons", icons, 1)
	f.SetLabel("Truck empty")
	f.SetUnit("kg")
	if got := widgettest.Texts(f); !strings.Contains(got, "Truck empty") || !strings.Contains(got, "kg") {
		t.Errorf("label and unit did not change: %q", got)
	}
}

// TestFieldHasRoomForASentence: two lines beside the entry, at every text size.
func TestFieldHasRoomForASentence(t *testing.T) {
	const sentence = "Net would be -2,200 lb (gross 52,300 - tare 54,500). Weigh again or swap the two."
	for _, scale := range apptheme.TextScales() {
		h := newHouse(t)
		test.ApplyTheme(t, apptheme.NewTheme(false, scale))
		f := widgets.NewField("Tare", "lb", widgets.NewFigureEntry())
		f.SetProblem(sentence)
		h.Show(widgets.NewSheet(f), fyne.NewSize(600*float32(scale), 60))
		widgettest.Equal(t, "sentence", strings.Join(widgettest.TextsOf(f.Note), " "), sentence)
		widgettest.Equal(t, "lines", len(widgettest.TextsOf(f.Note)), 2)
	}
}

// TestSheetLinesUp: entries begin under entries, also when a label grows.
func TestSheetLinesUp(t *testing.T) {
	h := newHouse(t)
	a, b := widgets.NewField("Gross", "lb", widgets.NewFigureEntry()), widgets.NewField("Test weight", "lb/bu", widgets.NewFigureEntry())
	sheet := widgets.NewSheet(widgets.NewHeading("Weights"), a, b)
	h.Show(sheet, fyne.NewSize(600, 200))
	widgettest.Equal(t, "entries", a.Entry().Position().X, b.Entry().Position().X)
	widgettest.Equal(t, "notes", a.Note.Position().X, b.Note.Position().X)
	before := a.Entry().Position().X
	b.SetLabel("Test weight of the second sample")
	sheet.Refresh()
	widgettest.Equal(t, "entries", a.Entry().Position().X, b.Entry().Position().X)
	if a.Entry().Position().X <= before {
		t.Error("the longer label did not push the entries on")
	}
	b.Hide()
	sheet.Refresh()
	widgettest.Equal(t, "entry after the long row went", a.Entry().Position().X < before, true)
}

// TestLoadFormFits: fifteen rows with headings fit in the smallest window, under a bar of buttons
// and over a status line.
func TestLoadFormFits(t *testing.T) {
	newHouse(t)
	rows := []fyne.CanvasObject{widgets.NewHeading("Weights"), widgets.NewHeading("Sample")}
	for range 15 {
		rows = append(rows, widgets.NewField("Foreign matter", "lb/bu", widgets.NewFigureEntry()))
	}
	column := container.NewVBox(widgets.NewButton("Settle", nothing), widgets.NewSheet(rows...), status.NewLine(widgets.EnglishWords().Status))
	const window, menu = 720, 30
	if high := column.MinSize().Height; high > window-menu {
		t.Errorf("fifteen rows are %v high, and there is room for %v", high, window-menu)
	}
}

func TestNoteKeepsWithinItsLines(t *testing.T) {
	h := newHouse(t)
	n := status.NewText()
	h.Show(widgettest.At(n, fyne.NewPos(0, 0), fyne.NewSize(200, 2*paint.PainterFor(n).LineHeight(n.TextStyle()))), fyne.NewSize(400, 200))
	n.Say(model.Stop, strings.Repeat("Weigh again or swap the two. ", 5))
	lines := widgettest.TextsOf(n)
	widgettest.Equal(t, "lines", len(lines), 2)
	if !strings.HasSuffix(lines[1], "…") {
		t.Errorf("the sentence is cut without saying so: %q", lines)
	}
	n.Say(model.Stop, "Weigh again.")
	widgettest.Equal(t, "short", widgettest.Texts(n), "Weigh again.")
	n.Say(model.Plain, "")
	widgettest.Equal(t, "blank", widgettest.Texts(n), "")
}

func TestStatusLineRepeatsTheWord(t *testing.T) {
	h := newHouse(t)
	s := status.NewLine(widgets.EnglishWords().Status)
	h.Show(s, fyne.NewSize(600, 40))
	for _, c := range []struct {
		state model.State
		want  string
	}{
		{model.OK, "Done: ticket 1042 printed."}, {model.Warn, "Take care: ticket 1042 printed."}, {model.Stop, "Not done: ticket 1042 printed."},
		{model.Wait, "Working: ticket 1042 printed."}, {model.Plain, "ticket 1042 printed."},
	} {
		s.Say(c.state, "ticket 1042 printed.")
		widgettest.Equal(t, "line", s.Text(), c.want)
		widgettest.Equal(t, "drawn", strings.ReplaceAll(widgettest.Texts(s), "|", ": "), c.want)
	}
	long := "Ticket 1042: net would be -380 lb (gross 24,120 - tare 24,500). Weigh again or swap the two weights."
	s.Say(model.Stop, long)
	lines := widgettest.TextsOf(s)[1:]
	widgettest.Equal(t, "long sentences take two small lines", len(lines), 2)
	widgettest.Equal(t, "and lose nothing", strings.Join(lines, " "), long)
}

func TestBadgeAndFigure(t *testing.T) {
	h := newHouse(t)
	b := status.NewBadge(model.OK, "issued")
	f := widgets.NewFigure("Net", "lb")
	h.Show(container.NewVBox(b, f), fyne.NewSize(400, 200))
	widgettest.Equal(t, "badge", widgettest.Texts(b), "issued")
	b.Say(model.Stop, "void")
	widgettest.Equal(t, "badge", widgettest.Texts(b)+" "+b.Word(), "void void")
	widgettest.Equal(t, "state", b.State(), model.Stop)

	f.Set(model.Plain, "7")
	right := func() float32 {
		value := widgettest.Letters(f)[1]
		return value.Position().X + value.Size().Width
	}
	narrow := right()
	f.Set(model.Wait, "52,300")
	widgettest.Equal(t, "the number ends where it ended", right(), narrow)
	widgettest.Equal(t, "value", f.Value(), "52,300")
	f.SetCaption("Dry", "bu")
	widgettest.Equal(t, "figure", widgettest.Texts(f), "Dry|52,300|bu")
}

func TestWorkBar(t *testing.T) {
	h := newHouse(t)
	w := widgets.NewWorkBar(widgets.EnglishWords())
	h.Show(container.NewVBox(w), fyne.NewSize(500, 100))
	widgettest.Equal(t, "idle", w.Visible(), false)
	stopped := 0
	w.Start("Checking the book", func() { stopped++ })
	widgettest.Equal(t, "busy", w.Visible(), true)
	h.Show(container.NewVBox(w), fyne.NewSize(500, 100)) // a real window repeats the layout
	width := func() float32 { return test.WidgetRenderer(w).Objects()[2].Size().Width }
	room := test.WidgetRenderer(w).Objects()[1].Size().Width
	for _, c := range []struct {
		done, total int
		want        float32
	}{{0, 10, 0}, {5, 10, room / 2}, {10, 10, room}, {20, 10, room}, {3, 0, 0}} {
		w.Progress(c.done, c.total)
		if got := width(); got < c.want-1 || got > c.want+1 {
			t.Errorf("%d of %d: the bar is %v long, want %v", c.done, c.total, got, c.want)
		}
	}
	w.Halt().Press()
	widgettest.Equal(t, "stopped", stopped, 1)
	w.Finish()
	w.Halt().Press()
	widgettest.Equal(t, "stopped after the end", stopped, 1)
	widgettest.Equal(t, "idle again", w.Visible(), false)
}

// TestTextSizeMayChangeWhileOpen: all widgets grow in place.
func TestTextSizeMayChangeWhileOpen(t *testing.T) {
	h := newHouse(t, galleryCommands()...)
	content, _ := gallery(h)
	h.Show(content, fyne.NewSize(1280, 720))
	type written struct {
		text string
		size float32
	}
	before := map[written]bool{}
	for _, letters := range widgettest.Letters(content) {
		before[written{letters.Text, letters.TextSize}] = true
	}
	test.ApplyTheme(t, apptheme.NewTheme(true, apptheme.TextLargest))
	refreshAll(content)
	grown := 0
	for _, letters := range widgettest.Letters(content) {
		if before[written{letters.Text, letters.TextSize / 1.5}] {
			grown++
		} else if before[written{letters.Text, letters.TextSize}] {
			t.Errorf("%q is still %v", letters.Text, letters.TextSize)
		}
	}
	if grown < 50 {
		t.Errorf("only %d texts grew", grown)
	}
}

// refreshAll does what a window does when the theme changes.
func refreshAll(o fyne.CanvasObject) {
	o.Refresh()
	switch each := o.(type) {
	case fyne.Widget:
		for _, child := range test.WidgetRenderer(each).Objects() {
			refreshAll(child)
		}
	case *fyne.Container:
		for _, child := range each.Objects {
			refreshAll(child)
		}
	}
}

// TestTightButtonKeepsItsWords: where there is no room for all, the key goes
// before the icon, and the icon before the text.
func TestTightButtonKeepsItsWords(t *testing.T) {
	newHouse(t)
	b := widgets.NewButton("Print", nothing)
	b.Key, b.Icon = "Ctrl+P", apptheme.IconPrint
	icon, text, key := b.Widths(paint.PainterFor(b))
	pad := 2 * paint.PainterFor(b).Pad()
	for _, c := range []struct {
		name            string
		width           float32
		hasIcon, hasKey bool
	}{
		{"room for all", icon + text + key + pad, true, true},
		{"no room for the key", icon + text + pad, true, false},
		{"no room for the icon", text + pad, false, false},
		{"no room for the text", text / 2, false, false},
	} {
		i, words, k := b.Fitting(paint.PainterFor(b), c.width)
		widgettest.Equal(t, c.name+": icon", i > 0, c.hasIcon)
		widgettest.Equal(t, c.name+": key", k > 0, c.hasKey)
		if i+words+k > c.width {
			t.Errorf("%s: %v wide in %v", c.name, i+words+k, c.width)
		}
	}
}
