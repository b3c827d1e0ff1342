package kit

import (
	"tenthpoint/ui/model"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/layout"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"
)

// Dialog is a box in front of the window. While it is open only modal-safe
// commands run. The keyboard starts on a chosen stop, Enter presses the button
// that has it, Escape dismisses, and afterwards the keyboard is back where it
// was.
type Dialog struct {
	stage     *Stage
	ring      *Ring
	popup     *widget.PopUp
	body      []fyne.CanvasObject
	buttons   []*Button
	noCommand func() // tells the commands that the box is gone
	before    fyne.Focusable
	onDismiss func()
	open      bool
}

// boxChars is how many letters wide the text of a dialog runs.
const boxChars = 58

// newDialog begins a box with a title, an icon and a text.
func (s *Stage) newDialog(title string, state model.State, text string) *Dialog {
	d := &Dialog{stage: s.inner()}
	d.ring = NewRing(d.stage)
	d.ring.OnEscape = func() bool { d.Dismiss(); return true }
	p := pen{theme: theme.Current(), variant: fyne.CurrentApp().Settings().ThemeVariant()}
	width := boxChars * p.measure("0", lettering{size: theme.SizeNameText}).Width
	d.body = append(d.body, newBoxTitle(title, state, width))
	if text != "" {
		d.body = append(d.body, newProse(text, width))
	}
	return d
}

// addButton puts a button in the row at the foot.
func (d *Dialog) addButton(id, text string, importance widget.Importance, press func()) *Button {
	b := NewButton(text, press)
	b.Importance = importance
	d.buttons = append(d.buttons, b)
	d.ring.Add(id, b)
	return b
}

// show opens the box with the keyboard on the stop of an id.
func (d *Dialog) show(first string) *Dialog {
	gap := penFor(d.stage.layer).inner() * 2
	foot := container.New(layout.NewCustomPaddedHBoxLayout(gap), layout.NewSpacer())
	for _, b := range d.buttons {
		foot.Add(b)
	}
	rows := append(d.body, foot)
	inside := container.New(layout.NewCustomPaddedVBoxLayout(gap), rows...)
	framed := container.NewPadded(container.NewPadded(inside))
	d.before = d.stage.canvas.Focused()
	d.stage.canvas.Unfocus() // one ring on the screen, and it is in the box
	d.noCommand = func() {}
	if d.stage.commands != nil {
		d.noCommand = d.stage.commands.BoxOpened()
	}
	*d.stage.boxes = append(*d.stage.boxes, d)
	d.popup = widget.NewModalPopUp(d.stage.Wrap(framed), d.stage.canvas)
	d.popup.Show()
	d.open = true
	d.ring.Focus(first)
	return d
}

// Ring is the order of the keyboard in the box: fields first, then buttons.
func (d *Dialog) Ring() *Ring { return d.ring }

// Open tells whether the box is still there.
func (d *Dialog) Open() bool { return d.open }

// Dismiss closes the box without going on, as Escape does.
func (d *Dialog) Dismiss() {
	if d.close() && d.onDismiss != nil {
		d.onDismiss()
	}
}

// close takes the box away and answers whether it was open.
func (d *Dialog) close() bool {
	if !d.open {
		return false
	}
	d.open = false
	for i, box := range *d.stage.boxes {
		if box == d {
			*d.stage.boxes = append((*d.stage.boxes)[:i:i], (*d.stage.boxes)[i+1:]...)
		}
	}
	d.stage.sinkAll()
	d.popup.Hide()
	d.noCommand()
	if d.before != nil && d.stage.canvas.Focused() != d.before {
		d.stage.canvas.Focus(d.before)
	}
	return true
}

// finish closes the box and then calls what was asked for, in that order, so
// that the answer may open the next box or move the keyboard.
func (d *Dialog) finish(then func()) {
	if d.close() && then != nil {
		then()
	}
}

// boxTitle is the title line of a dialog, with the icon of its state.
type boxTitle struct {
	widget.BaseWidget
	text  string
	state model.State
	width float32
}

func newBoxTitle(text string, state model.State, width float32) *boxTitle {
	b := &boxTitle{text: text, state: state, width: width}
	b.ExtendBaseWidget(b)
	return b
}

func (b *boxTitle) CreateRenderer() fyne.WidgetRenderer { return newDrawing(b) }

func (b *boxTitle) lettering() lettering {
	return lettering{size: theme.SizeNameSubHeadingText, color: ColorInk, style: bold}
}

func (b *boxTitle) least() fyne.Size {
	return fyne.NewSize(b.width, penFor(b).lineHeight(b.lettering()))
}

func (b *boxTitle) draw(size fyne.Size) []fyne.CanvasObject {
	p := penFor(b)
	l := b.lettering()
	x := float32(0)
	var objects []fyne.CanvasObject
	if icon := StateIcon(b.state); icon != nil {
		objects = append(objects, p.icon(icon, fyne.NewPos(0, 0), size.Height))
		x = size.Height + p.inner()
	}
	return append(objects, p.write(b.text, l, fyne.NewPos(x, 0)))
}

// newProse is running text in ink, wrapped to a width.
func newProse(text string, width float32) *Note {
	n := newWideNote(model.Plain, text, theme.SizeNameText, width)
	n.inked = true
	return n
}
