// Package typeset sets a ticket's document: on the pages of a PDF, on the label of
// a sample, and as plain text for a roll or a terminal. It measures letters itself,
// so that the same document always gives the same bytes.
package typeset

import (
	"fmt"
	"io"
	"time"

	"tenthpoint/internal/fonts"
	"tenthpoint/internal/scaleticket"

	"codeberg.org/go-pdf/fpdf"
)

// Size is a size of paper.
type Size int

// The sizes a slip is printed on, upright.
const (
	HalfLetter Size = iota // 5.5 x 8.5 inches
	A5                     // 148 x 210 mm
)

func (s Size) width() float64 {
	if s == A5 {
		return 419.53
	}
	return 396
}

func (s Size) height() float64 {
	if s == A5 {
		return 595.28
	}
	return 612
}

// Options change what a PDF holds.
type Options struct {
	// NoWorking leaves the working out, as for a copy that stays in the truck.
	NoWorking bool
}

// PDF draws the document on pages of the size. The same document gives the same
// bytes.
func PDF(w io.Writer, d scaleticket.Document, size Size, o Options) error {
	p := newPDF(size.width(), size.height(), d.Running, d.Made)
	drawSlip(p, d, size, o)
	if err := p.pdf.Output(w); err != nil {
		return fmt.Errorf("%s cannot be made a PDF: %w", d.Running, err)
	}
	return nil
}

// pdfCanvas draws on the pages of a PDF.
type pdfCanvas struct{ pdf *fpdf.Fpdf }

const family = "slip"

func newPDF(width, height float64, title string, made time.Time) pdfCanvas {
	p := fpdf.NewCustom(&fpdf.InitType{UnitStr: "pt", Size: fpdf.SizeType{Wd: width, Ht: height}})
	p.SetAutoPageBreak(false, 0)
	p.SetCatalogSort(true)
	p.SetCreationDate(made)
	p.SetModificationDate(made)
	p.SetProducer("Tenthpoint", true)
	p.SetTitle(title, true)
	p.AddUTF8FontFromBytes(family, "", fonts.Regular)
	p.AddUTF8FontFromBytes(family, "B", fonts.Bold)
	return pdfCanvas{p}
}

func (p pdfCanvas) page() { p.pdf.AddPage() }

func (p pdfCanvas) text(x, baseline float64, line string, s style) {
	p.letters(s)
	p.pdf.Text(x, baseline, shown(line, s.face()))
}

func (p pdfCanvas) letters(s style) {
	weight := ""
	if s.bold {
		weight = "B"
	}
	p.pdf.SetFont(family, weight, s.size)
	p.pdf.SetTextColor(s.ink.red, s.ink.green, s.ink.blue)
}

func (p pdfCanvas) line(x1, y1, x2, y2, width float64, k ink) {
	p.pdf.SetLineWidth(width)
	p.pdf.SetDrawColor(k.red, k.green, k.blue)
	p.pdf.Line(x1, y1, x2, y2)
}

func (p pdfCanvas) box(x, y, w, h float64, fill, edge ink) {
	how := ""
	if fill.on {
		p.pdf.SetFillColor(fill.red, fill.green, fill.blue)
		how = "F"
	}
	if edge.on {
		p.pdf.SetLineWidth(0.7)
		p.pdf.SetDrawColor(edge.red, edge.green, edge.blue)
		how += "D"
	}
	if how != "" {
		p.pdf.Rect(x, y, w, h, how)
	}
}

func (p pdfCanvas) across(word string, s style, width, height float64) {
	x, y := width/2, height*0.56
	p.pdf.TransformBegin()
	p.pdf.TransformRotate(52, x, y)
	p.text(x-s.width(word)/2, y+s.size*0.36, word, s)
	p.pdf.TransformEnd()
}
