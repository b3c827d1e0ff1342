package kit

import (
	"unicode"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/widget"
)

// FieldEntry is one line for a person to type on.
//
// Return and the keypad's Enter commit what stands there and walk on. Arriving
// selects all of it, so that typing replaces. Whatever is typed or pasted is
// accepted and handed to OnEdit, for the presenter to read and answer in words
// beside the field; the one exception is a letter in a field of DigitsOnly.
type FieldEntry struct {
	widget.Entry
	seat

	OnEdit   func(text string)               // the person changed the text
	OnCommit func(text string) (next string) // Enter: which stop is next, "" for the ring's order
	OnLeave  func(text string)               // the keyboard went elsewhere
	OnRefuse func(letter rune)               // a letter was kept out of a DigitsOnly field
	OnUp     func()                          // arrow up; nil leaves it to the cursor
	OnDown   func()                          // arrow down

	DigitsOnly bool // letters are kept out; figures, signs and points are not
	Figures    bool // text stands at the right, figures under figures

	showing bool // the presenter is writing, not the person
	focused bool
}

var (
	_ Keyed         = (*FieldEntry)(nil)
	_ fyne.Tabbable = (*FieldEntry)(nil)
)

// NewFieldEntry makes an entry for words.
func NewFieldEntry() *FieldEntry {
	e := &FieldEntry{}
	e.prepare(e)
	return e
}

// NewFigureEntry makes an entry for a weight, a percent or an amount: letters
// are kept out and the text stands at the right.
func NewFigureEntry() *FieldEntry {
	e := NewFieldEntry()
	e.DigitsOnly, e.Figures = true, true
	return e
}

// prepare sets the entry up as the body of a widget, itself or one made from it.
func (e *FieldEntry) prepare(whole fyne.Widget) {
	e.Wrapping = fyne.TextWrap(fyne.TextTruncateClip) // one line that scrolls sideways
	e.ExtendBaseWidget(whole)
	e.OnChanged = func(text string) {
		if !e.showing && e.OnEdit != nil {
			e.OnEdit(text)
		}
	}
}

// SetText shows what the presenter says. It never calls OnEdit, and leaves the
// cursor alone when nothing changes. A text that was marked stays marked, so that
// the next letter replaces it and no letter after that one.
func (e *FieldEntry) SetText(text string) {
	if text == e.Text {
		return
	}
	was, marked := e.showing, e.SelectedText() != ""
	e.showing = true
	if marked { // the mark would outlive its text and take the first letter typed
		e.Entry.TypedKey(&fyne.KeyEvent{Name: fyne.KeyEnd})
	}
	e.Entry.SetText(text)
	e.showing = was
	if marked {
		e.SelectAll()
	}
}

// SelectAll marks the whole text, so that the next letter replaces it.
func (e *FieldEntry) SelectAll() { e.TypedShortcut(&fyne.ShortcutSelectAll{}) }

// AcceptsTab keeps Tab for the ring.
func (e *FieldEntry) AcceptsTab() bool { return e.seat.AcceptsTab() }

// TypedKey: ring and commands first, then Enter, the arrows, and the cursor.
func (e *FieldEntry) TypedKey(ev *fyne.KeyEvent) {
	if e.offer(ev) {
		return
	}
	switch {
	case ev.Name == fyne.KeyReturn || ev.Name == fyne.KeyEnter:
		e.Commit()
	case ev.Name == fyne.KeyUp && e.OnUp != nil:
		e.OnUp()
	case ev.Name == fyne.KeyDown && e.OnDown != nil:
		e.OnDown()
	case ev.Name == fyne.KeyTab: // no ring to walk and nothing to indent
	default:
		e.Entry.TypedKey(ev)
	}
}

// Commit does what Enter does.
func (e *FieldEntry) Commit() {
	if e.Disabled() {
		return
	}
	next := ""
	if e.OnCommit != nil {
		next = e.OnCommit(e.Text)
	}
	e.advance(next)
}

// TypedRune takes a letter, unless the field is for figures.
func (e *FieldEntry) TypedRune(r rune) {
	if e.DigitsOnly && unicode.IsLetter(r) {
		if e.OnRefuse != nil {
			e.OnRefuse(r)
		}
		return
	}
	e.Entry.TypedRune(r)
}

// FocusGained selects all.
func (e *FieldEntry) FocusGained() {
	e.focused = true
	e.Entry.FocusGained()
	e.tookFocus()
	e.SelectAll()
}

// FocusLost reports that the person went elsewhere.
func (e *FieldEntry) FocusLost() {
	if !e.focused { // leaving may open a box, which takes the keyboard again
		return
	}
	e.focused = false
	e.Entry.FocusLost()
	if e.OnLeave != nil {
		e.OnLeave(e.Text)
	}
}

// MouseDown places the cursor where the letters are drawn.
func (e *FieldEntry) MouseDown(ev *desktop.MouseEvent) {
	moved := *ev
	moved.Position = moved.Position.SubtractXY(e.indent(), 0)
	e.Entry.MouseDown(&moved)
}

// Dragged selects where the letters are drawn.
func (e *FieldEntry) Dragged(ev *fyne.DragEvent) {
	moved := *ev
	moved.Position = moved.Position.SubtractXY(e.indent(), 0)
	e.Entry.Dragged(&moved)
}

// CreateRenderer is Fyne's way to draw the entry.
func (e *FieldEntry) CreateRenderer() fyne.WidgetRenderer {
	return newFigureRenderer(e, e.Entry.CreateRenderer())
}
