package paper

import "tenthpoint/internal/textwrap"

// Length is a distance on paper in thousandths of a point; an inch has 72 points.
type Length int

// Point is one point: 7.9*Point.
const Point = 1000

// Ink is a colour; the zero Ink leaves no mark.
type Ink struct {
	Red, Green, Blue uint8
	On               bool
}

// Colour is an ink by its three parts, 0 to 255.
func Colour(red, green, blue uint8) Ink { return Ink{red, green, blue, true} }

// Grey is an ink between black (0) and white (255).
func Grey(level uint8) Ink { return Colour(level, level, level) }

// Style is the font, size and colour of text.
type Style struct {
	Size Length
	Bold bool
	Ink  Ink
	// Lead is the distance between lines in thousandths of the size; 0 is [PlainLead].
	Lead Length
}

// PlainLead is the default line spacing, for columns of figures; LooseLead that of running text and
// tables.
const (
	PlainLead Length = 1220
	LooseLead Length = 1280
)

// Leading is the height of a line set in the style.
func (s Style) Leading() Length { return s.Size * s.lead() / 1000 }

// Baseline returns the distance of the baseline from the top of the line.
func (s Style) Baseline() Length { return s.Size * (s.lead() - 275) / 1000 }

func (s Style) lead() Length {
	if s.Lead == 0 {
		return PlainLead
	}
	return s.Lead
}

// In is the same style in another ink.
func (s Style) In(k Ink) Style { s.Ink = k; return s }

// Sized is the same style in another size.
func (s Style) Sized(size Length) Style { s.Size = size; return s }

// Strong is the same style in bold letters.
func (s Style) Strong() Style { s.Bold = true; return s }

// Width returns the width of a text.
func (s Style) Width(text string) Length {
	f, sum := faceOf(s.Bold), 0
	for _, r := range text {
		sum += f.advance(r)
	}
	return s.scaled(sum)
}

// scaled is a number of the font's own units in this size.
func (s Style) scaled(units int) Length {
	return Length((units*int(s.Size) + unitsPerEm/2) / unitsPerEm)
}

// Wrap breaks text into lines no wider than width. A figure and its unit stay
// together; a word wider than a line is broken.
func (s Style) Wrap(text string, width Length) []string {
	return textwrap.Broken(textwrap.Words(text), func(line string) bool { return s.Width(line) <= width })
}

// Fitted is the style made smaller until a text is no wider than width, but not
// below least.
func (s Style) Fitted(text string, width, least Length) Style {
	if w := s.Width(text); w > width {
		s.Size = max(least, s.Size*width/w)
	}
	return s
}

// Shown replaces letters the fonts lack with question marks, so that missing ones can be seen.
func Shown(text string, bold bool) string {
	f := faceOf(bold)
	for _, r := range text {
		if !f.has(r) {
			return f.replaced(text)
		}
	}
	return text
}
