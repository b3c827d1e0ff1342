package kit

import (
	"slices"
	"tenthpoint/internal/slip"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/theme"
)

// together is how many of the next lines of a sheet stand side by side.
func (s *setting) together(lines []slip.PaperLine) int {
	first, rest := lines[0], lines[1:]
	beside := func(kind slip.PaperKind) int {
		return alike(rest, func(l slip.PaperLine) bool { return l.Kind == kind && l.Beside })
	}
	switch {
	case first.Kind == slip.PaperFigure:
		return 1 + alike(rest, func(l slip.PaperLine) bool {
			return l.Kind == slip.PaperFigure || l.Kind == slip.PaperMissing && l.Beside
		})
	case !first.Beside:
		return 1
	case first.Kind == slip.PaperMiddle || first.Kind == slip.PaperMark:
		return 1 + beside(first.Kind)
	case first.Kind == slip.PaperPicture:
		return 1 + beside(slip.PaperSmall)
	case len(rest) > 0 && s.share(first, rest[0]):
		return 2
	}
	return 1
}

// share reports whether two facts have room side by side.
func (s *setting) share(one, other slip.PaperLine) bool {
	return isPair(one) && isPair(other) && other.Beside && s.factWidth(one)+s.between()+s.factWidth(other) <= s.room()
}

// alike is how many lines from the first on are of a sort.
func alike(lines []slip.PaperLine, of func(slip.PaperLine) bool) int {
	n := 0
	for n < len(lines) && of(lines[n]) {
		n++
	}
	return n
}

func isPair(l slip.PaperLine) bool {
	return l.Kind == slip.PaperPair || l.Kind == slip.PaperTotal || l.Kind == slip.PaperMissing
}

// row sets lines that stand side by side, or one alone.
func (s *setting) row(lines []slip.PaperLine) {
	switch first := lines[0]; {
	case first.Kind == slip.PaperFigure:
		s.figures(lines)
	case first.Beside && first.Kind == slip.PaperMiddle:
		s.strung(lines)
	case first.Kind == slip.PaperPicture && len(lines) > 1:
		s.foot(first, lines[1:])
	case first.Beside && first.Kind == slip.PaperMark:
		s.badges(lines)
	case first.Beside && isPair(first) && s.factWidth(first) <= s.room():
		s.facts(lines)
	default:
		s.set(first)
	}
}

// between is the least room between two facts side by side.
func (s *setting) between() float32 { return 3 * s.inner() }

// factLetters are those of a fact's value.
func factLetters(l slip.PaperLine) lettering {
	switch l.Kind {
	case slip.PaperTotal, slip.PaperFigure:
		return paperBold
	case slip.PaperMissing:
		return paperMiss
	}
	return paperPlain
}

// factWidth is the room a fact needs on one line, with its note.
func (s *setting) factWidth(l slip.PaperLine) float32 {
	width := s.measure(l.Left, paperSmall).Width + s.inner() + s.measure(l.Right, factLetters(l)).Width
	if l.Note != "" {
		width += s.measure(l.Note, paperSmall).Width + 2*s.inner()
	}
	if l.Kind == slip.PaperMissing {
		width += s.leading(paperPlain)
	}
	return width
}

// facts sets one fact across the sheet, or two side by side: in halves, or
// where a half is too narrow for one of them with more room for that one.
func (s *setting) facts(lines []slip.PaperLine) {
	high := s.leading(paperPlain)
	if slices.ContainsFunc(lines, func(l slip.PaperLine) bool { return l.Kind == slip.PaperMissing }) {
		high += 3
	}
	if len(lines) == 1 {
		s.fact(lines[0], s.margin(), s.right())
	} else {
		half := (s.room() - s.between()) / 2
		left := min(max(half, s.factWidth(lines[0])), s.room()-s.between()-s.factWidth(lines[1]))
		s.fact(lines[0], s.margin(), floor(s.margin()+left))
		s.fact(lines[1], floor(s.margin()+left+s.between()), s.right())
	}
	s.y += high
}

// fact writes the name of a fact small, and what it is so that it ends at right.
func (s *setting) fact(l slip.PaperLine, left, right float32) {
	top := s.y
	if l.Kind == slip.PaperMissing {
		s.tint(left, right, s.y+1)
		top++
	}
	small := fyne.NewPos(left, top+s.drop(paperSmall))
	s.add(s.write(l.Left, paperSmall, small))
	if l.Note != "" {
		s.add(s.write(l.Note, paperSmall, small.AddXY(s.measure(l.Left, paperSmall).Width+2*s.inner(), 0)))
	}
	value := s.writeEnding(l.Right, factLetters(l), right, top)
	s.add(value)
	if l.Kind == slip.PaperMissing {
		side := s.leading(paperPlain) - 4
		s.add(s.icon(theme.NewColoredResource(iconMissing, ColorPaperMissingEdge), fyne.NewPos(value.Position().X-side-s.pad()/2, top+3), side))
	}
}

// tint lays the ground of what is missing under a stretch of a line, with a
// bar at its left.
func (s *setting) tint(left, right, top float32) {
	at, high := fyne.NewPos(left-s.inner(), top), s.leading(paperPlain)+1
	s.add(s.block(ColorPaperMissing, at, fyne.NewSize(right-left+2*s.inner(), high)),
		s.block(ColorPaperMissingEdge, at, fyne.NewSize(s.size(SizeMark), high)))
}

// strung sets short lines in the middle, one after another with a dot between.
func (s *setting) strung(lines []slip.PaperLine) {
	line := ""
	for _, l := range lines {
		longer := l.Left
		if line != "" {
			longer = line + " · " + l.Left
		}
		if line != "" && s.measure(longer, paperSmall).Width > s.room() {
			s.middle(line, paperSmall)
			longer = l.Left
		}
		line = longer
	}
	s.middle(line, paperSmall)
}
