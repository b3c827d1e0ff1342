package paperview

import (
	"strings"
	"tenthpoint/ui/apptheme"
	"tenthpoint/ui/model"
	"tenthpoint/ui/paint"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/theme"
)

// cardLayout sets type, from the top down: a line of a card, or running text.
type cardLayout struct {
	paint.Painter
	width   float32
	y       float32
	objects []fyne.CanvasObject
}

var (
	paperTitle = paint.TextStyle{Size: theme.SizeNameSubHeadingText, Color: apptheme.ColorPaperInk, Style: paint.Bold}
	PaperPlain = paint.TextStyle{Size: theme.SizeNameText, Color: apptheme.ColorPaperInk}
	PaperBold  = paint.TextStyle{Size: theme.SizeNameText, Color: apptheme.ColorPaperInk, Style: paint.Bold}
	PaperSmall = paint.TextStyle{Size: apptheme.SizeNote, Color: apptheme.ColorPaperQuiet}
	paperMiss  = paint.TextStyle{Size: theme.SizeNameText, Color: apptheme.ColorPaperMissingEdge, Style: paint.Bold}
)

func (s *cardLayout) margin() float32     { return 2 * s.Inner() }
func (s *cardLayout) leastWidth() float32 { return 30 * s.Measure("0", PaperPlain).Width }
func (s *cardLayout) right() float32      { return s.width - s.margin() }
func (s *cardLayout) room() float32       { return s.width - 2*s.margin() }

// leading is the line spacing. A sheet of figures is set closer than running text, as on paper.
func (s *cardLayout) leading(l paint.TextStyle) float32 {
	return paint.Floor(s.Measure("0", l).Height*0.93 + 0.5)
}

// drop is the offset that puts text of another size on the baseline of a line of ordinary text.
func (s *cardLayout) drop(l paint.TextStyle) float32 {
	return paint.Floor((s.leading(PaperPlain)-s.leading(l))*0.8 + 0.5)
}

func (s *cardLayout) add(o ...fyne.CanvasObject) { s.objects = append(s.objects, o...) }

// set adds one line across the card, and its note.
func (s *cardLayout) set(line model.CardLine) {
	switch line.Kind {
	case model.CardTotal:
		s.noted(line, PaperBold)
		return
	case model.CardTitle:
		s.title(line)
	case model.CardMiddle:
		s.middle(line.Left, PaperPlain)
	case model.CardText:
		s.pair(model.CardLine{Left: line.Left}, PaperPlain)
	case model.CardSmall:
		s.pair(line, PaperSmall)
	case model.CardRule:
		s.rule()
	case model.CardGap:
		s.y += paint.Floor(s.leading(PaperPlain) / 2)
	case model.CardMark:
		s.marked(line)
	case model.CardHeading:
		s.heading(line.Left, s.leading(PaperPlain)/4)
	default:
		s.noted(line, PaperPlain)
		return
	}
	s.note(line)
}

// noted sets a pair with its note beside the left part where that has room,
// else below.
func (s *cardLayout) noted(line model.CardLine, l paint.TextStyle) {
	left := s.Measure(line.Left, l).Width + 2*s.Inner()
	need := left + s.Measure(line.Note, PaperSmall).Width + 2*s.Inner() + s.Measure(line.Right, l).Width
	top := s.y
	s.pair(line, l)
	if line.Note != "" && need <= s.room() && !strings.Contains(line.Note, "\n") {
		s.add(s.Write(line.Note, PaperSmall, fyne.NewPos(s.margin()+left, top+s.drop(PaperSmall))))
		return
	}
	s.note(line)
}

// heading is the title of a part, and a line after it to the edge.
func (s *cardLayout) heading(text string, above float32) {
	s.y += paint.Floor(above)
	s.add(s.Write(text, PaperSmall, fyne.NewPos(s.margin(), s.y)))
	left := s.margin() + s.Measure(text, PaperSmall).Width + s.Inner()
	if left < s.right() {
		s.add(s.Block(apptheme.ColorPaperRule, fyne.NewPos(left, s.y+paint.Floor(s.leading(PaperSmall)*0.55)), fyne.NewSize(s.right()-left, 1)))
	}
	s.y += s.leading(PaperSmall) + 1
}

