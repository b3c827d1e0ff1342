package kit

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/theme"
)

// setting sets the type of a sheet of paper, line by line from the top.
type setting struct {
	pen
	width   float32
	y       float32
	objects []fyne.CanvasObject
}

var (
	paperTitle = lettering{size: theme.SizeNameSubHeadingText, color: ColorPaperInk, style: bold}
	paperPlain = lettering{size: theme.SizeNameText, color: ColorPaperInk}
	paperBold  = lettering{size: theme.SizeNameText, color: ColorPaperInk, style: bold}
	paperSmall = lettering{size: SizeNote, color: ColorPaperQuiet}
	paperMiss  = lettering{size: theme.SizeNameText, color: ColorPaperMissingEdge, style: bold}
	paperStamp = lettering{size: theme.SizeNameHeadingText, color: ColorPaperStop, style: bold}
)

func (s *setting) margin() float32     { return 2 * s.inner() }
func (s *setting) leastWidth() float32 { return 30 * s.measure("0", paperPlain).Width }
func (s *setting) right() float32      { return s.width - s.margin() }
func (s *setting) room() float32       { return s.width - 2*s.margin() }

func (s *setting) add(o ...fyne.CanvasObject) { s.objects = append(s.objects, o...) }

func (s *setting) setAll(lines []PaperLine) {
	s.y = s.margin()
	for _, line := range lines {
		s.set(line)
		s.note(line)
	}
}

func (s *setting) set(line PaperLine) {
	switch line.Kind {
	case PaperTotal:
		s.pair(line, paperBold)
	case PaperTitle:
		s.middle(line.Left, paperTitle)
	case PaperMiddle:
		s.middle(line.Left, paperPlain)
	case PaperText:
		s.pair(PaperLine{Left: line.Left}, paperPlain)
	case PaperSmall:
		s.pair(line, paperSmall)
	case PaperRule:
		s.rule()
	case PaperGap:
		s.y += s.lineHeight(paperPlain) / 2
	case PaperMissing:
		s.marked(line, Missing)
	case PaperMark:
		s.marked(line, Warn)
	case PaperStamp:
		s.stamp(line.Left)
	case PaperPicture:
		s.picture(line)
	default:
		s.pair(line, paperPlain)
	}
}

// pair writes what at the left and how much at the right. A long left part
// wraps; the right part stands on its first line. A right part that takes more
// than half the line and leaves no room stands beneath, wrapped.
func (s *setting) pair(line PaperLine, l lettering) {
	right := s.measure(line.Right, l).Width
	if right > s.room()/2 && s.measure(line.Left, l).Width+2*s.inner()+right > s.room() && line.Left != "" {
		s.pair(PaperLine{Left: line.Left}, l)
		for _, text := range s.wrap(line.Right, l, s.room()-2*s.inner()) {
			s.add(s.writeEnding(text, l, s.right(), s.y))
			s.y += s.lineHeight(l)
		}
		return
	}
	if line.Right != "" {
		s.add(s.writeEnding(line.Right, l, s.right(), s.y))
		right += 2 * s.inner()
	}
	lines := s.wrap(line.Left, l, s.room()-right)
	for i, text := range lines {
		s.add(s.write(text, l, fyne.NewPos(s.margin(), s.y+float32(i)*s.lineHeight(l))))
	}
	s.y += float32(max(1, len(lines))) * s.lineHeight(l)
}

// marked lays a tint and a bar under a pair, and an icon before its right part.
// A long left part wraps, as in any pair.
func (s *setting) marked(line PaperLine, state State) {
	one := s.lineHeight(paperMiss)
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
	if state == Warn {
		icon = iconWarn
	}
	s.add(word, s.icon(theme.NewColoredResource(icon, ColorPaperMissingEdge), at, side))
	s.y += height + 1
}

func (s *setting) middle(text string, l lettering) {
	for _, line := range s.wrap(text, l, s.room()) {
		s.add(s.writeMiddle(line, l, s.width/2, s.y))
		s.y += s.lineHeight(l)
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

func (s *setting) picture(line PaperLine) {
	side := 6 * s.lineHeight(paperPlain)
	if line.Picture != nil {
		img := canvas.NewImageFromImage(line.Picture)
		img.ScaleMode, img.FillMode = canvas.ImageScalePixels, canvas.ImageFillContain
		img.Resize(fyne.NewSquareSize(floor(side)))
		img.Move(whole(fyne.NewPos((s.width-side)/2, s.y+s.pad())))
		s.add(img)
	}
	s.y += side + 2*s.pad()
	if line.Left != "" {
		s.middle(line.Left, paperSmall)
	}
}

// note says beneath a line what Note holds, a little indented.
func (s *setting) note(line PaperLine) {
	for _, text := range s.wrap(line.Note, paperSmall, s.room()-2*s.inner()) {
		s.add(s.write(text, paperSmall, fyne.NewPos(s.margin()+2*s.inner(), s.y)))
		s.y += s.lineHeight(paperSmall)
	}
}
