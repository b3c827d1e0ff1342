package widgets

import (
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	"tenthpoint/ui/widgettest"
)

// house is a window of a test with its commands.
type house struct {
	T        *testing.T
	Window   fyne.Window
	UI       *UIContext
	Commands *Commands
}

// newHouse opens a window.
func newHouse(t *testing.T, list ...Command) *house {
	t.Helper()
	commands, err := NewCommands(EnglishWords(), list...)
	if err != nil {
		t.Fatal(err)
	}
	window := widgettest.Window(t)
	return &house{T: t, Window: window, UI: NewUIContext(window.Canvas(), commands, EnglishWords()), Commands: commands}
}

// Show puts content in the window at a size.
func (h *house) Show(content fyne.CanvasObject, size fyne.Size) {
	h.Window.SetContent(h.UI.Wrap(content))
	h.Window.Resize(size)
}

// Press and write act like a person at the keyboard.
func (h *house) Press(keys ...fyne.KeyName) { h.UI.Press(keys...) }
func (h *house) Write(letters string)       { h.UI.Write(letters) }

// Cast shows some widgets in a column, each in the focus order under its own id.
func (h *house) Cast(cast map[string]Keyed, ids ...string) *FocusOrder {
	h.T.Helper()
	order := NewFocusOrder(h.UI)
	column := container.NewVBox()
	for _, id := range ids {
		order.Add(id, cast[id])
		column.Add(cast[id])
	}
	h.Show(column, fyne.NewSize(400, 500))
	return order
}

// At fails the test unless the focus is on the stop of an id.
func (h *house) At(order *FocusOrder, id string) {
	h.T.Helper()
	if got := order.Current(); got != id {
		h.T.Errorf("the keyboard is on %q, want it on %q", got, id)
	}
}

func exampleTable() *Table {
	t := NewTable(widgettest.TicketColumns())
	t.SetRows(widgettest.TicketRows())
	t.SetChosen("1042")
	return t
}

// deeds is a small table that records what ran and what was refused.
type deeds struct {
	ran, refused []string
	open         bool // whether settling makes sense
}

func nothing() {}
