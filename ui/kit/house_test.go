package kit

import (
	"testing"

	"fyne.io/fyne/v2"
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

// press sends keys to whatever has the keyboard, as the driver would.
func (h *house) press(keys ...fyne.KeyName) {
	h.t.Helper()
	for _, key := range keys {
		focused := h.window.Canvas().Focused()
		if focused == nil {
			h.window.Canvas().OnTypedKey()(&fyne.KeyEvent{Name: key})
			continue
		}
		focused.TypedKey(&fyne.KeyEvent{Name: key})
	}
}

// write types letters into whatever has the keyboard.
func (h *house) write(letters string) {
	h.t.Helper()
	for _, letter := range letters {
		h.window.Canvas().Focused().TypedRune(letter)
	}
}
