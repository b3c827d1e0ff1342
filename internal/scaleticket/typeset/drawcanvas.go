package typeset

// canvas is what a slip is drawn on: a PDF, or in tests a record of what was
// drawn where. Lengths are in points, 72 to the inch, from the top left.
type canvas interface {
	page()
	// text writes one line; baseline is the foot of its letters.
	text(x, baseline float64, line string, s style)
	line(x1, y1, x2, y2, width float64, k ink)
	box(x, y, w, h float64, fill, edge ink)
	// across sets a word slantwise over the middle of the page.
	across(word string, s style, width, height float64)
}

// ink is a colour; the zero ink leaves no mark.
type ink struct {
	red, green, blue int
	on               bool
}

// A slip has to come out of any printer, so every ink is told apart in grey as
// well.
var (
	noInk = ink{}
	black = ink{22, 26, 30, true}
	quiet = ink{92, 98, 104, true}
	hair  = ink{176, 182, 188, true}
	white = ink{255, 255, 255, true}
	veil  = ink{216, 221, 222, true}
	tint  = ink{240, 243, 242, true}
	leaf  = ink{28, 84, 66, true}
	stop  = ink{168, 40, 28, true}
	faint = ink{250, 222, 216, true}
	ghost = ink{236, 239, 240, true}
)

// The letters of a slip.
var (
	nameStyle   = style{size: 13, bold: true, ink: black}
	numberStyle = style{size: 23, bold: true, ink: black}
	figureStyle = style{size: 17, bold: true, ink: black}
	unitStyle   = style{size: 8.5, bold: true, ink: quiet}
	plainStyle  = style{size: 7.9, ink: black}
	strongStyle = style{size: 7.9, bold: true, ink: black}
	factStyle   = style{size: 6.6, ink: quiet}
	noteStyle   = style{size: 6.3, ink: quiet}
	titleStyle  = style{size: 6.4, bold: true, ink: leaf}
	labelStyle  = style{size: 6.0, ink: quiet}
	markStyle   = style{size: 7.0, bold: true, ink: black}
)

// textRight writes a line that ends at x.
func textRight(c canvas, x, baseline float64, line string, s style) {
	c.text(x-s.width(line), baseline, line, s)
}

// paragraph writes lines one under the other and gives the height they took.
func paragraph(c canvas, x, y float64, lines []string, s style) float64 {
	for i, line := range lines {
		c.text(x, y+float64(i)*s.leading()+s.baseline(), line, s)
	}
	return float64(len(lines)) * s.leading()
}

// chip draws a word in a frame, to be noticed, and gives its width. Its top is
// at y.
func chip(c canvas, x, y float64, word string, s style, fill, edge ink) float64 {
	w := chipWidth(word, s)
	c.box(x, y, w, chipHeight(s), fill, edge)
	c.text(x+s.size*0.6, y+s.size*1.1, word, s)
	return w
}

func chipWidth(word string, s style) float64 { return s.width(word) + s.size*1.2 }

func chipHeight(s style) float64 { return s.size * 1.5 }
