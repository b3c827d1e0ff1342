package widgets

import (
	"tenthpoint/ui/paint"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/driver/desktop"
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

// Choices is a picture with parts that can be chosen, side by side.
type Choices interface {
	fyne.CanvasObject
	Count() int
	Chosen() int
	// Choose marks a part; below zero it marks none.
	Choose(n int)
	// At is the part at a place, or below zero.
	At(place fyne.Position) int
}

// Chooser lets the parts of a picture be chosen: by arrows, or by pointing at them. Enter and a
// click open one.
type Chooser struct {
	widget.BaseWidget
	focusStop

	// OnChoose is called when another part is chosen, OnOpen when it is to be opened.
	OnChoose, OnOpen func(n int)
	// Name is what the picture is called, Says what it shows in a sentence.
	Name, Says string

	picture Choices
	focused bool
}

var (
	_ Keyed             = (*Chooser)(nil)
	_ fyne.Tabbable     = (*Chooser)(nil)
	_ fyne.Tappable     = (*Chooser)(nil)
	_ desktop.Hoverable = (*Chooser)(nil)
)

// NewChooser makes a chooser around a picture.
func NewChooser(picture Choices) *Chooser {
	c := &Chooser{picture: picture}
	c.ExtendBaseWidget(c)
	return c
}

// TypedKey moves along the parts. Focus order and commands come first.
func (c *Chooser) TypedKey(ev *fyne.KeyEvent) {
	const page = 7
	last := c.picture.Count() - 1
	if last < 0 {
		c.offer(ev)
		return
	}
	switch ev.Name {
	case fyne.KeyLeft:
		c.choose(max(0, c.picture.Chosen()-1))
	case fyne.KeyRight:
		c.choose(min(last, c.picture.Chosen()+1))
	case fyne.KeyPageUp:
		c.choose(max(0, c.picture.Chosen()-page))
	case fyne.KeyPageDown:
		c.choose(min(last, c.picture.Chosen()+page))
	case fyne.KeyHome:
		c.choose(0)
	case fyne.KeyEnd:
		c.choose(last)
	case fyne.KeyReturn, fyne.KeyEnter:
		c.open(c.picture.Chosen())
	default:
		c.offer(ev)
	}
}

func (c *Chooser) choose(n int) {
	if n == c.picture.Chosen() {
		return
	}
	c.picture.Choose(n)
	if c.OnChoose != nil {
		c.OnChoose(n)
	}
}

func (c *Chooser) open(n int) {
	if n >= 0 && c.OnOpen != nil {
		c.OnOpen(n)
	}
}

// Tapped opens the part that was clicked on.
func (c *Chooser) Tapped(ev *fyne.PointEvent) {
	n := c.picture.At(ev.Position)
	c.choose(n)
	c.open(n)
}

// MouseIn and MouseMoved choose the part under the pointer; MouseOut chooses none, unless the
// keyboard is here.
func (c *Chooser) MouseIn(ev *desktop.MouseEvent)    { c.MouseMoved(ev) }
func (c *Chooser) MouseMoved(ev *desktop.MouseEvent) { c.choose(c.picture.At(ev.Position)) }
func (c *Chooser) MouseOut() {
	if !c.focused {
		c.choose(-1)
	}
}

// TappedSecondary offers what can be done on the screen.
func (c *Chooser) TappedSecondary(ev *fyne.PointEvent) { c.offerMenu(ev.AbsolutePosition) }

// TypedRune ignores letters.
func (c *Chooser) TypedRune(rune) {}

// FocusGained draws the ring.
func (c *Chooser) FocusGained() { c.focused = true; c.tookFocus(); c.Refresh() }

// FocusLost takes the ring away, and with it what was chosen by keys.
func (c *Chooser) FocusLost() {
	c.focused = false
	c.choose(-1)
	c.Refresh()
}

// CreateRenderer draws the chooser.
func (c *Chooser) CreateRenderer() fyne.WidgetRenderer { return paint.NewDrawing(c) }

// LeastSize is that of the picture.
func (c *Chooser) LeastSize() fyne.Size { return c.picture.MinSize() }

// Paint draws the picture, and a ring around it while it has the keyboard.
func (c *Chooser) Paint(size fyne.Size) []fyne.CanvasObject {
	c.picture.Resize(size)
	objects := []fyne.CanvasObject{c.picture}
	if c.focused {
		objects = append(objects, paint.PainterFor(c).FocusRing(size))
	}
	return objects
}
