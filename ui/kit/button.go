package kit

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"
)

// Button is pressed by Enter, Space or a click. A click does not take the
// keyboard away from the field the clerk is in.
type Button struct {
	widget.DisableableWidget
	seat

	Text       string
	Key        string // the key that does the same, shown small
	Icon       fyne.Resource
	Importance widget.Importance // High for the way on, Danger for what cannot be undone
	Current    bool              // marks where one is, in a row of screens
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

// SetText changes what the button says.
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

// Press does what the button is for, unless it is grey.
func (b *Button) Press() {
	if !b.Disabled() && b.OnTapped != nil {
		b.OnTapped()
	}
}

// Tapped presses the button.
func (b *Button) Tapped(*fyne.PointEvent) { b.Press() }

// TypedKey: the ring and the commands first, then Enter and Space press, and
// the arrows walk to the neighbour.
func (b *Button) TypedKey(ev *fyne.KeyEvent) {
	if b.offer(ev) {
		return
	}
	switch ev.Name {
	case fyne.KeyReturn, fyne.KeyEnter, fyne.KeySpace:
		b.Press()
	case fyne.KeyLeft, fyne.KeyUp:
		if b.ring != nil {
			b.ring.Prev(b.id)
		}
	case fyne.KeyRight, fyne.KeyDown:
		if b.ring != nil {
			b.ring.Next(b.id)
		}
	}
}

// TypedRune ignores letters.
func (b *Button) TypedRune(rune) {}

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

// CreateRenderer is Fyne's way to draw the button.
func (b *Button) CreateRenderer() fyne.WidgetRenderer { return newDrawing(b) }

func (b *Button) letters() (text, key lettering) {
	text = lettering{size: theme.SizeNameText, color: theme.ColorNameForeground, style: bold}
	key = lettering{size: SizeNote, color: ColorQuiet}
	switch {
	case b.Disabled():
		text.color, key.color = theme.ColorNameDisabled, theme.ColorNameDisabled
	case b.Importance == widget.HighImportance:
		text.color, key.color = theme.ColorNameForegroundOnPrimary, theme.ColorNameForegroundOnPrimary
	case b.Importance == widget.DangerImportance:
		text.color, key.color = theme.ColorNameForegroundOnError, theme.ColorNameForegroundOnError
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

// widths gives the room for icon, text and key, gaps included.
func (b *Button) widths(p pen) (icon, text, key float32) {
	textLetters, keyLetters := b.letters()
	if b.Icon != nil {
		icon = p.size(theme.SizeNameInlineIcon) + p.inner()
	}
	text = p.measure(b.Text, textLetters).Width
	if b.Key != "" {
		key = p.measure(b.Key, keyLetters).Width + p.inner()
	}
	return icon, text, key
}

// fitting gives what there is room for: where it is tight the key goes first,
// then the icon, and last of all letters of the text.
func (b *Button) fitting(p pen, width float32) (icon, text, key float32) {
	icon, text, key = b.widths(p)
	room := width - 2*p.pad()
	if icon+text+key > room {
		key = 0
	}
	if icon+text > room {
		icon = 0
	}
	return icon, min(text, room), key
}

func (b *Button) least() fyne.Size {
	p := penFor(b)
	icon, text, key := b.widths(p)
	letters, _ := b.letters()
	return fyne.NewSize(icon+text+key+4*p.inner(), p.lineHeight(letters)+2*p.inner())
}

// Tight is the width at which nothing but the text is left, and the text whole.
func (b *Button) Tight() float32 {
	p := penFor(b)
	_, text, _ := b.widths(p)
	return ceil(text) + 1 + 2*p.pad()
}

func (b *Button) draw(size fyne.Size) []fyne.CanvasObject {
	p := penFor(b)
	body := p.block(b.ground(), fyne.NewPos(0, 0), size)
	body.CornerRadius = p.size(theme.SizeNameInputRadius)
	objects := []fyne.CanvasObject{body}
	if b.hovered && !b.Disabled() {
		tint := p.block(theme.ColorNameHover, fyne.NewPos(0, 0), size)
		tint.CornerRadius = body.CornerRadius
		objects = append(objects, tint)
	}
	icon, text, key := b.fitting(p, size.Width)
	x := (size.Width - icon - text - key) / 2
	textLetters, keyLetters := b.letters()
	if icon > 0 {
		side := p.size(theme.SizeNameInlineIcon)
		picture := theme.NewColoredResource(b.Icon, textLetters.color)
		objects = append(objects, p.icon(picture, fyne.NewPos(x, (size.Height-side)/2), side))
		x += icon
	}
	top := (size.Height - p.lineHeight(textLetters)) / 2
	objects = append(objects, p.write(p.clip(b.Text, textLetters, text+1), textLetters, fyne.NewPos(x, top)))
	if key > 0 {
		low := top + p.lineHeight(textLetters) - p.lineHeight(keyLetters) - 1
		objects = append(objects, p.write(b.Key, keyLetters, fyne.NewPos(x+text+p.inner(), low)))
	}
	if b.Current {
		bar := p.size(SizeMark)
		objects = append(objects, p.block(theme.ColorNamePrimary, fyne.NewPos(0, size.Height-bar), fyne.NewSize(size.Width, bar)))
	}
	if b.focused && !b.Disabled() {
		objects = append(objects, p.focusRing(size))
	}
	return objects
}
