package report

import (
	"strings"

	"tenthpoint/internal/message"
	"tenthpoint/internal/paper"
)

// head is the elevator, the title and the marks on the first page.
func (s *sheet) head() (b paper.Block) {
	b = s.marks()
	y := paper.Length(0)
	for i, line := range s.doc.House {
		look := smallStyle
		if i == 0 {
			look = houseStyle
		}
		y += b.Paragraph(0, y, []string{line}, look)
	}
	y += 4 * pt
	b.Line(0, y, s.Room(), y, 0.9*pt, black)
	y += 6 * pt
	y += b.Paragraph(0, y, wrap(s.say.Text(s.doc.Title), s.Room(), titleStyle), titleStyle)
	y += b.Paragraph(0, y, wrap(s.say.Text(s.doc.About), s.Room(), aboutStyle), aboutStyle)
	b.Height = y + 2*pt
	return b
}

// marks are framed at the top right, where they are easy to see.
func (s *sheet) marks() (b paper.Block) {
	y := paper.Length(0)
	for _, mark := range texts(s.say, s.doc.Marks) {
		w := markStyle.Width(mark)
		b.Box(s.Room()-w-10*pt, y-3*pt, w+10*pt, markStyle.Leading()+4*pt, noInk, black)
		b.Text(s.Room()-w-5*pt, y+markStyle.Baseline(), mark, markStyle)
		y += markStyle.Leading() + 7*pt
	}
	return b
}

// runningHead is one line of the head, on every page but the first.
func (s *sheet) runningHead(m *paper.Marks) {
	look := smallStyle.Strong()
	marks := strings.Join(texts(s.say, s.doc.Marks), "   ")
	about := s.say.Text(message.List(", ", s.doc.Title, s.doc.About))
	if look.Width(about)+look.Width(marks)+10*pt > s.Right()-margin { // the title alone where not all has room
		about = s.say.Text(s.doc.Title)
	}
	m.Text(margin, margin+look.Baseline(), about, look)
	m.TextEnding(s.Right(), margin+look.Baseline(), marks, look)
	y := margin + look.Leading() + 2*pt
	m.Line(margin, y, s.Right(), y, 0.5*pt, black)
}

func (s *sheet) footLines(width paper.Length) []string {
	return wrap(s.say.Text(s.doc.Footer), width-2*margin-70*pt, footStyle)
}

func (s *sheet) footHeight(width paper.Length) paper.Length {
	return paper.Length(len(s.footLines(width)))*footStyle.Leading() + 6*pt
}

// foot is drawn last, when the number of pages is known.
func (s *sheet) foot(m *paper.Marks, number string) {
	y := s.Foot() + 6*pt
	m.Line(margin, y-2*pt, s.Right(), y-2*pt, 0.4*pt, paper.Grey(120))
	m.TextEnding(s.Right(), y+footStyle.Baseline(), number, footStyle)
	m.Paragraph(margin, y, s.footLines(s.Width), footStyle)
}
