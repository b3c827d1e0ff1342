package kit

import (
	"tenthpoint/internal/slip"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/theme"
)

// figures sets the figures people look for first side by side, each under its
// name, between two rules: in the largest letters that leave room between
// them, or where none do as pairs.
func (s *setting) figures(lines []slip.PaperLine) {
	s.y += s.pad()
	s.add(s.block(ColorPaperInk, fyne.NewPos(s.margin(), s.y), fyne.NewSize(s.room(), 2)))
	s.y += 2 + s.pad()/2
	if !s.figuresIn(paperTitle, lines) && !s.figuresIn(paperBold, lines) && !s.figuresIn(paperFine, lines) {
		for _, l := range lines {
			s.pair(l, factLetters(l))
		}
	}
	s.y += s.pad() / 2
	s.add(s.block(ColorPaperRule, fyne.NewPos(s.margin(), s.y), fyne.NewSize(s.room(), 1)))
	s.y++
}

// figuresIn sets figures in some letters, spread over the sheet, if they fit.
func (s *setting) figuresIn(letters lettering, lines []slip.PaperLine) bool {
	widths := make([]float32, len(lines))
	free := s.room()
	for i, l := range lines {
		widths[i] = max(s.measure(l.Left, paperSmall).Width, s.measure(l.Right, letters).Width)
		free -= widths[i]
	}
	between := free
	if len(lines) > 1 {
		between = free / float32(len(lines)-1)
	}
	if between < 2*s.inner() {
		return false
	}
	left, value := s.margin(), s.y+s.leading(paperSmall)
	for i, l := range lines {
		look := letters
		if l.Kind == slip.PaperMissing {
			look.color = ColorPaperMissingEdge
			s.add(s.block(ColorPaperMissing, fyne.NewPos(left-s.pad(), s.y), fyne.NewSize(widths[i]+2*s.pad(), s.leading(paperSmall)+s.leading(letters)+1)))
		}
		s.add(s.write(l.Left, paperSmall, fyne.NewPos(left, s.y)), s.write(l.Right, look, fyne.NewPos(left, value)))
		left += widths[i] + between
	}
	s.y = value + s.leading(letters)
	return true
}

// badges sets words that must be noticed side by side in the middle, as many to
// a row as fit.
func (s *setting) badges(lines []slip.PaperLine) {
	var row []slip.PaperLine
	width := float32(0)
	for _, l := range lines {
		one := s.badgeWidth(l) + s.inner()
		if len(row) > 0 && width+one-s.inner() > s.room() {
			s.badgeRow(row, width-s.inner())
			row, width = nil, 0
		}
		row, width = append(row, l), width+one
	}
	s.badgeRow(row, width-s.inner())
}

func (s *setting) badgeWidth(l slip.PaperLine) float32 {
	return s.measure(l.Left, paperNotice).Width + s.leading(paperPlain) + 2*s.inner()
}

func (s *setting) badgeRow(lines []slip.PaperLine, width float32) {
	high := s.leading(paperPlain) + 2
	left := floor(s.width/2 - width/2)
	s.y += s.pad() / 2
	for _, l := range lines {
		wide := s.badgeWidth(l)
		side := s.leading(paperPlain) - 4
		s.add(s.block(ColorPaperMissing, fyne.NewPos(left, s.y), fyne.NewSize(wide, high)),
			s.block(ColorPaperMissingEdge, fyne.NewPos(left, s.y), fyne.NewSize(s.size(SizeMark), high)),
			s.icon(theme.NewColoredResource(iconWarn, ColorPaperMissingEdge), fyne.NewPos(left+s.inner(), s.y+3), side),
			s.write(l.Left, paperNotice, fyne.NewPos(left+s.inner()+side+s.pad(), s.y+floor((high-s.measure(l.Left, paperNotice).Height)/2+0.5))))
		left += wide + s.inner()
	}
	s.y += high + s.pad()/2
}
