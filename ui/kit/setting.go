package kit

import (
	"strings"
	"tenthpoint/internal/slip"
	"tenthpoint/ui/model"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/theme"
)

// setting sets type, from the top down: a row of a sheet, or running text.
type setting struct {
	pen
	width   float32
	y       float32
	objects []fyne.CanvasObject
}

var (
	paperTitle  = lettering{size: theme.SizeNameSubHeadingText, color: ColorPaperInk, style: bold}
	paperPlain  = lettering{size: theme.SizeNameText, color: ColorPaperInk}
	paperBold   = lettering{size: theme.SizeNameText, color: ColorPaperInk, style: bold}
	paperSmall  = lettering{size: SizeNote, color: ColorPaperQuiet}
	paperFine   = lettering{size: SizeNote, color: ColorPaperInk, style: bold}
	paperMiss   = lettering{size: theme.SizeNameText, color: ColorPaperMissingEdge, style: bold}
	paperNotice = lettering{size: SizeNote, color: ColorPaperMissingEdge, style: bold}
	paperStamp  = lettering{size: theme.SizeNameHeadingText, color: ColorPaperStop, style: bold}
)

func (s *setting) margin() float32     { return 2 * s.inner() }
func (s *setting) leastWidth() float32 { return 30 * s.measure("0", paperPlain).Width }
func (s *setting) right() float32      { return s.width - s.margin() }
func (s *setting) room() float32       { return s.width - 2*s.margin() }

// leading is how far down the next line stands. A sheet of figures is set
// closer than running text, as on paper.
func (s *setting) leading(l lettering) float32 { return floor(s.measure("0", l).Height*0.93 + 0.5) }

// drop is how far below a line of ordinary letters others begin that stand on
// the same base.
func (s *setting) drop(l lettering) float32 {
	return floor((s.leading(paperPlain)-s.leading(l))*0.8 + 0.5)
}

func (s *setting) add(o ...fyne.CanvasObject) { s.objects = append(s.objects, o...) }

// set sets one line across the sheet, and its note.
func (s *setting) set(line slip.PaperLine) {
	switch line.Kind {
	case slip.PaperTotal:
		s.noted(line, paperBold)
		return
	case slip.PaperTitle:
		s.title(line)
	case slip.PaperMiddle:
		s.middle(line.Left, paperPlain)
	case slip.PaperText:
		s.pair(slip.PaperLine{Left: line.Left}, paperPlain)
	case slip.PaperSmall:
		s.pair(line, paperSmall)
	case slip.PaperRule:
		s.rule()
	case slip.PaperGap:
		s.y += floor(s.leading(paperPlain) / 2)
	case slip.PaperMissing:
		s.marked(line, model.Missing)
	case slip.PaperMark:
		s.marked(line, model.Warn)
	case slip.PaperStamp:
		s.stamp(line.Left)
	case slip.PaperPicture:
		s.picture(line)
	case slip.PaperHeading:
		s.heading(line.Left, s.leading(paperPlain)/4)
	case slip.PaperFold:
		s.heading(line.Left, 2*s.leading(paperPlain))
	default:
		s.noted(line, paperPlain)
		return
	}
	s.note(line)
}

// noted sets a pair with its note beside the left part where that has room,
// else beneath.
func (s *setting) noted(line slip.PaperLine, l lettering) {
	left := s.measure(line.Left, l).Width + 2*s.inner()
	need := left + s.measure(line.Note, paperSmall).Width + 2*s.inner() + s.measure(line.Right, l).Width
	top := s.y
	s.pair(line, l)
	if line.Note != "" && need <= s.room() && !strings.Contains(line.Note, "\n") {
		s.add(s.write(line.Note, paperSmall, fyne.NewPos(s.margin()+left, top+s.drop(paperSmall))))
		return
	}
	s.note(line)
}

// heading is the title of a part, and a line after it to the edge.
func (s *setting) heading(text string, above float32) {
	s.y += floor(above)
	s.add(s.write(text, paperSmall, fyne.NewPos(s.margin(), s.y)))
	left := s.margin() + s.measure(text, paperSmall).Width + s.inner()
	if left < s.right() {
		s.add(s.block(ColorPaperRule, fyne.NewPos(left, s.y+floor(s.leading(paperSmall)*0.55)), fyne.NewSize(s.right()-left, 1)))
	}
	s.y += s.leading(paperSmall) + 1
}

