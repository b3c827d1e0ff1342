package kit

import (
	"tenthpoint/ui/model"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/widget"
)

// Note is a sentence with the icon and colour of its state. It wraps to the
// width it is given and needs no more height than its lines.
type Note struct {
	widget.BaseWidget

	// Lines is how many lines room is kept for, so that a form does not jump
	// when a sentence comes and goes. Further lines still show if there is room.
	Lines int

	size  fyne.ThemeSizeName
	state model.State
	text  string
	inked bool    // running text: ink, however plain the state
	width float32 // the width last given, for wrapping when asked for a height
}

// NewNote makes a note in small letters with room for one line.
func NewNote() *Note {
	n := &Note{Lines: 1, size: SizeNote}
	n.ExtendBaseWidget(n)
	return n
}

// newWideNote makes a note in a size of choice that is as high as its text
// needs at a width.
func newWideNote(state model.State, text string, size fyne.ThemeSizeName, width float32) *Note {
	n := &Note{size: size, state: state, text: text, width: width}
	n.ExtendBaseWidget(n)
	return n
}

// Say shows a sentence. An empty one leaves the note blank.
func (n *Note) Say(state model.State, text string) {
	if n.state == state && n.text == text {
		return
	}
	n.state, n.text = state, text
	n.Refresh()
}

// Text is the sentence shown now.
func (n *Note) Text() string { return n.text }

// State is the state shown now.
func (n *Note) State() model.State { return n.state }

// CreateRenderer is Fyne's way to draw the note.
func (n *Note) CreateRenderer() fyne.WidgetRenderer { return newDrawing(n) }

func (n *Note) lettering() lettering {
	if n.inked {
		return lettering{size: n.size, color: ColorInk}
	}
	return lettering{size: n.size, color: stateInk(n.state)}
}

func (n *Note) iconRoom(p pen) float32 {
	if StateIcon(n.state) == nil {
		return 0
	}
	return p.lineHeight(n.lettering()) + p.pad()
}

func (n *Note) lines(p pen, width float32) []string {
	return p.wrap(n.text, n.lettering(), width-n.iconRoom(p))
}

func (n *Note) least() fyne.Size {
	p := penFor(n)
	lines := n.Lines
	if lines == 0 {
		lines = len(n.lines(p, n.width))
	}
	return fyne.NewSize(p.lineHeight(n.lettering())*4, float32(lines)*p.lineHeight(n.lettering()))
}

func (n *Note) draw(size fyne.Size) []fyne.CanvasObject {
	if n.text == "" {
		return nil
	}
	p := penFor(n)
	l := n.lettering()
	height := p.lineHeight(l)
	lines := n.lines(p, size.Width)
	if room := max(1, int(size.Height/height+0.1)); len(lines) > room {
		rest := lines[room-1] + " " + lines[room]
		lines = append(lines[:room-1:room-1], p.clip(rest, l, size.Width-n.iconRoom(p)))
	}
	top := max(0, (size.Height-height*float32(len(lines)))/2)
	var objects []fyne.CanvasObject
	if icon := StateIcon(n.state); icon != nil {
		side := height - 2
		objects = append(objects, p.icon(icon, fyne.NewPos(0, top+1), side))
	}
	for i, line := range lines {
		objects = append(objects, p.write(line, l, fyne.NewPos(n.iconRoom(p), top+float32(i)*height)))
	}
	return objects
}
