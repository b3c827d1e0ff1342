package kit

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"
)

// TypedKey: ring and commands first, then the row moves or opens.
func (t *Table) TypedKey(ev *fyne.KeyEvent) {
	if t.offer(ev) {
		return
	}
	switch ev.Name {
	case fyne.KeyUp:
		t.choose(t.chosen - 1)
	case fyne.KeyDown:
		t.choose(t.chosen + 1)
	case fyne.KeyHome:
		t.choose(0)
	case fyne.KeyEnd:
		t.choose(len(t.rows) - 1)
	case fyne.KeyPageUp:
		t.choose(t.chosen - t.pageRows())
	case fyne.KeyPageDown:
		t.choose(t.chosen + t.pageRows())
	case fyne.KeyReturn, fyne.KeyEnter:
		t.openRow()
	}
}

// pageRows is how many rows show at once, less one that stays in sight.
func (t *Table) pageRows() int {
	return max(1, int(t.Size().Height/t.rowHeight())-2)
}

// TypedRune hands letters to a view that filters.
func (t *Table) TypedRune(letter rune) {
	if t.OnLetter != nil {
		t.OnLetter(letter)
	}
}

// FocusGained marks the row that has the keyboard, the first if there was none.
// Fyne's own mark sits on a cell, so its FocusGained is not called.
func (t *Table) FocusGained() {
	t.focused = true
	t.tookFocus()
	if t.chosen < 0 {
		t.choose(0)
	}
	t.refreshChosen()
}

// FocusLost makes the mark quiet.
func (t *Table) FocusLost() {
	t.focused = false
	t.refreshChosen()
}

func (t *Table) refreshChosen() {
	if t.chosen >= 0 {
		t.move(t.chosen)
	}
}

// Fyne tints the cell under the pointer and lets columns be dragged. A row is
// not a cell, and widths are ours, so the pointer is not listened to.

// MouseIn does nothing.
func (t *Table) MouseIn(*desktop.MouseEvent) {}

// MouseMoved does nothing.
func (t *Table) MouseMoved(*desktop.MouseEvent) {}

// MouseOut does nothing.
func (t *Table) MouseOut() {}

// MouseDown does nothing.
func (t *Table) MouseDown(*desktop.MouseEvent) {}

// Cursor is the ordinary pointer.
func (t *Table) Cursor() desktop.Cursor { return desktop.DefaultCursor }
