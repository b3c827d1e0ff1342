package kit

import (
	"tenthpoint/ui/model"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"
)

// StatusLine repeats the result of every act in one sentence, large enough to
// read while looking elsewhere. The state's word comes before the sentence.
type StatusLine struct {
	widget.BaseWidget
	state model.State
	text  string
}

// NewStatusLine makes an empty status line.
func NewStatusLine() *StatusLine {
	s := &StatusLine{}
	s.ExtendBaseWidget(s)
	return s
}

// Say shows a result.
func (s *StatusLine) Say(state model.State, text string) {
	if s.state != state || s.text != text {
		s.state, s.text = state, text
		s.Refresh()
	}
}

// State is the state shown now.
func (s *StatusLine) State() model.State { return s.state }

// Text is the whole line, with the state's word, as a person reads it.
func (s *StatusLine) Text() string {
	if s.word() == "" || s.text == "" {
		return s.text
	}
	return s.word() + ": " + s.text
}

func (s *StatusLine) word() string {
	switch s.state {
	case model.OK:
		return words.StatusOK
	case model.Warn, model.Missing:
		return words.StatusWarn
	case model.Stop:
		return words.StatusStop
	case model.Wait:
		return words.StatusWait
	default:
		return ""
	}
}

// CreateRenderer is Fyne's way to draw the line.
func (s *StatusLine) CreateRenderer() fyne.WidgetRenderer { return newDrawing(s) }

func (s *StatusLine) large() lettering { return lettering{size: SizeStatus, color: ColorInk} }

func (s *StatusLine) least() fyne.Size {
	p := penFor(s)
	height := max(p.lineHeight(s.large())+p.inner(), 2*p.lineHeight(lettering{size: SizeNote})+2)
	return fyne.NewSize(height*8, height+p.pad())
}

// lines chooses the letters: large on one line, or small on two when the
// sentence is long.
func (s *StatusLine) lines(p pen, width float32) (lettering, []string) {
	large := s.large()
	if p.measure(s.text, large).Width <= width {
		return large, []string{s.text}
	}
	small := lettering{size: SizeNote, color: ColorInk}
	lines := p.wrap(s.text, small, width)
	if len(lines) > 2 {
		lines = []string{lines[0], p.clip(lines[1]+" "+lines[2], small, width)}
	}
	return small, lines
}

func (s *StatusLine) draw(size fyne.Size) []fyne.CanvasObject {
	p := penFor(s)
	objects := []fyne.CanvasObject{
		p.block(stateGround(s.state), fyne.NewPos(0, 0), size),
		p.block(ColorRule, fyne.NewPos(0, 0), fyne.NewSize(size.Width, 1)),
	}
	if s.text == "" {
		return objects
	}
	x := 2 * p.inner()
	large := s.large()
	middle := func(height float32) float32 { return (size.Height - height) / 2 }
	if icon := StateIcon(s.state); icon != nil {
		side := p.size(theme.SizeNameInlineIcon)
		objects = append(objects, p.icon(icon, fyne.NewPos(x, middle(side)), side))
		x += side + p.inner()
	}
	if word := s.word(); word != "" {
		l := lettering{size: SizeStatus, color: stateInk(s.state), style: bold}
		text := p.write(word, l, fyne.NewPos(x, middle(p.lineHeight(large))))
		objects = append(objects, text)
		x += text.Size().Width + 2*p.inner()
	}
	l, lines := s.lines(p, size.Width-x-p.inner())
	y := middle(float32(len(lines)) * p.lineHeight(l))
	for _, line := range lines {
		objects = append(objects, p.write(line, l, fyne.NewPos(x, y)))
		y += p.lineHeight(l)
	}
	return objects
}
