package report

import (
	"bytes"
	"time"

	"codeberg.org/go-pdf/fpdf"

	"tenthpoint/internal/fonts"
	"tenthpoint/internal/i18n"
	"tenthpoint/internal/message"
)

// PDF sets the document on pages. The same document on the same paper gives the
// same bytes.
func (d Document) PDF(p Page) ([]byte, error) {
	say := i18n.In(d.Language)
	d = d.forPeople()
	s := newSheet(d, p)
	s.newPage()
	for i := 0; i < len(d.Blocks); i++ {
		if s.pairOfCharts(d.Blocks[i:]) {
			i++
			continue
		}
		s.block(d.Blocks[i], d.Blocks[i+1:])
	}
	for n, inks := range s.pages {
		s.pdf.AddPage()
		for _, ink := range inks {
			ink()
		}
		s.foot(say.Say("page %d of %d", n+1, len(s.pages)))
	}
	var out bytes.Buffer
	if err := s.pdf.Output(&out); err != nil {
		return nil, message.Errorf("the paper %q cannot be set: %w", d.Title, err)
	}
	return out.Bytes(), nil
}

// sizes of paper in points, upright.
var sizes = map[Paper]fpdf.SizeType{
	Letter: {Wd: 612, Ht: 792},
	A4:     {Wd: 595.28, Ht: 841.89},
}

const (
	face   = "paper"
	margin = 36.0
)

// sheet is a document being set: what goes on which page is found first and
// inked afterwards, when it is known how many pages there are.
type sheet struct {
	doc           Document
	pdf           *fpdf.Fpdf
	width, height float64
	floor         float64 // where the foot begins
	y             float64 // the pen, from the top
	pages         [][]func()
	measured      map[lettering]float64
}

// lettering is a text in a face.
type lettering struct {
	text string
	bold bool
}

func newSheet(d Document, p Page) *sheet {
	size, ok := sizes[p.Paper]
	if !ok {
		size = sizes[Letter]
	}
	if p.Landscape {
		size.Wd, size.Ht = size.Ht, size.Wd
	}
	pdf := fpdf.NewCustom(&fpdf.InitType{UnitStr: "pt", Size: size})
	pdf.SetCatalogSort(true)
	pdf.SetCreationDate(d.made())
	pdf.SetModificationDate(d.made())
	pdf.SetTitle(d.Title, true)
	pdf.SetAutoPageBreak(false, 0)
	pdf.SetMargins(0, 0, 0)
	pdf.AddUTF8FontFromBytes(face, "", fonts.Regular)
	pdf.AddUTF8FontFromBytes(face, "B", fonts.Bold)
	s := &sheet{doc: d, pdf: pdf, width: size.Wd, height: size.Ht, measured: map[lettering]float64{}}
	s.floor = s.height - margin - s.footHeight()
	return s
}

// made is the date in the file. A document without one has the first day of
// the century, so that it still comes out the same each time.
func (d Document) made() time.Time {
	if d.Made.IsZero() {
		return time.Date(2000, time.January, 1, 0, 0, 0, 0, time.UTC)
	}
	return d.Made.UTC()
}

func (s *sheet) right() float64 { return s.width - margin }

// room is the width between the margins.
func (s *sheet) room() float64 { return s.width - 2*margin }

// newPage begins a page with its head.
func (s *sheet) newPage() {
	s.pages = append(s.pages, nil)
	s.y = margin
	s.head()
}

// need begins a new page unless so much of this one is left.
func (s *sheet) need(height float64) {
	if s.y+height > s.floor && !s.fresh() {
		s.newPage()
	}
}

// fresh reports whether nothing stands on the page but its head.
func (s *sheet) fresh() bool { return s.y <= s.top() }

func (s *sheet) ink(draw func()) {
	last := len(s.pages) - 1
	s.pages[last] = append(s.pages[last], draw)
}
