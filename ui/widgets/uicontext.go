package widgets

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
)

// UIContext is what everything in one window shares: the canvas the keyboard is focused on, the
// commands keys are offered to, the layer lists float on, and the open dialogs.
type UIContext struct {
	canvas   fyne.Canvas
	commands *Commands
	words    Words
	layer    *fyne.Container
	floats   floats         // where what floats on the layer belongs
	last     fyne.Focusable // who had the focus last
	scan     *scanner       // codes that a reader types; shared with inner stages
	boxes    *[]*Dialog     // open dialogs, the front one last; shared with inner stages
}

// NewUIContext makes the context of a window that speaks some words. It takes the canvas' keys that nothing
// else has focus for, so a click on bare ground does not make F-keys deaf.
func NewUIContext(canvas fyne.Canvas, commands *Commands, words Words) *UIContext {
	s := newUIContext(canvas, commands, words, new([]*Dialog))
	s.scan = &scanner{}
	canvas.SetOnTypedKey(s.unfocusedKey)
	canvas.SetOnTypedRune(s.unfocusedRune)
	return s
}

// inner is a context for the inside of a dialog: same window, own layer.
func (s *UIContext) inner() *UIContext {
	within := newUIContext(s.canvas, s.commands, s.words, s.boxes)
	within.scan = s.scan
	return within
}

func newUIContext(canvas fyne.Canvas, commands *Commands, words Words, boxes *[]*Dialog) *UIContext {
	s := &UIContext{canvas: canvas, commands: commands, words: words, boxes: boxes, floats: floats{}}
	s.layer = container.New(s.floats)
	return s
}

// Wrap puts the layer for floating lists over the window's content. Pass the result to
// Window.SetContent.
func (s *UIContext) Wrap(content fyne.CanvasObject) fyne.CanvasObject {
	return container.NewStack(content, s.layer)
}

// Canvas is the canvas of the window.
func (s *UIContext) Canvas() fyne.Canvas { return s.canvas }

// Commands is the table of commands of the window.
func (s *UIContext) Commands() *Commands { return s.commands }

// FrontDialog is the open dialog nearest to the person, or nil.
func (s *UIContext) FrontDialog() *Dialog {
	if len(*s.boxes) == 0 {
		return nil
	}
	return (*s.boxes)[len(*s.boxes)-1]
}

func (s *UIContext) takeKey(ev *fyne.KeyEvent) bool {
	return s.commands != nil && s.commands.TakeKey(ev)
}

// unfocusedRune gets the letters typed while nothing has the focus: only a code can be meant.
func (s *UIContext) unfocusedRune(r rune) {
	if s.FrontDialog() == nil {
		s.scan.letter(nil, r)
	}
}

// unfocusedKey gets the keys pressed while nothing has the focus. Commands come first; any other
// key only restores the last focus.
func (s *UIContext) unfocusedKey(ev *fyne.KeyEvent) {
	if box := s.FrontDialog(); box != nil {
		if !box.order.take("", ev) {
			box.order.Focus(box.first)
		}
		return
	}
	if s.scan.key(ev.Name) || s.takeKey(ev) {
		return
	}
	if back, ok := s.last.(fyne.CanvasObject); ok && back.Visible() {
		s.canvas.Focus(s.last)
	}
}

// roomAround is the height free under or over an object, whichever is more.
func (s *UIContext) roomAround(o fyne.CanvasObject) float32 {
	over := fyne.CurrentApp().Driver().AbsolutePositionForObject(o).Y
	return max(over, s.canvas.Size().Height-over-o.Size().Height)
}

// float shows an object over the content, just under another object, or over
// that when there is no room below.
func (s *UIContext) float(what, under fyne.CanvasObject, size fyne.Size) {
	s.floats[what] = func() { s.place(what, under, size) }
	s.place(what, under, size)
	for _, shown := range s.layer.Objects {
		if shown == what {
			what.Refresh()
			return
		}
	}
	s.layer.Add(what)
}

func (s *UIContext) place(what, under fyne.CanvasObject, size fyne.Size) {
	d := fyne.CurrentApp().Driver()
	at := d.AbsolutePositionForObject(under)
	below := at.Y + under.Size().Height
	y := below
	if below+size.Height > s.canvas.Size().Height && at.Y > s.canvas.Size().Height-below {
		y = at.Y - size.Height
	}
	x := max(0, min(at.X, s.canvas.Size().Width-size.Width))
	what.Move(fyne.NewPos(x, y).Subtract(d.AbsolutePositionForObject(s.layer)))
	what.Resize(size)
}

// floats are functions that place floating objects, called again when the layer is laid out: a
// window does not know where an object is before its first frame, and a list may be open from the
// start.
type floats map[fyne.CanvasObject]func()

func (floats) MinSize(objects []fyne.CanvasObject) fyne.Size {
	var size fyne.Size
	for _, o := range objects {
		size = size.Max(o.MinSize())
	}
	return size
}

func (f floats) Layout(objects []fyne.CanvasObject, _ fyne.Size) {
	for _, o := range objects {
		if place := f[o]; place != nil {
			place()
		}
	}
}

// sink takes a floating object away.
func (s *UIContext) sink(what fyne.CanvasObject) {
	delete(s.floats, what)
	s.layer.Remove(what)
}

// sinkAll takes every floating object away.
func (s *UIContext) sinkAll() {
	clear(s.floats)
	s.layer.RemoveAll()
}

// Leave takes the focus from the focused widget, which ends typing there, and closes every list:
// the screen they belong to is hidden.
func (s *UIContext) Leave() {
	if s.FrontDialog() == nil {
		s.canvas.Unfocus()
	}
	s.sinkAll()
}

// Press sends keys to the focused widget, one after another, as a window does. For tests.
func (s *UIContext) Press(keys ...fyne.KeyName) {
	for _, key := range keys {
		ev := &fyne.KeyEvent{Name: key}
		focused := s.canvas.Focused()
		tabbable, takesTab := focused.(fyne.Tabbable)
		switch {
		case key == fyne.KeyTab && !(takesTab && tabbable.AcceptsTab()):
			s.nextInTree()
		case focused != nil:
			focused.TypedKey(ev)
		case s.canvas.OnTypedKey() != nil:
			s.canvas.OnTypedKey()(ev)
		}
	}
}

// nextInTree does what a window does with a Tab no widget takes.
func (s *UIContext) nextInTree() {
	if c, ok := s.canvas.(interface{ FocusNext() }); ok {
		c.FocusNext()
	}
}

// Write types letters into the focused widget.
func (s *UIContext) Write(letters string) {
	for _, letter := range letters {
		if focused := s.canvas.Focused(); focused != nil {
			focused.TypedRune(letter)
		}
	}
}

// Chord presses a key with a modifier, which a window looks up in the menu. It reports whether a
// command has that key.
func (s *UIContext) Chord(key Key) bool {
	command, owned := s.commands.forKey(key)
	if owned {
		s.commands.Run(command.ID)
	}
	return owned
}
