package paperview

import (
	"slices"
	"tenthpoint/internal/scaleticket"
	"tenthpoint/ui/apptheme"
	"tenthpoint/ui/paint"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/theme"
)

// together is how many of the next lines of a sheet stand side by side.
func (s *pageLayout) together(lines []scaleticket.PaperLine) int {
	first, rest := lines[0], lines[1:]
	beside := func(kind scaleticket.PaperKind) int {
		return alike(rest, func(l scaleticket.PaperLine) bool { return l.Kind == kind && l.Beside })
	}
	switch {
	case first.Kind == scaleticket.PaperFigure:
		return 1 + alike(rest, func(l scaleticket.PaperLine) bool {
			return l.Kind == scaleticket.PaperFigure || l.Kind == scaleticket.PaperMissing && l.Beside
		})
	case !first.Beside:
		return 1
	case first.Kind == scaleticket.PaperMiddle || first.Kind == scaleticket.PaperMark:
		return 1 + beside(first.Kind)
	case first.Kind == scaleticket.PaperPicture:
		return 1 + beside(scaleticket.PaperSmall)
	case len(rest) > 0 && s.share(first, rest[0]):
		return 2
	}
	return 1
}

// share reports whether two facts have room side by side.
func (s *pageLayout) share(one, other scaleticket.PaperLine) bool {
	return isPair(one) && isPair(other) && other.Beside && s.factWidth(one)+s.between()+s.factWidth(other) <= s.room()
}

// alike is how many lines from the first on are of a sort.
func alike(lines []scaleticket.PaperLine, of func(scaleticket.PaperLine) bool) int {
	n := 0
	for n < len(lines) && of(lines[n]) {
		n++
	}
	return n
}

func isPair(l scaleticket.PaperLine) bool {
	return l.Kind == scaleticket.PaperPair || l.Kind == scaleticket.PaperTotal || l.Kind == scaleticket.PaperMissing
}

// row sets lines that stand side by side, or one alone.
func (s *pageLayout) row(lines []scaleticket.PaperLine) {
	switch first := lines[0]; {
	case first.Kind == scaleticket.PaperFigure:
		s.figures(lines)
	case first.Beside && first.Kind == scaleticket.PaperMiddle:
		s.strung(lines)
	case first.Kind == scaleticket.PaperPicture && len(lines) > 1:
		s.foot(first, lines[1:])
	case first.Beside && first.Kind == scaleticket.PaperMark:
		s.badges(lines)
	case first.Beside && isPair(first) && s.factWidth(first) <= s.room():
		s.facts(lines)
	default:
		s.set(first)
	}
}

// between is the least room between two facts side by side.
func (s *pageLayout) between() float32 { return 3 * s.Inner() }

// factLetters are those of a fact's value.
func factLetters(l scaleticket.PaperLine) paint.TextStyle {
	switch l.Kind {
	case scaleticket.PaperTotal, scaleticket.PaperFigure:
		return PaperBold
	case scaleticket.PaperMissing:
		return paperMiss
	}
	return PaperPlain
}

// factWidth is the room a fact needs on one line, with its note.
func (s *pageLayout) factWidth(l scaleticket.PaperLine) float32 {
	width := s.Measure(l.Left, PaperSmall).Width + s.Inner() + s.Measure(l.Right, factLetters(l)).Width
	if l.Note != "" {
		width += s.Measure(l.Note, PaperSmall).Width + 2*s.Inner()
	}
	if l.Kind == scaleticket.PaperMissing {
		width += s.leading(PaperPlain)
	}
	return width
}

// facts sets one fact across the sheet, or two side by side: in halves, or
// where a half is too narrow for one of them with more room for that one.
func (s *pageLayout) facts(lines []scaleticket.PaperLine) {
	high := s.leading(PaperPlain)
	if slices.ContainsFunc(lines, func(l scaleticket.PaperLine) bool { return l.Kind == scaleticket.PaperMissing }) {
		high += 3
	}
	if len(lines) == 1 {
		s.fact(lines[0], s.margin(), s.right())
	} else {
		half := (s.room() - s.between()) / 2
		left := min(max(half, s.factWidth(lines[0])), s.room()-s.between()-s.factWidth(lines[1]))
		s.fact(lines[0], s.margin(), paint.Floor(s.margin()+left))
		s.fact(lines[1], paint.Floor(s.margin()+left+s.between()), s.right())
	}
	s.y += high
}

// fact writes the name of a fact small, and what it is so that it ends at right.
func (s *pageLayout) fact(l scaleticket.PaperLine, left, right float32) {
	top := s.y
	if l.Kind == scaleticket.PaperMissing {
		s.tint(left, right, s.y+1)
		top++
	}
	small := fyne.NewPos(left, top+s.drop(PaperSmall))
	s.add(s.Write(l.Left, PaperSmall, small))
	if l.Note != "" {
		s.add(s.Write(l.Note, PaperSmall, small.AddXY(s.Measure(l.Left, PaperSmall).Width+2*s.Inner(), 0)))
	}
	value := s.WriteEnding(l.Right, factLetters(l), right, top)
	s.add(value)
	if l.Kind == scaleticket.PaperMissing {
		side := s.leading(PaperPlain) - 4
		s.add(s.Icon(theme.NewColoredResource(apptheme.IconMissing, apptheme.ColorPaperMissingEdge), fyne.NewPos(value.Position().X-side-s.Pad()/2, top+3), side))
	}
}

