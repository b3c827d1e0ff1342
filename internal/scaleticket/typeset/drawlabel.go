package typeset

import (
	"fmt"
	"image"
	"io"

	"tenthpoint/internal/scaleticket"
)

// A label is 2 1/4 by 1 1/4 inches.
const (
	labelWidth  = 162.0
	labelHeight = 90.0
	labelMargin = 8.0
)

var (
	labelNumber = style{size: 15, bold: true, ink: black}
	labelStrong = style{size: 7.5, bold: true, ink: black}
	labelPlain  = style{size: 6.2, ink: black}
	labelTitle  = style{size: 5.6, bold: true, ink: black}
)

// Label draws a label on paper of 2 1/4 by 1 1/4 inches. The same label gives
// the same bytes.
func Label(w io.Writer, l scaleticket.Label) error {
	p := newPDF(labelWidth, labelHeight, l.Title+" "+l.Number, l.Made)
	drawLabel(p, l)
	if err := p.pdf.Output(w); err != nil {
		return fmt.Errorf("the label of sample %s cannot be made a PDF: %w", l.Number, err)
	}
	return nil
}

// drawLabel sets number and date large, the barcode under them, and what the
// sample is at the foot.
func drawLabel(c canvas, l scaleticket.Label) {
	c.page()
	right := labelWidth - labelMargin
	room := right - labelMargin
	head := scaleticket.Joined(", ", l.Title, l.Business)
	c.text(labelMargin, 13, head, labelTitle.fitted(head, room, 3))

	until := labelStrong.fitted(l.Until, room*0.5, 4)
	number := labelNumber.fitted(l.Number, room-until.width(l.Until)-8, 6)
	c.text(labelMargin, 28, l.Number, number)
	textRight(c, right, 28, l.Until, until)

	barcode(c, 33, 24, l.Bars)
	y := 65.0
	for _, line := range append(l.Lines, l.Mark) {
		c.text(labelMargin, y, line, labelPlain.fitted(line, room, 3))
		y += 8
	}
}

// quietModules is how many modules must stay empty at each side of a Code 128
// barcode.
const quietModules = 10

// barcode draws a code of bars across the label, as wide as its quiet zones
// allow.
func barcode(c canvas, y, height float64, code image.Image) {
	b := code.Bounds()
	module := labelWidth / float64(b.Dx()+2*quietModules)
	x := quietModules * module
	for col := b.Min.X; col < b.Max.X; col++ {
		if run := darkRun(code, col, b.Min.Y); run > 0 {
			c.box(x+float64(col-b.Min.X)*module, y, float64(run)*module, height, black, noInk)
			col += run
		}
	}
}
