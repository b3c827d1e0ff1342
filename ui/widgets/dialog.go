package widgets

import (
	"slices"
	"tenthpoint/ui/apptheme"
	"tenthpoint/ui/model"
	"tenthpoint/ui/paint"
	"tenthpoint/ui/widgets/status"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/layout"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"
)

// Dialog is a modal dialog. While it is open only modal-safe commands run. The focus starts on a
// chosen stop, Enter presses the button that has it, Escape dismisses, and afterwards the keyboard
// is back where it was.
type Dialog struct {
	ui        *UIContext
	order     *FocusOrder
	popup     *widget.PopUp
	body      []fyne.CanvasObject
	fault     *status.Text // why the last answer failed; nil where none did
	buttons   []*Button
	noCommand func() // tells the commands that the box is gone
	before    fyne.Focusable
	onDismiss func()
	open      bool
	first     string  // the stop that the keyboard begins on
	width     float32 // of running text in it
}

// boxChars is the width of a dialog's text, in characters.
const boxChars = 58

// newDialog begins a box with a title, an icon and a text.
func (s *UIContext) newDialog(title string, state model.State, text string) *Dialog {
	d := &Dialog{ui: s.inner()}
	d.order = NewFocusOrder(d.ui)
	d.order.OnEscape = func() bool { d.Dismiss(); return true }
	p := paint.Painter{Theme: theme.Current(), Variant: fyne.CurrentApp().Settings().ThemeVariant()}
	width := boxChars * p.Measure("0", paint.TextStyle{Size: theme.SizeNameText}).Width
	d.width = width
	d.body = append(d.body, newBoxTitle(title, state, width))
	if text != "" {
		d.body = append(d.body, status.NewProse(text, width))
	}
	return d
}

// addButton puts a button in the row at the foot.
func (d *Dialog) addButton(id, text string, importance widget.Importance, press func()) *Button {
	b := NewButton(text, press)
	b.Importance = importance
	d.buttons = append(d.buttons, b)
	d.order.Add(id, b)
	return b
}

// addFault shows over the buttons why the act on the last answer failed.
func (d *Dialog) addFault(text string) {
	if text != "" {
		d.fault = status.NewWide(model.Stop, text, theme.SizeNameText, d.width)
	}
}

// show opens the box with the focus on the stop of an id.
func (d *Dialog) show(first string) *Dialog {
	gap := paint.PainterFor(d.ui.layer).Inner() * 2
	foot := container.New(layout.NewCustomPaddedHBoxLayout(gap), layout.NewSpacer())
	for _, b := range d.buttons {
		foot.Add(b)
	}
	framed := d.framed(foot, gap)
	d.before = d.ui.canvas.Focused()
	d.ui.canvas.Unfocus() // one ring on the screen, and it is in the box
	d.noCommand = func() {}
	if d.ui.commands != nil {
		d.noCommand = d.ui.commands.BoxOpened()
	}
	*d.ui.boxes = append(*d.ui.boxes, d)
	d.popup = widget.NewModalPopUp(d.ui.Wrap(framed), d.ui.canvas)
	d.popup.Show()
	d.open, d.first = true, first
	d.order.Focus(first)
	return d
}

// framed is the body over the fault and the buttons. A body that is too high for the window scrolls,
// and the buttons stay in sight.
func (d *Dialog) framed(foot fyne.CanvasObject, gap float32) fyne.CanvasObject {
	column := func(rows ...fyne.CanvasObject) *fyne.Container {
		return container.New(layout.NewCustomPaddedVBoxLayout(gap), rows...)
	}
	end := []fyne.CanvasObject{foot}
	if d.fault != nil {
		end = []fyne.CanvasObject{d.fault, foot}
	}
	framed := container.NewPadded(container.NewPadded(column(slices.Concat(d.body, end)...)))
	over := framed.MinSize().Height + 2*theme.InnerPadding() - d.ui.canvas.Size().Height
	if over <= 0 {
		return framed
	}
	body := column(d.body...)
	scroll := container.NewVScroll(body)
	scroll.SetMinSize(body.MinSize().SubtractWidthHeight(0, over))
	d.order.OnArrive = func(string) { d.reveal(scroll) }
	return container.NewPadded(container.NewPadded(column(append([]fyne.CanvasObject{scroll}, end...)...)))
}

// reveal scrolls the body to the field that has the keyboard.
func (d *Dialog) reveal(scroll *container.Scroll) {
	field, is := d.ui.canvas.Focused().(fyne.CanvasObject)
	if _, button := field.(*Button); !is || button {
		return
	}
	driver := fyne.CurrentApp().Driver()
	from := driver.AbsolutePositionForObject(field).Y - driver.AbsolutePositionForObject(scroll.Content).Y
	paint.ScrollTo(scroll, from, from+field.Size().Height)
}

// FocusOrder is the tab order of the dialog: fields first, then buttons.
func (d *Dialog) FocusOrder() *FocusOrder { return d.order }

// Open reports whether the dialog is still open.
func (d *Dialog) Open() bool { return d.open }

