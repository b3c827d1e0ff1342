package report

import (
	"tenthpoint/internal/textwrap"
)

// pen is how words are set: size in points, grey from 0 (black) to 255.
type pen struct {
	size float64
	bold bool
	grey int
}

var (
	plainPen = pen{size: 9}
	smallPen = pen{size: 7.5, grey: 70}
)

// lead is the distance from one line to the next.
func (p pen) lead() float64 { return p.size * 1.28 }

func (p pen) style() string {
	if p.bold {
		return "B"
	}
	return ""
}

func (p pen) strong() pen { p.bold = true; return p }

// measure is the width of a text in points. Widths grow with the size, so each
// text is measured once.
func (s *sheet) measure(text string, p pen) float64 {
	const at = 100
	l := lettering{text, p.bold}
	w, known := s.measured[l]
	if !known {
		s.pdf.SetFont(face, p.style(), at)
		w = s.pdf.GetStringWidth(text)
		s.measured[l] = w
	}
	return w * p.size / at
}

// write puts a text with its left end at x and its line beginning at y.
func (s *sheet) write(x, y float64, text string, p pen) {
	if text == "" {
		return
	}
	s.ink(func() { s.letter(x, y, text, p) })
}

// letter is write without waiting.
func (s *sheet) letter(x, y float64, text string, p pen) {
	s.pdf.SetFont(face, p.style(), p.size)
	s.pdf.SetTextColor(p.grey, p.grey, p.grey)
	s.pdf.Text(x, y+p.size, text)
}

// writeRight puts a text with its right end at x.
func (s *sheet) writeRight(x, y float64, text string, p pen) {
	s.write(x-s.measure(text, p), y, text, p)
}

// writeMiddle puts a text with its middle at x.
func (s *sheet) writeMiddle(x, y float64, text string, p pen) {
	s.write(x-s.measure(text, p)/2, y, text, p)
}

func (s *sheet) line(x1, y1, x2, y2, thick float64, grey int) {
	s.ink(func() {
		s.pdf.SetDrawColor(grey, grey, grey)
		s.pdf.SetLineWidth(thick)
		s.pdf.Line(x1, y1, x2, y2)
	})
}

// fill fills a rectangle, or frames it.
func (s *sheet) fill(x, y, w, h float64, grey int) {
	s.ink(func() {
		s.pdf.SetFillColor(grey, grey, grey)
		s.pdf.Rect(x, y, w, h, "F")
	})
}

func (s *sheet) frame(x, y, w, h float64) {
	s.ink(func() {
		s.pdf.SetDrawColor(0, 0, 0)
		s.pdf.SetLineWidth(0.9)
		s.pdf.Rect(x, y, w, h, "D")
	})
}

// wrap breaks a text at spaces into lines no wider than width; a word wider than
// that is broken where it must be. No text is one empty line.
func (s *sheet) wrap(text string, width float64, p pen) []string {
	fits := func(line string) bool { return s.measure(line, p) <= width }
	return orEmptyLine(textwrap.Broken(textwrap.Fields(text), fits))
}
