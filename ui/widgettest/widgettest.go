// Package widgettest has what tests of widgets share: a window in the program's theme, example
// data, and functions to inspect what a widget drew. It imports no widget, so that the tests inside
// a package of widgets can use it too.
package widgettest

import (
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/test"

	"tenthpoint/ui/apptheme"
	"tenthpoint/ui/model"
)

// Window opens a window in the light look. One is open at a time: the test driver
// takes the last window made for everybody's.
func Window(t *testing.T) fyne.Window {
	t.Helper()
	test.NewTempApp(t)
	test.ApplyTheme(t, apptheme.NewTheme(false, apptheme.TextOrdinary))
	w := test.NewWindow(nil)
	t.Cleanup(w.Close)
	w.SetPadded(false)
	return w
}

// Equal fails the test unless got is want.
func Equal[T comparable](t *testing.T, what string, got, want T) {
	t.Helper()
	if got != want {
		t.Errorf("%s: got %v, want %v", what, got, want)
	}
}

// Growers are options to find one of.
func Growers() []model.Option {
	return []model.Option{
		{Code: "11", Name: "Hollow Oak Farm", Detail: "one share"},
		{Code: "114", Name: "Éthier et fils", Detail: "two shares, 1/3 - 2/3"},
		{Code: "118", Name: "Long Acre Partners", Detail: "three shares"},
		{Code: "207", Name: "Millrace Farm", Detail: "one share"},
	}
}

// Codes are the codes of options, one after the other.
func Codes(options []model.Option) string {
	var all []string
	for _, o := range options {
		all = append(all, o.Code)
	}
	return strings.Join(all, " ")
}

// TicketColumns and TicketRows are a table of four tickets, each in another state.
func TicketColumns() []model.Column {
	return []model.Column{
		{Title: "Ticket", Width: 6, Figures: true},
		{Title: "Grower", Width: 16, Grow: true},
		{Title: "Net lb", Width: 8, Figures: true},
		{Title: "State", Width: 12, State: true},
	}
}

// TicketRows are the rows under [TicketColumns].
func TicketRows() []model.Row {
	return []model.Row{
		{Key: "1040", Cells: []string{"1040", "Millrace Farm", "30,220", "issued"}, State: model.OK},
		{Key: "1041", Cells: []string{"1041", "Long Acre Partners", "9,880", "void"}, State: model.Stop},
		{Key: "1042", Cells: []string{"1042", "Hollow Oak Farm", "28,180", "tare due"}, State: model.Warn},
		{Key: "1043", Cells: []string{"1043", "Éthier et fils", "28,000", "on the scale"}, State: model.Wait},
	}
}

// Letters finds every text that an object draws, in drawing order.
func Letters(o fyne.CanvasObject) []*canvas.Text {
	var found []*canvas.Text
	switch each := o.(type) {
	case *canvas.Text:
		return []*canvas.Text{each}
	case fyne.Widget:
		for _, child := range test.WidgetRenderer(each).Objects() {
			found = append(found, Letters(child)...)
		}
	case *fyne.Container:
		for _, child := range each.Objects {
			found = append(found, Letters(child)...)
		}
	}
	return found
}

// TextsOf lists every text an object draws, in drawing order.
func TextsOf(o fyne.CanvasObject) []string {
	var texts []string
	for _, t := range Letters(o) {
		texts = append(texts, t.Text)
	}
	return texts
}

// Texts are the texts an object draws, separated by strokes.
func Texts(o fyne.CanvasObject) string { return strings.Join(TextsOf(o), "|") }

// Blocks finds the rectangles of a colour of the light look.
func Blocks(objects []fyne.CanvasObject, name fyne.ThemeColorName) []*canvas.Rectangle {
	var found []*canvas.Rectangle
	for _, o := range objects {
		if r, ok := o.(*canvas.Rectangle); ok && r.FillColor == apptheme.LightPalette[name] {
			found = append(found, r)
		}
	}
	return found
}

// DrawnAt draws a widget at a size and returns its objects.
func DrawnAt(w fyne.Widget, size fyne.Size) []fyne.CanvasObject {
	r := test.WidgetRenderer(w)
	w.Resize(size)
	r.Layout(size)
	return r.Objects()
}

// At is a container with one object at a place.
func At(o fyne.CanvasObject, at fyne.Position, size fyne.Size) fyne.CanvasObject {
	o.Move(at)
	o.Resize(size)
	return container.NewWithoutLayout(o)
}
