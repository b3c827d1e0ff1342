package kit

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"
)

// Tick is a box to tick. Space changes it; Enter walks on.
type Tick struct {
	widget.DisableableWidget
	seat

	Text     string
	OnToggle func(on bool)               // the person changed it
	OnCommit func(on bool) (next string) // Enter: which stop is next, "" for the ring's order

	on, focused bool
}

var (
	_ Keyed         = (*Tick)(nil)
	_ fyne.Tappable = (*Tick)(nil)
	_ fyne.Tabbable = (*Tick)(nil)
)

// NewTick makes a box that is not ticked.
func NewTick(text string) *Tick {
	t := &Tick{Text: text}
	t.ExtendBaseWidget(t)
	return t
}

// On tells whether the box is ticked.
func (t *Tick) On() bool { return t.on }

// SetOn shows what the presenter says. It does not call OnToggle.
func (t *Tick) SetOn(on bool) {
	if t.on != on {
		t.on = on
		t.Refresh()
	}
}

func (t *Tick) toggle() {
	if t.Disabled() {
		return
	}
	t.SetOn(!t.on)
	if t.OnToggle != nil {
		t.OnToggle(t.on)
	}
}

// Tapped changes the box.
func (t *Tick) Tapped(*fyne.PointEvent) { t.toggle() }

// TypedKey: ring and commands first, then Enter walks on.
func (t *Tick) TypedKey(ev *fyne.KeyEvent) {
	if t.offer(ev) {
		return
	}
	switch ev.Name {
	case fyne.KeyReturn, fyne.KeyEnter:
		next := ""
		if t.OnCommit != nil {
			next = t.OnCommit(t.on)
		}
		t.advance(next)
	case fyne.KeySpace:
		t.toggle()
	}
}

// TypedRune ignores letters. Space arrives as a key.
func (t *Tick) TypedRune(rune) {}

// FocusGained draws the ring.
func (t *Tick) FocusGained() { t.focused = true; t.tookFocus(); t.Refresh() }

// FocusLost takes the ring away.
func (t *Tick) FocusLost() { t.focused = false; t.Refresh() }

// CreateRenderer is Fyne's way to draw the box.
func (t *Tick) CreateRenderer() fyne.WidgetRenderer { return newDrawing(t) }

func (t *Tick) lettering() lettering {
	l := lettering{size: theme.SizeNameText, color: theme.ColorNameForeground}
	if t.Disabled() {
		l.color = theme.ColorNameDisabled
	}
	return l
}

func (t *Tick) least() fyne.Size {
	p := penFor(t)
	text := p.measure(t.Text, t.lettering())
	return fyne.NewSize(p.size(theme.SizeNameInlineIcon)+text.Width+3*p.inner(), text.Height+2*p.inner())
}

func (t *Tick) draw(size fyne.Size) []fyne.CanvasObject {
	p := penFor(t)
	l := t.lettering()
	picture := iconUnticked
	if t.on {
		picture = iconTicked
	}
	side := p.size(theme.SizeNameInlineIcon)
	objects := []fyne.CanvasObject{
		p.icon(theme.NewColoredResource(picture, l.color), fyne.NewPos(p.inner(), (size.Height-side)/2), side),
		p.write(t.Text, l, fyne.NewPos(side+2*p.inner(), (size.Height-p.lineHeight(l))/2)),
	}
	if t.focused && !t.Disabled() {
		objects = append(objects, p.focusRing(size))
	}
	return objects
}
