package widgets

import (
	"tenthpoint/ui/apptheme"
	"tenthpoint/ui/paint"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"
)

// Button is pressed by Enter, Space or a click. A click does not move the focus from the field the
// clerk is in.
type Button struct {
	widget.DisableableWidget
	focusStop

	Text       string
	Key        string // the key that does the same, shown small
	Icon       fyne.Resource
	Importance widget.Importance // High for the way on, Danger for what cannot be undone
	Current    bool              // marks where one is, in a row of screens
	Destroys   bool              // leads to something being taken away: its words are red
	OnTapped   func()

	focused, hovered bool
}

var (
	_ Keyed             = (*Button)(nil)
	_ fyne.Tappable     = (*Button)(nil)
	_ fyne.Tabbable     = (*Button)(nil)
	_ desktop.Hoverable = (*Button)(nil)
)

// NewButton makes a button that does something when pressed.
func NewButton(text string, do func()) *Button {
	b := &Button{Text: text, OnTapped: do}
	b.ExtendBaseWidget(b)
	return b
}

// SetText changes the label of the button.
func (b *Button) SetText(text string) {
	if b.Text != text {
		b.Text = text
		b.Refresh()
	}
}

// SetCurrent marks or unmarks the button as the place one is at.
func (b *Button) SetCurrent(on bool) {
	if b.Current != on {
		b.Current = on
		b.Refresh()
	}
}

func (b *Button) setEnabled(on bool) {
	if on == b.Disabled() {
		if on {
			b.Enable()
		} else {
			b.Disable()
		}
	}
}

// Press runs the button's command, unless it is disabled.
func (b *Button) Press() {
	if !b.Disabled() && b.OnTapped != nil {
		b.OnTapped()
	}
}

// Tapped presses the button.
func (b *Button) Tapped(*fyne.PointEvent) { b.Press() }

// TypedKey offers a key to the focus order and the commands first; then Enter and Space press the button,
// and the arrows move to the neighbour.
func (b *Button) TypedKey(ev *fyne.KeyEvent) {
	if b.offer(ev) {
		return
	}
	switch ev.Name {
	case fyne.KeyReturn, fyne.KeyEnter, fyne.KeySpace:
		b.Press()
	case fyne.KeyLeft, fyne.KeyUp:
		if b.order != nil {
			b.order.Prev(b.id)
		}
	case fyne.KeyRight, fyne.KeyDown:
		if b.order != nil {
			b.order.Next(b.id)
		}
	}
}

// TypedRune ignores letters.
func (b *Button) TypedRune(letter rune) { b.scans(letter) }

// FocusGained draws the ring around the button.
func (b *Button) FocusGained() { b.focused = true; b.tookFocus(); b.Refresh() }

// FocusLost takes the ring away.
func (b *Button) FocusLost() { b.focused = false; b.Refresh() }

// MouseIn tints the button.
func (b *Button) MouseIn(*desktop.MouseEvent) { b.hovered = true; b.Refresh() }

// MouseMoved does nothing.
func (b *Button) MouseMoved(*desktop.MouseEvent) {}

// MouseOut takes the tint away.
func (b *Button) MouseOut() { b.hovered = false; b.Refresh() }

// CreateRenderer draws the button.
func (b *Button) CreateRenderer() fyne.WidgetRenderer { return paint.NewDrawing(b) }

func (b *Button) letters() (text, key paint.TextStyle) {
	text = paint.TextStyle{Size: theme.SizeNameText, Color: theme.ColorNameForeground, Style: paint.Bold}
	key = paint.TextStyle{Size: apptheme.SizeNote, Color: apptheme.ColorQuiet}
	switch {
	case b.Disabled():
		text.Color, key.Color = theme.ColorNameDisabled, theme.ColorNameDisabled
	case b.Importance == widget.HighImportance:
		text.Color, key.Color = theme.ColorNameForegroundOnPrimary, theme.ColorNameForegroundOnPrimary
	case b.Importance == widget.DangerImportance:
		text.Color, key.Color = theme.ColorNameForegroundOnError, theme.ColorNameForegroundOnError
	case b.Destroys && !b.hovered: // under the pointer red on the tint is too weak
		text.Color = apptheme.ColorStop
	}
	return text, key
}

