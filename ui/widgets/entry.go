package widgets

import (
	"fmt"
	"strings"
	"unicode"
	"unicode/utf8"

	"tenthpoint/ui/paint"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/widget"
)

// FieldEntry is a single-line text field.
//
// Return and the keypad's Enter commit the text and move the focus on. Gaining focus selects all of
// it, so that typing replaces. Whatever is typed or pasted is accepted and handed to OnEdit, for
// the presenter to read and answer in words beside the field; the exceptions are a letter in a
// field of DigitsOnly and what is longer than a field can be.
type FieldEntry struct {
	widget.Entry
	focusStop

	OnEdit   func(text string)               // the person changed the text
	OnCommit func(text string) (next string) // Enter: which stop is next, "" for the order of the form
	OnLeave  func(text string)               // the keyboard went elsewhere
	OnRefuse func(why string)                // something typed or pasted was kept out
	OnUp     func()                          // arrow up; nil leaves it to the cursor
	OnDown   func()                          // arrow down

	DigitsOnly bool     // letters are kept out; figures, signs and points are not
	Words      []string // taken in place of digits, each by its first letter
	Figures    bool     // right-aligned, as figures are
	Most       int      // the longest text, in letters; zero takes that of its kind

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

// NewFigureEntry makes an entry for a weight, a percent or an amount: it keeps letters out and is
// right-aligned.
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

// SetText shows the presenter's text. It never calls OnEdit, and leaves the cursor alone when
// nothing changes. Selected text stays selected, so that the next letter replaces it.
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

// AcceptsTab keeps Tab for the focus order.
func (e *FieldEntry) AcceptsTab() bool { return e.focusStop.AcceptsTab() }

// TypedKey: focus order and commands first, then Enter, the arrows, and the cursor.
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
	case ev.Name == fyne.KeyTab: // no order to walk and nothing to indent
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

// TypedRune takes a letter, unless the field is for figures or full.
func (e *FieldEntry) TypedRune(r rune) {
	switch {
	case e.scans(r):
	case e.DigitsOnly && unicode.IsLetter(r):
		e.typeWord(r)
	case e.room() < 1:
		e.refuse(e.tooLong())
	default:
		e.Entry.TypedRune(r)
	}
}

// typeWord puts the word that begins with a letter in the place of a figure; other letters are kept
// out. The word stays selected, so that a figure replaces it.
func (e *FieldEntry) typeWord(letter rune) {
	for _, word := range e.Words {
		if strings.HasPrefix(word, string(unicode.ToLower(letter))) {
			e.SelectAll()
			for _, r := range word {
				e.Entry.TypedRune(r)
			}
			e.SelectAll()
			return
		}
	}
	e.refuse(e.words().NoLetters)
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

// CreateRenderer draws the entry.
func (e *FieldEntry) CreateRenderer() fyne.WidgetRenderer {
	return newFigureRenderer(e, e.Entry.CreateRenderer())
}

// figureRenderer draws an entry as Fyne does and then, for figures, aligns the text right by moving
// the scrolling part. Fyne's entry has no alignment, and a column of weights that is aligned left
// cannot be compared at a glance.
type figureRenderer struct {
	fyne.WidgetRenderer
	entry *FieldEntry
	ring  fyne.CanvasObject // while the entry has the focus
	size  fyne.Size         // the ring is for
}

func newFigureRenderer(e *FieldEntry, inside fyne.WidgetRenderer) fyne.WidgetRenderer {
	return &figureRenderer{WidgetRenderer: inside, entry: e}
}

func (r *figureRenderer) Layout(size fyne.Size) {
	r.WidgetRenderer.Layout(size)
	r.align(size)
	r.outline(size)
}

func (r *figureRenderer) Refresh() {
	r.WidgetRenderer.Refresh()
	r.align(r.entry.Size())
	r.ring = nil // colors may have changed
	r.outline(r.entry.Size())
}

// outline draws the ring round the entry that has the focus. Fyne only changes the color of the
// frame, which sunlight swallows. A ring that is there stays: the window lays an entry out at every
// frame in which it finds a new one.
func (r *figureRenderer) outline(size fyne.Size) {
	switch {
	case !r.entry.focused:
		r.ring = nil
	case r.ring == nil || r.size != size:
		r.ring, r.size = paint.PainterFor(r.entry).FocusRing(size), size
	}
}

func (r *figureRenderer) Objects() []fyne.CanvasObject {
	objects := r.WidgetRenderer.Objects()
	if r.ring == nil {
		return objects
	}
	return append(objects[:len(objects):len(objects)], r.ring)
}

func (r *figureRenderer) align(size fyne.Size) {
	letters := lettersOf(r.WidgetRenderer)
	if letters == nil {
		return
	}
	border := (size.Height - letters.Size().Height) / 2
	room := size.Width - letterInset(r.entry)
	width := letters.Content.MinSize().Width
	if !r.entry.Figures || width > room {
		width = room
	}
	letters.Resize(fyne.NewSize(width, letters.Size().Height))
	letters.Move(fyne.NewPos(room-width, border))
}

// lettersOf finds the scrolling part among what an entry draws.
func lettersOf(r fyne.WidgetRenderer) *container.Scroll {
	for _, o := range r.Objects() {
		if s, ok := o.(*container.Scroll); ok {
			return s
		}
	}
	return nil
}

// letterInset is the room at the right that an action item takes.
func letterInset(e *FieldEntry) float32 {
	if e.ActionItem == nil {
		return 0
	}
	return e.ActionItem.MinSize().Width
}

// indent returns the distance of the text from the left edge.
func (e *FieldEntry) indent() float32 {
	if !e.Figures {
		return 0
	}
	p := paint.PainterFor(e)
	width := fyne.MeasureText(e.Text, p.Size("text"), e.TextStyle).Width + 2*p.Inner()
	return max(0, e.Size().Width-letterInset(e)-width)
}

// The maximum lengths of an entry's text, in letters, by default. An entry lays out all of its text
// at every keystroke: a megabyte pasted into one freezes the window for a minute.
const (
	mostWords   = 200
	mostName    = 80 // to find one of a list by
	mostFigures = 24
)

// most is the longest text that the entry takes, in letters.
func (e *FieldEntry) most() int {
	switch {
	case e.Most > 0:
		return e.Most
	case e.DigitsOnly:
		return mostFigures
	}
	return mostWords
}

// room returns how many more characters fit; selected ones will be replaced.
func (e *FieldEntry) room() int {
	return e.most() - utf8.RuneCountInString(e.Text) + utf8.RuneCountInString(e.SelectedText())
}

// body is the entry that a place to type is made of.
func (e *FieldEntry) body() *FieldEntry { return e }

// refuse reports why typed or pasted text was rejected.
func (e *FieldEntry) refuse(why string) {
	if e.OnRefuse != nil {
		e.OnRefuse(why)
	}
}

// tooLong says how long a text may be.
func (e *FieldEntry) tooLong() string { return fmt.Sprintf(e.words().TooLong, e.most()) }

// TypedShortcut is that of the entry, with a paste that is cut to the room there is.
func (e *FieldEntry) TypedShortcut(s fyne.Shortcut) {
	paste, ok := s.(*fyne.ShortcutPaste)
	if !ok {
		e.Entry.TypedShortcut(s)
		return
	}
	text, whole := oneLine(paste.Clipboard.Content(), e.room())
	e.Entry.TypedShortcut(&fyne.ShortcutPaste{Clipboard: pasted(text)})
	if !whole {
		e.refuse(e.tooLong())
	}
}

// oneLine is the beginning of a text with at most so many letters, in which tabs and
// line ends are spaces; whole reports whether that is all of it.
func oneLine(text string, most int) (cut string, whole bool) {
	text = strings.TrimFunc(text, unicode.IsControl)
	var b strings.Builder
	letters := 0
	for _, r := range text {
		if letters >= most {
			return b.String(), false
		}
		if unicode.IsControl(r) {
			r = ' '
		}
		b.WriteRune(r)
		letters++
	}
	return b.String(), true
}

// pasted is a clipboard that holds one text.
type pasted string

func (p pasted) Content() string   { return string(p) }
func (p pasted) SetContent(string) {}
