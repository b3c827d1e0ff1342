package typeset

import (
	"sync"

	"tenthpoint/internal/fonts"
	"tenthpoint/internal/textwrap"

	"golang.org/x/image/font"
	"golang.org/x/image/font/sfnt"
	"golang.org/x/image/math/fixed"
)

// face knows how wide letters are. It is read from the same file that goes into
// the PDF, once, so that a slip is laid out without asking whatever draws it.
type face struct {
	mu     sync.Mutex
	font   *sfnt.Font
	buffer sfnt.Buffer
	widths map[rune]float64 // in parts of the letter size; below zero: no such letter
}

var (
	regular = sync.OnceValue(func() *face { return newFace(fonts.Regular) })
	bold    = sync.OnceValue(func() *face { return newFace(fonts.Bold) })
)

// newFace reads a font of the program's own; one that cannot be read is a
// broken build.
func newFace(file []byte) *face {
	f, err := sfnt.Parse(file)
	if err != nil {
		panic("typeset: " + err.Error())
	}
	return &face{font: f, widths: map[rune]float64{}}
}

// finest is the size letters are measured at, so that nothing is lost by
// rounding to the font's own grid.
const finest = 1000

func (f *face) advance(r rune) float64 {
	f.mu.Lock()
	defer f.mu.Unlock()
	if w, known := f.widths[r]; known {
		return w
	}
	w := -1.0
	glyph, err := f.font.GlyphIndex(&f.buffer, r)
	if err == nil && glyph != 0 && r <= 0xFFFF {
		if a, err := f.font.GlyphAdvance(&f.buffer, glyph, fixed.I(finest), font.HintingNone); err == nil {
			w = float64(a) / 64 / finest
		}
	}
	f.widths[r] = w
	return w
}

// style is how letters look.
type style struct {
	size float64 // in points
	bold bool
	ink  ink
}

func (s style) face() *face {
	if s.bold {
		return bold()
	}
	return regular()
}

// in is the same style in another ink.
func (s style) in(k ink) style {
	s.ink = k
	return s
}

// sized is the same style in another size.
func (s style) sized(size float64) style {
	s.size = size
	return s
}

// leading is the height of a line set in the style.
func (s style) leading() float64 { return s.size * 1.22 }

// baseline is how far below the top of its line the letters stand.
func (s style) baseline() float64 { return s.size * 0.95 }

// width is how wide a text is, in points.
func (s style) width(text string) float64 {
	f, sum := s.face(), 0.0
	for _, r := range shown(text, f) {
		sum += f.advance(r)
	}
	return sum * s.size
}

// wrap breaks text into lines no wider than width points.
func (s style) wrap(text string, width float64) []string {
	return textwrap.Broken(textwrap.Words(text), func(line string) bool { return s.width(line) <= width })
}

// fitted is the style made smaller until a text is no wider than width, but
// not below least.
func (s style) fitted(text string, width, least float64) style {
	if w := s.width(text); w > width {
		s.size = max(least, s.size*width/w)
	}
	return s
}

// shown is the text as the face can show it: letters it does not have become
// question marks, so that what is missing can be seen.
func shown(text string, f *face) string {
	out := make([]rune, 0, len(text))
	for _, r := range text {
		if f.advance(r) < 0 {
			r = '?'
		}
		out = append(out, r)
	}
	return string(out)
}
