// Package sheet sets a ticket's document: on the pages it is printed on and shown as
// in the window, on the label of a sample, and as plain text for a roll or a terminal.
package sheet

import (
	"fmt"
	"io"

	"tenthpoint/internal/message"
	"tenthpoint/internal/paper"
	"tenthpoint/internal/paper/pdf"
	"tenthpoint/internal/scaleticket"
)

// Size is a size of paper.
type Size int

// The sizes a slip is printed on, upright.
const (
	HalfLetter Size = iota // 5.5 x 8.5 inches
	A5                     // 148 x 210 mm
)

func (s Size) width() paper.Length {
	if s == A5 {
		return 419.53 * paper.Point
	}
	return 396 * paper.Point
}

func (s Size) height() paper.Length {
	if s == A5 {
		return 595.28 * paper.Point
	}
	return 612 * paper.Point
}

// Options change what is on the pages.
type Options struct {
	// NoWorking leaves the working out, as for a copy that stays in the truck.
	NoWorking bool
}

// PDF writes the document on pages of the size. The same document gives the same
// bytes.
func PDF(w io.Writer, d scaleticket.Document, size Size, o Options) error {
	if err := pdf.Write(w, Layout(d, size, o)); err != nil {
		return message.Storage.Errorf("%s cannot be made a PDF: %w", d.Running, err)
	}
	return nil
}

// The frame of a page.
const (
	sideMargin   = 27 * paper.Point
	topMargin    = 21 * paper.Point
	bottomMargin = 23 * paper.Point
	runningSpace = 15 * paper.Point // for the running head of the pages after the first
	gutter       = 58 * paper.Point // the column of section titles
)

// slip is a ticket being set.
type slip struct {
	*paper.Flow
	doc   scaleticket.Document
	scale paper.Length // in thousandths
}

// squeezes are the scales a slip may be set at, in thousandths. Figures, signatures
// and code belong on the first page: a slip that is a little too long for it is set
// smaller, but never so small that it is hard to read.
var squeezes = []paper.Length{1000, 970, 940, 910, 880, 860}

// Layout sets the document at the largest scale that brings the signatures to the
// first page; where none does, at full size.
func Layout(d scaleticket.Document, size Size, o Options) paper.Layout {
	code := codeOf(d)
	for _, scale := range squeezes {
		if s := begun(d, size, scale); s.body(code) {
			return s.end(size, o)
		}
	}
	s := begun(d, size, 1000)
	s.body(code)
	return s.end(size, o)
}

func begun(d scaleticket.Document, size Size, scale paper.Length) *slip {
	return &slip{doc: d, scale: scale, Flow: paper.NewFlow(paper.Frame{
		Width: size.width() * 1000 / scale, Height: size.height() * 1000 / scale,
		Side: sideMargin, Top: topMargin, Bottom: bottomMargin, Running: runningSpace,
	})}
}

// body places everything but the working, and reports whether it takes one page.
func (s *slip) body(code *paper.Code) bool {
	set := squareOf(code, s.scale)
	for _, part := range s.doc.Sections {
		switch part.Form {
		case scaleticket.Letterhead:
			number, _ := s.doc.Section("number")
			s.Add(letterhead(s.doc, part, number, s.Room())...)
		case scaleticket.Facts:
			s.Add(paper.Tie(facts(part, s.Room()))...)
		case scaleticket.Figures:
			s.Add(headline(part, s.Room()))
		case scaleticket.Ledger:
			s.Add(paper.Tie(ledger(part, s.Room()))...)
		case scaleticket.Signing:
			s.Add(signing(part, s.doc, set, s.Room()))
		}
	}
	return len(s.Pages) == 1
}

// end places the working, then the marks of every page.
func (s *slip) end(size Size, o Options) paper.Layout {
	for _, part := range s.doc.Sections {
		if part.Form == scaleticket.SmallPrint && !o.NoWorking {
			s.working(part)
		}
	}
	for n := range s.Pages {
		s.stamp(&s.Pages[n])
		if len(s.Pages) > 1 {
			s.running(&s.Pages[n], n)
		}
		if s.scale != 1000 {
			s.Pages[n].Scale(s.scale)
		}
	}
	return paper.Layout{Title: s.doc.Running, Made: s.doc.Made, Width: size.width(), Height: size.height(), Pages: s.Pages}
}

// running draws the page number, and from the second page on the running head.
func (s *slip) running(m *paper.Marks, n int) {
	m.TextEnding(s.Right(), s.Foot()+12*paper.Point, fmt.Sprintf(s.doc.PageOf, n+1, len(s.Pages)), noteStyle)
	if n > 0 {
		m.Text(sideMargin, topMargin+noteStyle.Baseline(), s.doc.Running, noteStyle)
		m.Line(sideMargin, topMargin+9*paper.Point, s.Right(), topMargin+9*paper.Point, 0.4*paper.Point, hair)
	}
}

// stamp sets a word across the page, under everything else, as large as the
// slant of the page allows.
func (s *slip) stamp(m *paper.Marks) {
	if s.doc.Stamp == "" {
		return
	}
	look := paper.Style{Size: 150 * paper.Point, Bold: true, Ink: faint}
	if s.doc.Preview {
		look.Ink = ghost
	}
	m.Stamp = &paper.Stamp{Text: s.doc.Stamp, Style: look.Fitted(s.doc.Stamp, paper.StampRoom(s.Width, s.Height), 10*paper.Point)}
}
