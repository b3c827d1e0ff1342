package kit

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/widget"
)

// Reader lets long things be read with the keyboard: a slip, a working, the
// handbook. Arrows, PageUp, PageDown, Home and End move it. When all of it
// fits there is no bar and nothing moves.
type Reader struct {
	widget.BaseWidget
	seat
	scroll  *container.Scroll
	focused bool
}

var (
	_ Keyed         = (*Reader)(nil)
	_ fyne.Tabbable = (*Reader)(nil)
)

// NewReader makes a reader for an object, which takes the reader's width.
func NewReader(content fyne.CanvasObject) *Reader {
	r := &Reader{scroll: container.NewVScroll(content)}
	r.ExtendBaseWidget(r)
	return r
}

// SetContent shows another object, from its top.
func (r *Reader) SetContent(content fyne.CanvasObject) {
	r.scroll.Content = content
	r.scroll.ScrollToTop()
	r.scroll.Refresh()
}

// Offset is how far down the reader stands, in Fyne's units.
func (r *Reader) Offset() float32 { return r.scroll.Offset.Y }

// ToTop goes back to the beginning.
func (r *Reader) ToTop() { r.scroll.ScrollToTop() }

// TypedKey: ring and commands first, then the page moves.
func (r *Reader) TypedKey(ev *fyne.KeyEvent) {
	if r.offer(ev) {
		return
	}
	line := 2 * penFor(r).lineHeight(cellLetters)
	page := r.scroll.Size().Height - line
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
		r.scroll.ScrollToTop()
	case fyne.KeyEnd:
		r.scroll.ScrollToBottom()
	}
}

func (r *Reader) by(distance float32) {
	r.scroll.ScrollToOffset(r.scroll.Offset.AddXY(0, distance))
}

// TypedRune ignores letters.
func (r *Reader) TypedRune(rune) {}

// FocusGained draws the ring.
func (r *Reader) FocusGained() { r.focused = true; r.tookFocus(); r.Refresh() }

// FocusLost takes the ring away.
func (r *Reader) FocusLost() { r.focused = false; r.Refresh() }

// CreateRenderer is Fyne's way to draw the reader.
func (r *Reader) CreateRenderer() fyne.WidgetRenderer { return newDrawing(r) }

func (r *Reader) least() fyne.Size { return r.scroll.MinSize() }

func (r *Reader) draw(size fyne.Size) []fyne.CanvasObject {
	r.scroll.Resize(size)
	objects := []fyne.CanvasObject{r.scroll}
	if r.focused {
		objects = append(objects, penFor(r).focusRing(size))
	}
	return objects
}
