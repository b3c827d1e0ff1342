package widgets

import (
	"tenthpoint/ui/apptheme"
	"tenthpoint/ui/model"
	"tenthpoint/ui/paint"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"
)

// StatusLine repeats the result of every act in one sentence, large enough to
// read while looking elsewhere. The state's word comes before the sentence.
type StatusLine struct {
	widget.BaseWidget
	words Words
	state model.State
	text  string
}

// NewStatusLine makes an empty status line that speaks some words.
func NewStatusLine(words Words) *StatusLine {
	s := &StatusLine{words: words}
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
		return s.words.StatusOK
	case model.Warn, model.Missing:
		return s.words.StatusWarn
	case model.Stop:
		return s.words.StatusStop
	case model.Wait:
		return s.words.StatusWait
	default:
		return ""
	}
}

// CreateRenderer draws the line.
func (s *StatusLine) CreateRenderer() fyne.WidgetRenderer { return paint.NewDrawing(s) }

func (s *StatusLine) large() paint.TextStyle {
	return paint.TextStyle{Size: apptheme.SizeStatus, Color: apptheme.ColorInk}
}

func (s *StatusLine) LeastSize() fyne.Size {
	p := paint.PainterFor(s)
	height := max(p.LineHeight(s.large())+p.Inner(), 2*p.LineHeight(paint.TextStyle{Size: apptheme.SizeNote})+2)
	return fyne.NewSize(height*8, height+p.Pad())
}

// lines chooses the text size: large on one line, or small on two when the sentence is long.
func (s *StatusLine) lines(p paint.Painter, width float32) (paint.TextStyle, []string) {
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

func (s *StatusLine) Paint(size fyne.Size) []fyne.CanvasObject {
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

// Badge shows a state: icon, word and colour on a tinted background.
type Badge struct {
	widget.BaseWidget
	state model.State
	word  string
}

// NewBadge makes a badge.
func NewBadge(state model.State, word string) *Badge {
	b := &Badge{state: state, word: word}
	b.ExtendBaseWidget(b)
	return b
}

// Say sets the state and word of the badge.
func (b *Badge) Say(state model.State, word string) {
	if b.state != state || b.word != word {
		b.state, b.word = state, word
		b.Refresh()
	}
}

// State is the state shown now.
func (b *Badge) State() model.State { return b.state }

// Word is the word shown now.
func (b *Badge) Word() string { return b.word }

// CreateRenderer draws the badge.
func (b *Badge) CreateRenderer() fyne.WidgetRenderer { return paint.NewDrawing(b) }

func (b *Badge) textStyle() paint.TextStyle {
	return paint.TextStyle{Size: apptheme.SizeNote, Color: apptheme.StateInk(b.state), Style: paint.Bold}
}

func (b *Badge) iconRoom(p paint.Painter) float32 {
	if apptheme.StateIcon(b.state) == nil {
		return 0
	}
	return p.LineHeight(b.textStyle()) + p.Pad()
}

func (b *Badge) LeastSize() fyne.Size {
	p := paint.PainterFor(b)
	text := p.Measure(b.word, b.textStyle())
	return fyne.NewSize(text.Width+b.iconRoom(p)+2*p.Inner(), text.Height+p.Inner())
}

func (b *Badge) Paint(size fyne.Size) []fyne.CanvasObject {
	p := paint.PainterFor(b)
	l := b.textStyle()
	least := b.LeastSize()
	y := (size.Height - least.Height) / 2
	ground := p.Block(apptheme.StateGround(b.state), fyne.NewPos(0, y), least)
	ground.CornerRadius = p.Size(theme.SizeNameInputRadius)
	ground.StrokeColor, ground.StrokeWidth = p.Color(apptheme.StateInk(b.state)), 1
	objects := []fyne.CanvasObject{ground}
	if icon := apptheme.StateIcon(b.state); icon != nil {
		objects = append(objects, p.Icon(icon, fyne.NewPos(p.Inner(), y+p.Inner()/2+1), p.LineHeight(l)-2))
	}
	at := fyne.NewPos(p.Inner()+b.iconRoom(p), y+p.Inner()/2)
	return append(objects, p.Write(b.word, l, at))
}
