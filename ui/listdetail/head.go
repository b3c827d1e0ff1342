package listdetail

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	"tenthpoint/ui/model"
	"tenthpoint/ui/shell"
	"tenthpoint/ui/widgets"
	"tenthpoint/ui/widgets/status"
)

// Head holds what is shown over the list beside its title. All of it is optional.
type Head struct {
	Tip     string        // what can be typed; shown whole or not at all
	Reading func() string // how the line was understood, in place of a tip
	Counted func() string // how many rows there are
	Figures float32       // the room for that, in figures
}

// head is the title with the search line, and under them the message about the list.
type head struct {
	Head
	reading *status.Text
	counted *shell.Label
	content fyne.CanvasObject
}

func newHead(title string, h Head, line *widgets.FieldEntry) *head {
	out := &head{Head: h, reading: status.NewText(), counted: shell.NewLabel("", shell.AtRight)}
	switch {
	case line == nil && h.Counted == nil:
		out.content = shell.NewLabel(title, shell.Heading)
	case line == nil:
		out.content = container.NewBorder(nil, nil, shell.NewLabel(title, shell.Heading), container.New(shell.Wide{Figures: h.Figures}, out.counted))
	default:
		said := fyne.CanvasObject(out.reading)
		if h.Reading == nil {
			said = shell.NewLabel(h.Tip, shell.Quiet)
		}
		under := container.New(beforeCount{figures: h.Figures, whole: h.Reading == nil}, said, out.counted)
		out.content = container.NewVBox(shell.Titled(title, line), under)
	}
	return out
}

func (h *head) show() {
	if h.Counted != nil {
		h.counted.Say(h.Counted())
	}
	if h.Reading != nil {
		h.reading.Say(model.Plain, h.Reading())
	}
}

// beforeCount sets a text at the left and a count at the right, of a fixed number of digits. A tip
// that does not fit whole is left out: the status line has it too.
type beforeCount struct {
	figures float32
	whole   bool
}

func (l beforeCount) width() float32 { return shell.Wide{Figures: l.figures}.MinSize(nil).Width }

func (l beforeCount) MinSize(objects []fyne.CanvasObject) fyne.Size {
	return fyne.NewSize(l.width(), max(objects[0].MinSize().Height, objects[1].MinSize().Height))
}

func (l beforeCount) Layout(objects []fyne.CanvasObject, size fyne.Size) {
	text, count, width := objects[0], objects[1], l.width()
	room := max(0, size.Width-width)
	if l.whole {
		shell.SetVisible(text, text.MinSize().Width <= room)
	}
	shell.Put(text, 0, 0, room, size.Height)
	shell.Put(count, size.Width-width, 0, width, size.Height)
}
