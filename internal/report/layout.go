package report

import (
	"bytes"
	"time"

	"tenthpoint/internal/message"
	"tenthpoint/internal/paper"
	"tenthpoint/internal/paper/pdf"
)

// PDF renders the document as a PDF. The same document on the same paper gives the same bytes.
func (d Document) PDF(p Page) ([]byte, error) {
	var out bytes.Buffer
	if err := pdf.Write(&out, d.Layout(p)); err != nil {
		return nil, message.Errorf("the paper %q cannot be set: %w", d.Title.String(), err)
	}
	return out.Bytes(), nil
}

// margin is the margin at each side.
const margin = 36 * pt

// sheet is a document being set.
type sheet struct {
	*paper.Flow
	doc     Document
	say     *message.Printer
	pending []paper.Block // laid out, not yet placed: a heading waits for the part below it
}

// Layout sets the document on pages.
func (d Document) Layout(p Page) paper.Layout {
	width, height := p.size()
	s := &sheet{doc: d, say: d.forPeople()}
	s.Flow = paper.NewFlow(paper.Frame{
		Width: width, Height: height, Side: margin, Top: margin,
		Bottom: margin + s.footHeight(width), Running: smallStyle.Leading() + 7*pt,
	})
	s.Add(s.head())
	for i := 0; i < len(d.Blocks); i++ {
		if s.pairOfCharts(d.Blocks[i:]) {
			i++
			continue
		}
		s.block(d.Blocks[i])
	}
	s.flush()
	for n := range s.Pages {
		if n > 0 {
			var page paper.Marks
			s.runningHead(&page)
			page.Put(0, 0, s.Pages[n])
			s.Pages[n] = page
		}
		s.foot(&s.Pages[n], s.say.Say("page %d of %d", n+1, len(s.Pages)))
	}
	return paper.Layout{Title: s.say.Text(d.Title), Made: d.made(), Width: width, Height: height, Pages: s.Pages}
}

// made is the date in the file. A document without one has the first day of
// the century, so that it still comes out the same each time.
func (d Document) made() time.Time {
	if d.Made.IsZero() {
		return time.Date(2000, time.January, 1, 0, 0, 0, 0, time.UTC)
	}
	return d.Made.UTC()
}

// put takes blocks to be placed with those that follow.
func (s *sheet) put(blocks ...paper.Block) { s.pending = append(s.pending, blocks...) }

// flush places the pending blocks.
func (s *sheet) flush() {
	s.Add(s.pending...)
	s.pending = nil
}
