package gallery

import (
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	"tenthpoint/ui/widgets"
	"tenthpoint/ui/widgettest"
)

// house is a window of a test with its commands.
type house struct {
	T        *testing.T
	Window   fyne.Window
	UI       *widgets.UIContext
	Commands *widgets.Commands
}

// newHouse opens a window.
func newHouse(t *testing.T, list ...widgets.Command) *house {
	t.Helper()
	commands, err := widgets.NewCommands(widgets.EnglishWords(), list...)
	if err != nil {
		t.Fatal(err)
	}
	window := widgettest.Window(t)
	return &house{T: t, Window: window, UI: widgets.NewUIContext(window.Canvas(), commands, widgets.EnglishWords()), Commands: commands}
}

// Show puts content in the window at a size.
func (h *house) Show(content fyne.CanvasObject, size fyne.Size) {
	h.Window.SetContent(h.UI.Wrap(content))
	h.Window.Resize(size)
}

// Press and write act like a person at the keyboard.
func (h *house) Press(keys ...fyne.KeyName) { h.UI.Press(keys...) }
func (h *house) Write(letters string)       { h.UI.Write(letters) }

// Cast shows some widgets in a column, each on the ring under its own id.
func (h *house) Cast(cast map[string]widgets.Keyed, order ...string) *widgets.FocusOrder {
	h.T.Helper()
	ring := widgets.NewFocusOrder(h.UI)
	column := container.NewVBox()
	for _, id := range order {
		ring.Add(id, cast[id])
		column.Add(cast[id])
	}
	h.Show(column, fyne.NewSize(400, 500))
	return ring
}

// At fails the test unless the focus is on the stop of an id.
func (h *house) At(ring *widgets.FocusOrder, id string) {
	h.T.Helper()
	if got := ring.Current(); got != id {
		h.T.Errorf("the keyboard is on %q, want it on %q", got, id)
	}
}

func exampleTable() *widgets.Table {
	t := widgets.NewTable(widgettest.TicketColumns())
	t.SetRows(widgettest.TicketRows())
	t.SetChosen("1042")
	return t
}

func nothing() {}
