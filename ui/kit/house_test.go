package kit

import (
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/test"
)

// house is a window of a test: the kit's theme on a canvas of a fixed size.
type house struct {
	t        *testing.T
	window   fyne.Window
	stage    *Stage
	commands *Commands
}

// newHouse opens a window. One house stands at a time: the test driver takes
// the last window made for everybody's.
func newHouse(t *testing.T, list ...Command) *house {
	t.Helper()
	test.NewTempApp(t)
	test.ApplyTheme(t, NewTheme(false, TextOrdinary))
	commands, err := NewCommands(list...)
	if err != nil {
		t.Fatal(err)
	}
	w := test.NewWindow(nil)
	t.Cleanup(w.Close)
	w.SetPadded(false)
	return &house{t: t, window: w, stage: NewStage(w.Canvas(), commands), commands: commands}
}

// show puts content in the window at a size.
func (h *house) show(content fyne.CanvasObject, size fyne.Size) {
	h.window.SetContent(h.stage.Wrap(content))
	h.window.Resize(size)
}

// press and write act like a person at the keyboard.
func (h *house) press(keys ...fyne.KeyName) { h.stage.Press(keys...) }
func (h *house) write(letters string)       { h.stage.Write(letters) }

// cast shows some widgets in a column, each on the ring under its own id.
func (h *house) cast(widgets map[string]Keyed, order ...string) *Ring {
	h.t.Helper()
	ring := NewRing(h.stage)
	column := container.NewVBox()
	for _, id := range order {
		ring.Add(id, widgets[id])
		column.Add(widgets[id])
	}
	h.show(column, fyne.NewSize(400, 500))
	return ring
}

// at fails the test unless the keyboard is on the stop of an id.
func (h *house) at(ring *Ring, id string) {
	h.t.Helper()
	if got := ring.Current(); got != id {
		h.t.Errorf("the keyboard is on %q, want it on %q", got, id)
	}
}

// equal fails the test unless got is want.
func equal[T comparable](t *testing.T, what string, got, want T) {
	t.Helper()
	if got != want {
		t.Errorf("%s: got %v, want %v", what, got, want)
	}
}