func (b *Button) ground() fyne.ThemeColorName {
	switch {
	case b.Disabled():
		return theme.ColorNameDisabledButton
	case b.Importance == widget.HighImportance:
		return theme.ColorNamePrimary
	case b.Importance == widget.DangerImportance:
		return theme.ColorNameError
	default:
		return theme.ColorNameButton
	}
}

// Widths returns the room for icon, text and key, gaps included.
func (b *Button) Widths(p paint.Painter) (icon, text, key float32) {
	textLetters, keyLetters := b.letters()
	if b.Icon != nil {
		icon = p.Size(theme.SizeNameInlineIcon) + p.Inner()
	}
	text = p.Measure(b.Text, textLetters).Width
	if b.Key != "" {
		key = p.Measure(b.Key, keyLetters).Width + p.Inner()
	}
	return icon, text, key
}

// Fitting returns the widths that fit: where room is tight the key goes first, then the icon, and
// last of all letters of the text.
func (b *Button) Fitting(p paint.Painter, width float32) (icon, text, key float32) {
	icon, text, key = b.Widths(p)
	room := width - 2*p.Pad()
	if icon+text+key > room {
		key = 0
	}
	if icon+text > room {
		icon = 0
	}
	return icon, min(text, room), key
}

func (b *Button) LeastSize() fyne.Size {
	p := paint.PainterFor(b)
	icon, text, key := b.Widths(p)
	letters, _ := b.letters()
	return fyne.NewSize(icon+text+key+4*p.Inner(), p.LineHeight(letters)+2*p.Inner())
}

// Tight is the width at which nothing but the text is left, and the text whole.
func (b *Button) Tight() float32 {
	p := paint.PainterFor(b)
	_, text, _ := b.Widths(p)
	return paint.Ceil(text) + 1 + 2*p.Pad()
}

func (b *Button) Paint(size fyne.Size) []fyne.CanvasObject {
	p := paint.PainterFor(b)
	body := p.Block(b.ground(), fyne.NewPos(0, 0), size)
	body.CornerRadius = p.Size(theme.SizeNameInputRadius)
	objects := []fyne.CanvasObject{body}
	if b.hovered && !b.Disabled() {
		tint := p.Block(theme.ColorNameHover, fyne.NewPos(0, 0), size)
		tint.CornerRadius = body.CornerRadius
		objects = append(objects, tint)
	}
	icon, text, key := b.Fitting(p, size.Width)
	x := (size.Width - icon - text - key) / 2
	textLetters, keyLetters := b.letters()
	if icon > 0 {
		side := p.Size(theme.SizeNameInlineIcon)
		picture := theme.NewColoredResource(b.Icon, textLetters.Color)
		objects = append(objects, p.Icon(picture, fyne.NewPos(x, (size.Height-side)/2), side))
		x += icon
	}
	top := (size.Height - p.LineHeight(textLetters)) / 2
	objects = append(objects, p.Write(p.Clip(b.Text, textLetters, text+1), textLetters, fyne.NewPos(x, top)))
	if key > 0 {
		low := top + p.LineHeight(textLetters) - p.LineHeight(keyLetters) - 1
		objects = append(objects, p.Write(b.Key, keyLetters, fyne.NewPos(x+text+p.Inner(), low)))
	}
	if b.Current {
		bar := p.Size(apptheme.SizeMark)
		objects = append(objects, p.Block(theme.ColorNamePrimary, fyne.NewPos(0, size.Height-bar), fyne.NewSize(size.Width, bar)))
	}
	if b.focused && !b.Disabled() {
		objects = append(objects, p.FocusRing(size))
	}
	return objects
}
