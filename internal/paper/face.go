package paper

import (
	"strings"
	"sync"

	"tenthpoint/internal/fonts"

	"golang.org/x/image/font"
	"golang.org/x/image/font/sfnt"
	"golang.org/x/image/math/fixed"
)

// unitsPerEm is the font units per em of the fonts of papers.
const unitsPerEm = 2048

// lastLetter is the last letter that the fonts of papers may have.
const lastLetter = 0x2FFF

// face is a parsed font. It is read once and never changed.
type face struct {
	widths [lastLetter + 1]int16 // in units of the font; below zero: no such letter
	glyphs [lastLetter + 1]uint16
}

var (
	regular = sync.OnceValue(func() *face { return newFace(fonts.Regular) })
	bold    = sync.OnceValue(func() *face { return newFace(fonts.Bold) })
)

func faceOf(isBold bool) *face {
	if isBold {
		return bold()
	}
	return regular()
}

// newFace reads a font of the program's own; one that cannot be read is a broken
// build.
func newFace(file []byte) *face {
	f, err := sfnt.Parse(file)
	if err != nil || f.UnitsPerEm() != unitsPerEm {
		panic("paper: the font of papers cannot be used")
	}
	var buffer sfnt.Buffer
	out := &face{}
	for r := range out.widths {
		out.widths[r] = -1
		glyph, err := f.GlyphIndex(&buffer, rune(r))
		if err != nil || glyph == 0 {
			continue
		}
		if a, err := f.GlyphAdvance(&buffer, glyph, fixed.I(unitsPerEm), font.HintingNone); err == nil {
			out.widths[r], out.glyphs[r] = int16(a>>6), uint16(glyph) // 64 to a unit
		}
	}
	return out
}

func (f *face) has(r rune) bool { return r >= 0 && r <= lastLetter && f.widths[r] >= 0 }

// advance is the width of a letter, or of the question mark that is printed for it.
func (f *face) advance(r rune) int {
	if f.has(r) {
		return int(f.widths[r])
	}
	return int(f.widths['?'])
}

func (f *face) replaced(text string) string {
	return strings.Map(func(r rune) rune {
		if f.has(r) {
			return r
		}
		return '?'
	}, text)
}

// Letters calls yield for every letter of a face: the glyph that shows it, and its
// width in thousandths of the letters' size.
func Letters(isBold bool, yield func(r rune, glyph uint16, width int)) {
	f := faceOf(isBold)
	for r, units := range f.widths {
		if units >= 0 {
			yield(rune(r), f.glyphs[r], (int(units)*1000+unitsPerEm/2)/unitsPerEm)
		}
	}
}