// title is large, in the middle; with a right part it is a pair if both fit.
func (s *setting) title(line slip.PaperLine) {
	right := s.measure(line.Right, paperTitle).Width
	if line.Right == "" || s.measure(line.Left, paperTitle).Width+2*s.inner()+right > s.room() {
		s.middle(line.Left, paperTitle)
		s.middle(line.Right, paperTitle)
		return
	}
	s.pair(slip.PaperLine{Left: line.Left, Right: line.Right}, paperTitle)
}

// pair writes what at the left and how much at the right. A long left part
// wraps; the right part stands on its first line. A right part that takes more
// than half the line and leaves no room stands beneath, wrapped.
func (s *setting) pair(line slip.PaperLine, l lettering) {
	right := s.measure(line.Right, l).Width
	if right > s.room()/2 && s.measure(line.Left, l).Width+2*s.inner()+right > s.room() && line.Left != "" {
		s.pair(slip.PaperLine{Left: line.Left}, l)
		for _, text := range s.wrap(line.Right, l, s.room()-2*s.inner()) {
			s.add(s.writeEnding(text, l, s.right(), s.y))
			s.y += s.leading(l)
		}
		return
	}
	if line.Right != "" {
		s.add(s.writeEnding(line.Right, l, s.right(), s.y))
		right += 2 * s.inner()
	}
	lines := s.wrap(line.Left, l, s.room()-right)
	for i, text := range lines {
		s.add(s.write(text, l, fyne.NewPos(s.margin(), s.y+float32(i)*s.leading(l))))
	}
	s.y += float32(max(1, len(lines))) * s.leading(l)
}

// marked lays a tint and a bar under a pair, and an icon before its right part.
// A long left part wraps, as in any pair.
func (s *setting) marked(line slip.PaperLine, state model.State) {
	s.y += 2
	one := s.leading(paperMiss)
	side := one - 4
	word := s.writeEnding(line.Right, paperMiss, s.right(), s.y+1)
	at := fyne.NewPos(word.Position().X-side-s.pad(), s.y+3)
	left := s.wrap(line.Left, paperPlain, at.X-s.pad()-s.margin())
	height := float32(max(1, len(left)))*one + 2
	s.add(s.block(ColorPaperMissing, fyne.NewPos(s.margin()/2, s.y), fyne.NewSize(s.width-s.margin(), height)),
		s.block(ColorPaperMissingEdge, fyne.NewPos(s.margin()/2, s.y), fyne.NewSize(s.size(SizeMark), height)))
	for i, text := range left {
		s.add(s.write(text, paperPlain, fyne.NewPos(s.margin(), s.y+1+float32(i)*one)))
	}
	icon := iconMissing
	if state == model.Warn {
		icon = iconWarn
	}
	s.add(word, s.icon(theme.NewColoredResource(icon, ColorPaperMissingEdge), at, side))
	s.y += height + 1
}

func (s *setting) middle(text string, l lettering) {
	for _, line := range s.wrap(text, l, s.room()) {
		s.add(s.writeMiddle(line, l, s.width/2, s.y))
		s.y += s.leading(l)
	}
}

func (s *setting) rule() {
	s.y += s.pad()
	s.add(s.block(ColorPaperRule, fyne.NewPos(s.margin(), s.y), fyne.NewSize(s.room(), 1)))
	s.y += 1 + s.pad()
}

func (s *setting) stamp(text string) {
	size := s.measure(text, paperStamp).AddWidthHeight(4*s.inner(), s.inner())
	at := fyne.NewPos((s.width-size.Width)/2, s.y+2*s.pad())
	s.add(s.frame(ColorPaperStop, s.size(SizeMark), at, size),
		s.writeMiddle(text, paperStamp, s.width/2, at.Y+s.inner()/2))
	s.y += size.Height + 4*s.pad()
}

// note says beneath a line what Note holds, a little indented.
func (s *setting) note(line slip.PaperLine) {
	for _, text := range s.wrap(line.Note, paperSmall, s.room()-2*s.inner()) {
		s.add(s.write(text, paperSmall, fyne.NewPos(s.margin()+2*s.inner(), s.y)))
		s.y += s.leading(paperSmall)
	}
}
