package widgets

import (
	"tenthpoint/ui/paint"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/widget"
)

// Reader lets long things be read with the keyboard: a slip, a working, the
// handbook. Arrows, PageUp, PageDown, Home and End move it. When all of it
// fits there is no bar and nothing moves.
type Reader struct {
	widget.BaseWidget
	focusStop
	Scroll *container.Scroll
	// Text returns what is read as text, to be copied; nil where it cannot be.
	Text    func() string
	focused bool
}

var (
	_ Keyed         = (*Reader)(nil)
	_ fyne.Tabbable = (*Reader)(nil)
)

// NewReader makes a reader for an object, which takes the reader's width.
func NewReader(content fyne.CanvasObject) *Reader {
	r := &Reader{Scroll: container.NewVScroll(content)}
	if says, speaks := content.(interface{ Text() string }); speaks {
		r.Text = says.Text
	}
	r.ExtendBaseWidget(r)
	return r
}

// SetContent shows another object, from its top.
func (r *Reader) SetContent(content fyne.CanvasObject) {
	r.Scroll.Content = content
	r.Scroll.ScrollToTop()
	r.Scroll.Refresh()
}

// Offset returns the scroll position, in Fyne's units.
func (r *Reader) Offset() float32 { return r.Scroll.Offset.Y }

// ToTop goes back to the beginning.
func (r *Reader) ToTop() { r.Scroll.ScrollToTop() }

// TypedKey: focus order and commands first, then the page moves.
func (r *Reader) TypedKey(ev *fyne.KeyEvent) {
	if r.offer(ev) {
		return
	}
	line := 2 * paint.PainterFor(r).LineHeight(cellLetters)
	page := r.Scroll.Size().Height - line
	switch ev.Name {
	case fyne.KeyUp:
		r.by(-line)
	case fyne.KeyDown:
		r.by(line)
	case fyne.KeyPageUp:
		r.by(-page)
	case fyne.KeyPageDown, fyne.KeySpace:
		r.by(page)
	case fyne.KeyHome:
		r.Scroll.ScrollToTop()
	case fyne.KeyEnd:
		r.Scroll.ScrollToBottom()
	}
}

func (r *Reader) by(distance float32) {
	r.Scroll.ScrollToOffset(r.Scroll.Offset.AddXY(0, distance))
}

// TypedShortcut copies what is read.
func (r *Reader) TypedShortcut(s fyne.Shortcut) {
	if one, copies := s.(*fyne.ShortcutCopy); copies && r.Text != nil {
		one.Clipboard.SetContent(r.Text())
	}
}

// TappedSecondary offers what can be done on the screen, and to copy the text.
func (r *Reader) TappedSecondary(ev *fyne.PointEvent) {
	if r.Text == nil {
		r.offerMenu(ev.AbsolutePosition)
		return
	}
	r.offerMenu(ev.AbsolutePosition, fyne.NewMenuItem(r.words().CopyText, func() {
		fyne.CurrentApp().Clipboard().SetContent(r.Text())
	}))
}

// TypedRune ignores letters.
func (r *Reader) TypedRune(letter rune) { r.scans(letter) }

// FocusGained draws the ring.
func (r *Reader) FocusGained() { r.focused = true; r.tookFocus(); r.Refresh() }

// FocusLost takes the ring away.
func (r *Reader) FocusLost() { r.focused = false; r.Refresh() }

// CreateRenderer draws the reader.
func (r *Reader) CreateRenderer() fyne.WidgetRenderer { return paint.NewDrawing(r) }

func (r *Reader) LeastSize() fyne.Size { return r.Scroll.MinSize() }

func (r *Reader) Paint(size fyne.Size) []fyne.CanvasObject {
	r.Scroll.Resize(size)
	objects := []fyne.CanvasObject{r.Scroll}
	if r.focused {
		objects = append(objects, paint.PainterFor(r).FocusRing(size))
	}
	return objects
}