// title is large and centered; with a right part it is a pair if both fit.
func (s *cardLayout) title(line model.CardLine) {
	right := s.Measure(line.Right, paperTitle).Width
	if line.Right == "" || s.Measure(line.Left, paperTitle).Width+2*s.Inner()+right > s.room() {
		s.middle(line.Left, paperTitle)
		s.middle(line.Right, paperTitle)
		return
	}
	s.pair(model.CardLine{Left: line.Left, Right: line.Right}, paperTitle)
}

// pair writes a label at the left and a figure at the right. A long label wraps; the figure is on
// its first line. A figure that takes more than half the line and leaves no room goes below,
// wrapped.
func (s *cardLayout) pair(line model.CardLine, l paint.TextStyle) {
	right := s.Measure(line.Right, l).Width
	if right > s.room()/2 && s.Measure(line.Left, l).Width+2*s.Inner()+right > s.room() && line.Left != "" {
		s.pair(model.CardLine{Left: line.Left}, l)
		for _, text := range s.Wrap(line.Right, l, s.room()-2*s.Inner()) {
			s.add(s.WriteEnding(text, l, s.right(), s.y))
			s.y += s.leading(l)
		}
		return
	}
	if line.Right != "" {
		s.add(s.WriteEnding(line.Right, l, s.right(), s.y))
		right += 2 * s.Inner()
	}
	lines := s.Wrap(line.Left, l, s.room()-right)
	for i, text := range lines {
		s.add(s.Write(text, l, fyne.NewPos(s.margin(), s.y+float32(i)*s.leading(l))))
	}
	s.y += float32(max(1, len(lines))) * s.leading(l)
}

// marked lays a tint and a bar under a pair, and an icon before its right part.
// A long left part wraps, as in any pair.
func (s *cardLayout) marked(line model.CardLine) {
	s.y += 2
	one := s.leading(paperMiss)
	side := one - 4
	word := s.WriteEnding(line.Right, paperMiss, s.right(), s.y+1)
	at := fyne.NewPos(word.Position().X-side-s.Pad(), s.y+3)
	left := s.Wrap(line.Left, PaperPlain, at.X-s.Pad()-s.margin())
	height := float32(max(1, len(left)))*one + 2
	s.add(s.Block(apptheme.ColorPaperMissing, fyne.NewPos(s.margin()/2, s.y), fyne.NewSize(s.width-s.margin(), height)),
		s.Block(apptheme.ColorPaperMissingEdge, fyne.NewPos(s.margin()/2, s.y), fyne.NewSize(s.Size(apptheme.SizeMark), height)))
	for i, text := range left {
		s.add(s.Write(text, PaperPlain, fyne.NewPos(s.margin(), s.y+1+float32(i)*one)))
	}
	s.add(word, s.Icon(theme.NewColoredResource(apptheme.IconWarn, apptheme.ColorPaperMissingEdge), at, side))
	s.y += height + 1
}

func (s *cardLayout) middle(text string, l paint.TextStyle) {
	for _, line := range s.Wrap(text, l, s.room()) {
		s.add(s.WriteMiddle(line, l, s.width/2, s.y))
		s.y += s.leading(l)
	}
}

func (s *cardLayout) rule() {
	s.y += s.Pad()
	s.add(s.Block(apptheme.ColorPaperRule, fyne.NewPos(s.margin(), s.y), fyne.NewSize(s.room(), 1)))
	s.y += 1 + s.Pad()
}

// note sets a line's Note below it, a little indented.
func (s *cardLayout) note(line model.CardLine) {
	for _, text := range s.Wrap(line.Note, PaperSmall, s.room()-2*s.Inner()) {
		s.add(s.Write(text, PaperSmall, fyne.NewPos(s.margin()+2*s.Inner(), s.y)))
		s.y += s.leading(PaperSmall)
	}
}
