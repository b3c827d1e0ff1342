package typeset

import (
	"image"

	"tenthpoint/internal/scaleticket"
)

// squeezes are the scales a slip may be set at. Figures, signatures and code
// belong on the first page: a slip that is a little too long for it is set
// smaller, but never so small that it is hard to read.
var squeezes = []float64{1, 0.97, 0.94, 0.91, 0.88}

// arrange lays the document out at the largest scale that brings the signatures
// to the first page; where none does, at full size.
func arrange(d scaleticket.Document, size Size, o Options) *layout {
	code := qrPicture(d)
	for _, k := range squeezes {
		if l := newLayout(size, k); l.body(d, code) == 1 {
			l.end(d, o)
			return l
		}
	}
	l := newLayout(size, 1)
	l.body(d, code)
	l.end(d, o)
	return l
}

// body places everything but the working and gives the page it ends on.
func (l *layout) body(d scaleticket.Document, code image.Image) int {
	for _, s := range d.Sections {
		switch s.Form {
		case scaleticket.Letterhead:
			number, _ := d.Section("number")
			l.add(letterhead(d, s, number, l.width())...)
		case scaleticket.Facts:
			l.add(tie(facts(s, l.width()))...)
		case scaleticket.Figures:
			l.add(headline(s, l.width()))
		case scaleticket.Ledger:
			l.add(tie(ledger(s, l.width()))...)
		case scaleticket.Signing:
			l.add(signing(s, d, code, l.width()))
		}
	}
	return len(l.pages)
}

// end places the working.
func (l *layout) end(d scaleticket.Document, o Options) {
	for _, s := range d.Sections {
		if s.Form == scaleticket.SmallPrint && !o.NoWorking {
			l.smallPrint(s)
		}
	}
}

// scaled draws on another canvas at a scale.
type scaled struct {
	canvas
	scale float64
}

func (c scaled) text(x, baseline float64, line string, s style) {
	c.canvas.text(x*c.scale, baseline*c.scale, line, s.sized(s.size*c.scale))
}

func (c scaled) line(x1, y1, x2, y2, width float64, k ink) {
	c.canvas.line(x1*c.scale, y1*c.scale, x2*c.scale, y2*c.scale, width, k)
}

func (c scaled) box(x, y, w, h float64, fill, edge ink) {
	c.canvas.box(x*c.scale, y*c.scale, w*c.scale, h*c.scale, fill, edge)
}

func (c scaled) across(word string, s style, width, height float64) {
	c.canvas.across(word, s.sized(s.size*c.scale), width*c.scale, height*c.scale)
}
