package status

import (
	"tenthpoint/ui/apptheme"
	"tenthpoint/ui/model"
	"tenthpoint/ui/paint"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"
)

// Text is a sentence with the icon and colour of its state. It wraps to the
// width it is given and needs no more height than its lines.
type Text struct {
	widget.BaseWidget

	// Lines is the number of lines room is kept for, so that a form does not jump when a sentence
	// appears or disappears. Further lines still show if there is room.
	Lines int

	size  fyne.ThemeSizeName
	state model.State
	text  string
	inked bool    // running text: ink, however plain the state
	width float32 // the width last given, for wrapping when asked for a height
}

// NewText makes one in small letters with room for one line.
func NewText() *Text {
	n := &Text{Lines: 1, size: apptheme.SizeNote}
	n.ExtendBaseWidget(n)
	return n
}

// NewProse makes running text: in ink, however plain its state.
func NewProse(text string, width float32) *Text {
	n := NewWide(model.Plain, text, theme.SizeNameText, width)
	n.inked = true
	return n
}

// NewWide makes a note in a size of choice that is as high as its text
// needs at a width.
func NewWide(state model.State, text string, size fyne.ThemeSizeName, width float32) *Text {
	n := &Text{size: size, state: state, text: text, width: width}
	n.ExtendBaseWidget(n)
	return n
}

// Say shows a sentence. An empty one clears the note.
func (n *Text) Say(state model.State, text string) {
	if n.state == state && n.text == text {
		return
	}
	n.state, n.text = state, text
	n.Refresh()
}

// Text is the sentence shown now.
func (n *Text) Text() string { return n.text }

// State is the state shown now.
func (n *Text) State() model.State { return n.state }

// CreateRenderer draws the note.
func (n *Text) CreateRenderer() fyne.WidgetRenderer { return paint.NewDrawing(n) }

func (n *Text) TextStyle() paint.TextStyle {
	if n.inked {
		return paint.TextStyle{Size: n.size, Color: apptheme.ColorInk}
	}
	return paint.TextStyle{Size: n.size, Color: apptheme.StateInk(n.state)}
}

func (n *Text) iconRoom(p paint.Painter) float32 {
	if apptheme.StateIcon(n.state) == nil {
		return 0
	}
	return p.LineHeight(n.TextStyle()) + p.Pad()
}

func (n *Text) lines(p paint.Painter, width float32) []string {
	return p.Wrap(n.text, n.TextStyle(), width-n.iconRoom(p))
}

func (n *Text) LeastSize() fyne.Size {
	p := paint.PainterFor(n)
	lines := n.Lines
	if lines == 0 {
		lines = len(n.lines(p, n.width))
	}
	return fyne.NewSize(p.LineHeight(n.TextStyle())*4, float32(lines)*p.LineHeight(n.TextStyle()))
}

func (n *Text) Paint(size fyne.Size) []fyne.CanvasObject {
	if n.text == "" {
		return nil
	}
	p := paint.PainterFor(n)
	l := n.TextStyle()
	height := p.LineHeight(l)
	lines := n.lines(p, size.Width)
	if room := max(1, int(size.Height/height+0.1)); len(lines) > room {
		rest := lines[room-1] + " " + lines[room]
		lines = append(lines[:room-1:room-1], p.Clip(rest, l, size.Width-n.iconRoom(p)))
	}
	top := max(0, (size.Height-height*float32(len(lines)))/2)
	var objects []fyne.CanvasObject
	if icon := apptheme.StateIcon(n.state); icon != nil {
		side := height - 2
		objects = append(objects, p.Icon(icon, fyne.NewPos(0, top+1), side))
	}
	for i, line := range lines {
		objects = append(objects, p.Write(line, l, fyne.NewPos(n.iconRoom(p), top+float32(i)*height)))
	}
	return objects
}
