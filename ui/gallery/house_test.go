package gallery

import (
	"tenthpoint/ui/widgets"

	"strings"
	"tenthpoint/ui/apptheme"
	"tenthpoint/ui/model"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/test"
)

// house is a window of a test: the kit's theme on a canvas of a fixed size.
type house struct {
	T        *testing.T
	Window   fyne.Window
	Stage    *widgets.UIContext
	Commands *widgets.Commands
}

// newHouse opens a window. One house stands at a time: the test driver takes
// the last window made for everybody's.
func newHouse(t *testing.T, list ...widgets.Command) *house {
	t.Helper()
	test.NewTempApp(t)
	test.ApplyTheme(t, apptheme.NewTheme(false, apptheme.TextOrdinary))
	commands, err := widgets.NewCommands(list...)
	if err != nil {
		t.Fatal(err)
	}
	w := test.NewWindow(nil)
	t.Cleanup(w.Close)
	w.SetPadded(false)
	return &house{T: t, Window: w, Stage: widgets.NewUIContext(w.Canvas(), commands), Commands: commands}
}

// Show puts content in the window at a size.
func (h *house) Show(content fyne.CanvasObject, size fyne.Size) {
	h.Window.SetContent(h.Stage.Wrap(content))
	h.Window.Resize(size)
}

// Press and write act like a person at the keyboard.
func (h *house) Press(keys ...fyne.KeyName) { h.Stage.Press(keys...) }
func (h *house) Write(letters string)       { h.Stage.Write(letters) }

// Cast shows some widgets in a column, each on the ring under its own id.
func (h *house) Cast(cast map[string]widgets.Keyed, order ...string) *widgets.FocusOrder {
	h.T.Helper()
	ring := widgets.NewFocusOrder(h.Stage)
	column := container.NewVBox()
	for _, id := range order {
		ring.Add(id, cast[id])
		column.Add(cast[id])
	}
	h.Show(column, fyne.NewSize(400, 500))
	return ring
}

// At fails the test unless the keyboard is on the stop of an id.
func (h *house) At(ring *widgets.FocusOrder, id string) {
	h.T.Helper()
	if got := ring.Current(); got != id {
		h.T.Errorf("the keyboard is on %q, want it on %q", got, id)
	}
}

// equal fails the test unless got is want.
func equal[T comparable](t *testing.T, what string, got, want T) {
	t.Helper()
	if got != want {
		t.Errorf("%s: got %v, want %v", what, got, want)
	}
}

func exampleGrowers() []model.Option {
	return []model.Option{
		{Code: "11", Name: "Hollow Oak Farm", Detail: "one share"},
		{Code: "114", Name: "Éthier et fils", Detail: "two shares, 1/3 - 2/3"},
		{Code: "118", Name: "Long Acre Partners", Detail: "three shares"},
		{Code: "207", Name: "Millrace Farm", Detail: "one share"},
	}
}

func exampleTable() *widgets.Table {
	t := widgets.NewTable([]model.Column{
		{Title: "Ticket", Width: 6, Figures: true},
		{Title: "Grower", Width: 16, Grow: true},
		{Title: "Net lb", Width: 8, Figures: true},
		{Title: "State", Width: 12, State: true},
	})
	t.SetRows([]model.Row{
		{Key: "1040", Cells: []string{"1040", "Millrace Farm", "30,220", "issued"}, State: model.OK},
		{Key: "1041", Cells: []string{"1041", "Long Acre Partners", "9,880", "void"}, State: model.Stop},
		{Key: "1042", Cells: []string{"1042", "Hollow Oak Farm", "28,180", "tare due"}, State: model.Warn},
		{Key: "1043", Cells: []string{"1043", "Éthier et fils", "28,000", "on the scale"}, State: model.Wait},
	})
	t.SetChosen("1042")
	return t
}

func codes(options []model.Option) string {
	var all []string
	for _, o := range options {
		all = append(all, o.Code)
	}
	return strings.Join(all, " ")
}

func lettersIn(o fyne.CanvasObject) []*canvas.Text {
	var found []*canvas.Text
	switch each := o.(type) {
	case *canvas.Text:
		return []*canvas.Text{each}
	case fyne.Widget:
		for _, child := range test.WidgetRenderer(each).Objects() {
			found = append(found, lettersIn(child)...)
		}
	case *fyne.Container:
		for _, child := range each.Objects {
			found = append(found, lettersIn(child)...)
		}
	}
	return found
}

// textsOf lists every text a widget draws, in drawing order.
func textsOf(o fyne.CanvasObject) []string {
	var texts []string
	for _, t := range lettersIn(o) {
		texts = append(texts, t.Text)
	}
	return texts
}

func texts(o fyne.CanvasObject) string { return strings.Join(textsOf(o), "|") }

// deeds is a small table that writes down what ran and what was refused.
type deeds struct {
	ran, refused []string
	open         bool // whether settling makes sense
}

// blocks finds the rectangles of a colour.
func blocks(objects []fyne.CanvasObject, name fyne.ThemeColorName) []*canvas.Rectangle {
	var found []*canvas.Rectangle
	for _, o := range objects {
		if r, ok := o.(*canvas.Rectangle); ok && r.FillColor == apptheme.LightPalette[name] {
			found = append(found, r)
		}
	}
	return found
}

// drawnAt draws a widget at a size and gives what it drew.
func drawnAt(w fyne.Widget, size fyne.Size) []fyne.CanvasObject {
	r := test.WidgetRenderer(w)
	w.Resize(size)
	r.Layout(size)
	return r.Objects()
}

func nothing() {}

func containerAt(o fyne.CanvasObject, at fyne.Position, size fyne.Size) fyne.CanvasObject {
	o.Move(at)
	o.Resize(size)
	return container.NewWithoutLayout(o)
}
