package widgets

import (
	"tenthpoint/ui/apptheme"
	"tenthpoint/ui/paint"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"
)

// Checkbox is a check box. Space toggles it; Enter moves on.
type Checkbox struct {
	widget.DisableableWidget
	focusStop

	Text     string
	OnToggle func(on bool)               // the person changed it
	OnCommit func(on bool) (next string) // Enter: which stop is next, "" for the order of the form

	on, focused bool
}

var (
	_ Keyed         = (*Checkbox)(nil)
	_ fyne.Tappable = (*Checkbox)(nil)
	_ fyne.Tabbable = (*Checkbox)(nil)
)

// NewCheckbox makes a box that is not ticked.
func NewCheckbox(text string) *Checkbox {
	t := &Checkbox{Text: text}
	t.ExtendBaseWidget(t)
	return t
}

// On reports whether the box is ticked.
func (t *Checkbox) On() bool { return t.on }

// SetOn shows the presenter's value. It does not call OnToggle.
func (t *Checkbox) SetOn(on bool) {
	if t.on != on {
		t.on = on
		t.Refresh()
	}
}

func (t *Checkbox) toggle() {
	if t.Disabled() {
		return
	}
	t.SetOn(!t.on)
	if t.OnToggle != nil {
		t.OnToggle(t.on)
	}
}

// Tapped changes the box.
func (t *Checkbox) Tapped(*fyne.PointEvent) { t.toggle() }

// TypedKey offers a key to focus order and commands first; then Enter moves on.
func (t *Checkbox) TypedKey(ev *fyne.KeyEvent) {
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
func (t *Checkbox) TypedRune(letter rune) { t.scans(letter) }

// FocusGained draws the ring.
func (t *Checkbox) FocusGained() { t.focused = true; t.tookFocus(); t.Refresh() }

// FocusLost takes the ring away.
func (t *Checkbox) FocusLost() { t.focused = false; t.Refresh() }

// CreateRenderer draws the box.
func (t *Checkbox) CreateRenderer() fyne.WidgetRenderer { return paint.NewDrawing(t) }

func (t *Checkbox) textStyle() paint.TextStyle {
	l := paint.TextStyle{Size: theme.SizeNameText, Color: theme.ColorNameForeground}
	if t.Disabled() {
		l.Color = theme.ColorNameDisabled
	}
	return l
}

func (t *Checkbox) LeastSize() fyne.Size {
	p := paint.PainterFor(t)
	text := p.Measure(t.Text, t.textStyle())
	return fyne.NewSize(p.Size(theme.SizeNameInlineIcon)+text.Width+3*p.Inner(), text.Height+2*p.Inner())
}

func (t *Checkbox) Paint(size fyne.Size) []fyne.CanvasObject {
	p := paint.PainterFor(t)
	l := t.textStyle()
	picture := apptheme.IconUnticked
	if t.on {
		picture = apptheme.IconTicked
	}
	side := p.Size(theme.SizeNameInlineIcon)
	objects := []fyne.CanvasObject{
		p.Icon(theme.NewColoredResource(picture, l.Color), fyne.NewPos(p.Inner(), (size.Height-side)/2), side),
		p.Write(t.Text, l, fyne.NewPos(side+2*p.Inner(), (size.Height-p.LineHeight(l))/2)),
	}
	if t.focused && !t.Disabled() {
		objects = append(objects, p.FocusRing(size))
	}
	return objects
}
