// Package status has the widgets that say how something is: a line of what came of an act, a badge, a
// sentence, a list of them. Each says it by a word, an icon and a colour, and takes no focus.
package status

import (
	"tenthpoint/ui/apptheme"
	"tenthpoint/ui/model"
	"tenthpoint/ui/paint"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"
)

// Line repeats the result of every act in one sentence, large enough to
// read while looking elsewhere. The state's word comes before the sentence.
type Line struct {
	widget.BaseWidget
	words func(model.State) string
	state model.State
	text  string
}

// NewLine makes an empty line that says the word of a state first.
func NewLine(words func(model.State) string) *Line {
	s := &Line{words: words}
	s.ExtendBaseWidget(s)
	return s
}

// Say shows a result.
func (s *Line) Say(state model.State, text string) {
	if s.state != state || s.text != text {
		s.state, s.text = state, text
		s.Refresh()
	}
}

// State is the state shown now.
func (s *Line) State() model.State { return s.state }

// Text is the whole line, with the state's word, as a person reads it.
func (s *Line) Text() string {
	if s.word() == "" || s.text == "" {
		return s.text
	}
	return s.word() + ": " + s.text
}

func (s *Line) word() string { return s.words(s.state) }

// CreateRenderer draws the line.
func (s *Line) CreateRenderer() fyne.WidgetRenderer { return paint.NewDrawing(s) }

func (s *Line) large() paint.TextStyle {
	return paint.TextStyle{Size: apptheme.SizeStatus, Color: apptheme.ColorInk}
}

func (s *Line) LeastSize() fyne.Size {
	p := paint.PainterFor(s)
	height := max(p.LineHeight(s.large())+p.Inner(), 2*p.LineHeight(paint.TextStyle{Size: apptheme.SizeNote})+2)
	return fyne.NewSize(height*8, height+p.Pad())
}

// lines chooses the text size: large on one line, or small on two when the sentence is long.
func (s *Line) lines(p paint.Painter, width float32) (paint.TextStyle, []string) {
	large := s.large()
	if p.Measure(s.text, large).Width <= width {
		return large, []string{s.text}
	}
	small := paint.TextStyle{Size: apptheme.SizeNote, Color: apptheme.ColorInk}
	lines := p.Wrap(s.text, small, width)
	if len(lines) > 2 {
		lines = []string{lines[0], p.Clip(lines[1]+" "+lines[2], small, width)}
	}
	return small, lines
}

func (s *Line) Paint(size fyne.Size) []fyne.CanvasObject {
	p := paint.PainterFor(s)
	objects := []fyne.CanvasObject{
		p.Block(apptheme.StateGround(s.state), fyne.NewPos(0, 0), size),
		p.Block(apptheme.ColorRule, fyne.NewPos(0, 0), fyne.NewSize(size.Width, 1)),
	}
	if s.text == "" {
		return objects
	}
	x := 2 * p.Inner()
	large := s.large()
	middle := func(height float32) float32 { return (size.Height - height) / 2 }
	if icon := apptheme.StateIcon(s.state); icon != nil {
		side := p.Size(theme.SizeNameInlineIcon)
		objects = append(objects, p.Icon(icon, fyne.NewPos(x, middle(side)), side))
		x += side + p.Inner()
	}
	if word := s.word(); word != "" {
		l := paint.TextStyle{Size: apptheme.SizeStatus, Color: apptheme.StateInk(s.state), Style: paint.Bold}
		text := p.Write(word, l, fyne.NewPos(x, middle(p.LineHeight(large))))
		objects = append(objects, text)
		x += text.Size().Width + 2*p.Inner()
	}
	l, lines := s.lines(p, size.Width-x-p.Inner())
	y := middle(float32(len(lines)) * p.LineHeight(l))
	for _, line := range lines {
		objects = append(objects, p.Write(line, l, fyne.NewPos(x, y)))
		y += p.LineHeight(l)
	}
	return objects
}
