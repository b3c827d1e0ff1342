package shell

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/theme"

	"tenthpoint/ui/model"
	"tenthpoint/ui/widgets/status"
)

// footLine is the line at the foot of a form for the message of a field that has no room below it:
// the field's name, and the message.
type footLine struct {
	name *Label
	note *status.Text
}

func newFootLine() *footLine {
	return &footLine{name: NewLabel("", small), note: status.NewText()}
}

func (f *footLine) objects() []fyne.CanvasObject { return []fyne.CanvasObject{f.name, f.note} }

// say shows a sentence about a field; without one the line is blank.
func (f *footLine) say(name string, state model.State, text string) {
	if text == "" {
		name = ""
	}
	if f.name.Text != name {
		f.name.Say(name)
		f.place(f.name.Position(), f.width(), f.name.Visible())
	}
	f.note.Say(state, text)
}

// width is the width of the whole line.
func (f *footLine) width() float32 {
	return f.note.Position().X + f.note.Size().Width - f.name.Position().X
}

// height is that of one line.
func (f *footLine) height() float32 { return max(f.name.MinSize().Height, f.note.MinSize().Height) }

// place shows the line at a position, or hides it.
func (f *footLine) place(at fyne.Position, width float32, shown bool) {
	SetVisible(f.name, shown)
	SetVisible(f.note, shown)
	named := float32(0)
	if f.name.Text != "" {
		named = f.name.MinSize().Width + theme.InnerPadding()
	}
	f.name.Move(at)
	f.name.Resize(fyne.NewSize(named, f.height()))
	f.note.Move(at.AddXY(named, 0))
	f.note.Resize(fyne.NewSize(max(0, width-named), f.height()))
}

// ShowHint shows a text about the focused field instead of the hint, unless the status line has a
// message.
func (w *Window) ShowHint(text string) {
	if w.Status.State() == model.Plain {
		w.Say(model.Plain, text)
	}
}
