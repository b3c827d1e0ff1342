package sheet

import (
	"io"

	"tenthpoint/internal/message"
	"tenthpoint/internal/paper"
	"tenthpoint/internal/paper/pdf"
	"tenthpoint/internal/scaleticket"
)

// A label is 2 1/4 by 1 1/4 inches.
const (
	labelWidth  = 162 * paper.Point
	labelHeight = 90 * paper.Point
	labelMargin = 8 * paper.Point
)

var (
	labelNumber = paper.Style{Size: 15 * paper.Point, Bold: true, Ink: black}
	labelStrong = paper.Style{Size: 7.5 * paper.Point, Bold: true, Ink: black}
	labelPlain  = paper.Style{Size: 6.2 * paper.Point, Ink: black}
	labelTitle  = paper.Style{Size: 5.6 * paper.Point, Bold: true, Ink: black}
)

// Label writes a label as a PDF of 2 1/4 by 1 1/4 inches. The same label gives
// the same bytes.
func Label(w io.Writer, l scaleticket.Label) error {
	if err := pdf.Write(w, LabelLayout(l)); err != nil {
		return message.Storage.Errorf("the label of %s cannot be made a PDF: %w", l.Number, err)
	}
	return nil
}

// LabelLayout sets number and date large, the barcode under them, and what the
// sample is at the foot.
func LabelLayout(l scaleticket.Label) paper.Layout {
	const right, room = labelWidth - labelMargin, labelWidth - 2*labelMargin
	var m paper.Marks
	head := scaleticket.Joined(", ", l.Title, l.Business)
	m.Text(labelMargin, 13*paper.Point, head, labelTitle.Fitted(head, room, 3*paper.Point))

	until := labelStrong.Fitted(l.Until, room/2, 4*paper.Point)
	number := labelNumber.Fitted(l.Number, room-until.Width(l.Until)-8*paper.Point, 6*paper.Point)
	m.Text(labelMargin, 28*paper.Point, l.Number, number)
	m.TextEnding(right, 28*paper.Point, l.Until, until)

	bars(&m, 33*paper.Point, 24*paper.Point, l)
	y := paper.Length(65 * paper.Point)
	for _, line := range append(l.Lines, l.Mark) {
		m.Text(labelMargin, y, line, labelPlain.Fitted(line, room, 3*paper.Point))
		y += 8 * paper.Point
	}
	return paper.Layout{Title: l.Title + " " + l.Number, Made: l.Made, Width: labelWidth, Height: labelHeight, Pages: []paper.Marks{m}}
}

// quietModules is the width of the quiet zone at each side of a Code 128 barcode, in modules.
const quietModules = 10

// bars draws the number as a barcode across the label, as wide as its quiet zones
// allow.
func bars(m *paper.Marks, y, height paper.Length, l scaleticket.Label) {
	code := paper.NewCode(l.Bars, l.Number)
	module := labelWidth / paper.Length(code.Columns+2*quietModules)
	m.Picture(quietModules*module, y, module*paper.Length(code.Columns), height, code)
}