// Dismiss closes the box without going on, as Escape does.
func (d *Dialog) Dismiss() {
	if d.close() && d.onDismiss != nil {
		d.onDismiss()
	}
}

// close takes the box away and reports whether it was open.
func (d *Dialog) close() bool {
	if !d.open {
		return false
	}
	d.open = false
	for i, box := range *d.ui.boxes {
		if box == d {
			*d.ui.boxes = append((*d.ui.boxes)[:i:i], (*d.ui.boxes)[i+1:]...)
		}
	}
	d.ui.sinkAll()
	d.popup.Hide()
	d.noCommand()
	if d.before != nil && d.ui.canvas.Focused() != d.before {
		d.ui.canvas.Focus(d.before)
	}
	return true
}

// finish closes the dialog and then calls a function, in that order, so that it may open the next
// dialog or move the focus.
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

func (b *boxTitle) CreateRenderer() fyne.WidgetRenderer { return paint.NewDrawing(b) }

func (b *boxTitle) textStyle() paint.TextStyle {
	return paint.TextStyle{Size: theme.SizeNameSubHeadingText, Color: apptheme.ColorInk, Style: paint.Bold}
}

func (b *boxTitle) LeastSize() fyne.Size {
	return fyne.NewSize(b.width, paint.PainterFor(b).LineHeight(b.textStyle()))
}

func (b *boxTitle) Paint(size fyne.Size) []fyne.CanvasObject {
	p := paint.PainterFor(b)
	l := b.textStyle()
	x := float32(0)
	var objects []fyne.CanvasObject
	if icon := apptheme.StateIcon(b.state); icon != nil {
		objects = append(objects, p.Icon(icon, fyne.NewPos(0, 0), size.Height))
		x = size.Height + p.Inner()
	}
	return append(objects, p.Write(b.text, l, fyne.NewPos(x, 0)))
}

// Question is a choice between going on and leaving things as they are.
type Question struct {
	Title string
	Text  string
	State model.State // the icon beside the title
	Yes   string      // what going on is called: "Void the ticket". Empty: Words.Agree
	No    string      // empty: Words.Cancel
	// Danger marks what cannot be undone: the focus starts on No.
	Danger bool
}

// Ask shows a confirmation. answer is called once, with false for No or Escape.
func (s *UIContext) Ask(q Question, answer func(yes bool)) *Dialog {
	d := s.newDialog(q.Title, q.State, q.Text)
	d.onDismiss = func() { answer(false) }
	importance, first := widget.HighImportance, "yes"
	if q.Danger {
		importance, first = widget.DangerImportance, "no"
	}
	d.addButton("yes", or(q.Yes, s.words.Agree), importance, func() {
		d.finish(func() { answer(true) })
	})
	d.addButton("no", or(q.No, s.words.Cancel), widget.MediumImportance, d.Dismiss)
	return d.show(first)
}

// Notice is something to be read and put away.
type Notice struct {
	Title string
	Text  string
	State model.State
	Close string // empty: Words.Close
}

// Tell shows a notice. The function, which may be nil, is called once it is closed.
func (s *UIContext) Tell(n Notice, then func()) *Dialog {
	d := s.newDialog(n.Title, n.State, n.Text)
	d.onDismiss = then
	d.addButton("close", or(n.Close, s.words.Close), widget.HighImportance, d.Dismiss)
	return d.show("close")
}

// or returns a text, or another when it is empty.
func or(text, otherwise string) string {
	if text == "" {
		return otherwise
	}
	return text
}

// Choice is a list to choose one from, in a dialog.
type Choice struct {
	Title, Text string
	Label       string // beside the find field
	Options     []model.Option
	Yes, No     string
	Fault       string // why the previous choice was invalid
}

// AskChoice lets a person choose one of the options, by code, by letters or by arrows. The list is
// open from the start. answer is called once.
func (s *UIContext) AskChoice(c Choice, answer func(chosen model.Option, ok bool)) *Dialog {
	d := s.newDialog(c.Title, model.Plain, c.Text)
	d.onDismiss = func() { answer(model.Option{}, false) }
	pick := NewAutocomplete(c.Options)
	field := NewField(c.Label, "", pick)
	field.Chars = 30
	d.body = append(d.body, NewSheet(field))
	d.order.Add("pick", pick)
	submit := func() {
		if o, ok := pick.Chosen(); ok {
			d.finish(func() { answer(o, true) })
			return
		}
		field.SetProblem(s.words.Needed)
		d.order.Focus("pick")
	}
	pick.OnCommit = func(string) string { return "yes" }
	pick.OnNoFit = func(string) { field.SetProblem(s.words.NoMatch) }
	pick.OnEdit = func(string) { field.SetProblem("") }
	d.addFault(c.Fault)
	d.addButton("yes", or(c.Yes, s.words.Agree), widget.HighImportance, submit)
	d.addButton("no", or(c.No, s.words.Cancel), widget.MediumImportance, d.Dismiss)
	d.show("pick")
	pick.down()
	return d
}
