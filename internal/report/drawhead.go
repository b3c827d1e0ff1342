package report

import "strings"

var (
	housePen = pen{size: 11, bold: true}
	titlePen = pen{size: 15, bold: true}
	aboutPen = pen{size: 10}
	markPen  = pen{size: 9.5, bold: true}
	footPen  = pen{size: 7, grey: 70}
)

// head is the elevator, the title and the marks on the first page, and one
// line of them on the others.
func (s *sheet) head() {
	if len(s.pages) > 1 {
		s.runningHead()
		return
	}
	left := margin
	s.marks()
	for i, line := range s.doc.House {
		p := smallPen
		if i == 0 {
			p = housePen
		}
		s.write(left, s.y, line, p)
		s.y += p.lead()
	}
	s.y += 4
	s.line(left, s.y, s.right(), s.y, 0.9, 0)
	s.y += 6
	for _, l := range s.wrap(s.doc.Title, s.room(), titlePen) {
		s.write(left, s.y, l, titlePen)
		s.y += titlePen.lead()
	}
	for _, l := range s.wrap(s.doc.About, s.room(), aboutPen) {
		s.write(left, s.y, l, aboutPen)
		s.y += aboutPen.lead()
	}
	s.y += 2
}

// marks stand framed at the top right, where they cannot be overlooked.
func (s *sheet) marks() {
	y := margin
	for _, mark := range s.doc.Marks {
		w := s.measure(mark, markPen)
		s.frame(s.right()-w-10, y-3, w+10, markPen.lead()+4)
		s.write(s.right()-w-5, y, mark, markPen)
		y += markPen.lead() + 7
	}
}

func (s *sheet) runningHead() {
	p := smallPen
	s.write(margin, s.y, strings.TrimSuffix(s.doc.Title+", "+s.doc.About, ", "), p.strong())
	s.writeRight(s.right(), s.y, strings.Join(s.doc.Marks, "   "), p.strong())
	s.y += p.lead() + 2
	s.line(margin, s.y, s.right(), s.y, 0.5, 0)
	s.y += 5
}

// top is where a page's own matter begins.
func (s *sheet) top() float64 {
	if len(s.pages) > 1 {
		return margin + smallPen.lead() + 7
	}
	return 0 // the first page is never taken for fresh
}

func (s *sheet) footLines() []string {
	return s.wrap(s.doc.Footer, s.room()-70, footPen)
}

func (s *sheet) footHeight() float64 {
	return float64(len(s.footLines()))*footPen.lead() + 6
}

// foot is inked when it is known how many pages there are.
func (s *sheet) foot(number string) {
	y := s.height - margin - s.footHeight() + 6
	s.pdf.SetDrawColor(120, 120, 120)
	s.pdf.SetLineWidth(0.4)
	s.pdf.Line(margin, y-2, s.right(), y-2)
	s.letter(s.right()-s.measure(number, footPen), y, number, footPen)
	for _, line := range s.footLines() {
		if line != "" {
			s.letter(margin, y, line, footPen)
		}
		y += footPen.lead()
	}
}