// tint lays the ground of what is missing under a stretch of a line, with a
// bar at its left.
func (s *pageLayout) tint(left, right, top float32) {
	at, high := fyne.NewPos(left-s.Inner(), top), s.leading(PaperPlain)+1
	s.add(s.Block(apptheme.ColorPaperMissing, at, fyne.NewSize(right-left+2*s.Inner(), high)),
		s.Block(apptheme.ColorPaperMissingEdge, at, fyne.NewSize(s.Size(apptheme.SizeMark), high)))
}

// strung sets short lines in the middle, one after another with a dot between.
func (s *pageLayout) strung(lines []scaleticket.PaperLine) {
	line := ""
	for _, l := range lines {
		longer := l.Left
		if line != "" {
			longer = line + " · " + l.Left
		}
		if line != "" && s.Measure(longer, PaperSmall).Width > s.room() {
			s.middle(line, PaperSmall)
			longer = l.Left
		}
		line = longer
	}
	s.middle(line, PaperSmall)
}

// figures sets the figures people look for first side by side, each under its
// name, between two rules: in the largest letters that leave room between
// them, or where none do as pairs.
func (s *pageLayout) figures(lines []scaleticket.PaperLine) {
	s.y += s.Pad()
	s.add(s.Block(apptheme.ColorPaperInk, fyne.NewPos(s.margin(), s.y), fyne.NewSize(s.room(), 2)))
	s.y += 2 + s.Pad()/2
	if !s.figuresIn(paperTitle, lines) && !s.figuresIn(PaperBold, lines) && !s.figuresIn(paperFine, lines) {
		for _, l := range lines {
			s.pair(l, factLetters(l))
		}
	}
	s.y += s.Pad() / 2
	s.add(s.Block(apptheme.ColorPaperRule, fyne.NewPos(s.margin(), s.y), fyne.NewSize(s.room(), 1)))
	s.y++
}

// figuresIn sets figures in some letters, spread over the sheet, if they fit.
func (s *pageLayout) figuresIn(letters paint.TextStyle, lines []scaleticket.PaperLine) bool {
	widths := make([]float32, len(lines))
	free := s.room()
	for i, l := range lines {
		widths[i] = max(s.Measure(l.Left, PaperSmall).Width, s.Measure(l.Right, letters).Width)
		free -= widths[i]
	}
	between := free
	if len(lines) > 1 {
		between = free / float32(len(lines)-1)
	}
	if between < 2*s.Inner() {
		return false
	}
	left, value := s.margin(), s.y+s.leading(PaperSmall)
	for i, l := range lines {
		look := letters
		if l.Kind == scaleticket.PaperMissing {
			look.Color = apptheme.ColorPaperMissingEdge
			s.add(s.Block(apptheme.ColorPaperMissing, fyne.NewPos(left-s.Pad(), s.y), fyne.NewSize(widths[i]+2*s.Pad(), s.leading(PaperSmall)+s.leading(letters)+1)))
		}
		s.add(s.Write(l.Left, PaperSmall, fyne.NewPos(left, s.y)), s.Write(l.Right, look, fyne.NewPos(left, value)))
		left += widths[i] + between
	}
	s.y = value + s.leading(letters)
	return true
}

// badges sets words that must be noticed side by side in the middle, as many to
// a row as fit.
func (s *pageLayout) badges(lines []scaleticket.PaperLine) {
	var row []scaleticket.PaperLine
	width := float32(0)
	for _, l := range lines {
		one := s.badgeWidth(l) + s.Inner()
		if len(row) > 0 && width+one-s.Inner() > s.room() {
			s.badgeRow(row, width-s.Inner())
			row, width = nil, 0
		}
		row, width = append(row, l), width+one
	}
	s.badgeRow(row, width-s.Inner())
}

func (s *pageLayout) badgeWidth(l scaleticket.PaperLine) float32 {
	return s.Measure(l.Left, paperNotice).Width + s.leading(PaperPlain) + 2*s.Inner()
}

func (s *pageLayout) badgeRow(lines []scaleticket.PaperLine, width float32) {
	high := s.leading(PaperPlain) + 2
	left := paint.Floor(s.width/2 - width/2)
	s.y += s.Pad() / 2
	for _, l := range lines {
		wide := s.badgeWidth(l)
		side := s.leading(PaperPlain) - 4
		s.add(s.Block(apptheme.ColorPaperMissing, fyne.NewPos(left, s.y), fyne.NewSize(wide, high)),
			s.Block(apptheme.ColorPaperMissingEdge, fyne.NewPos(left, s.y), fyne.NewSize(s.Size(apptheme.SizeMark), high)),
			s.Icon(theme.NewColoredResource(apptheme.IconWarn, apptheme.ColorPaperMissingEdge), fyne.NewPos(left+s.Inner(), s.y+3), side),
			s.Write(l.Left, paperNotice, fyne.NewPos(left+s.Inner()+side+s.Pad(), s.y+paint.Floor((high-s.Measure(l.Left, paperNotice).Height)/2+0.5))))
		left += wide + s.Inner()
	}
	s.y += high + s.Pad()/2
}
