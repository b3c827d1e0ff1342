package sheet

import (
	"tenthpoint/internal/paper"
	"tenthpoint/internal/scaleticket"
)

// The working is set in two columns.
const (
	smallBetween = 14 * paper.Point
	smallIndent  = 6 * paper.Point
	ruleSpace    = 8 * paper.Point
	leastSmall   = 70 * paper.Point // less room than this is left empty
)

// small holds the text styles of the working, whose size does not follow the scale of the slip.
type small struct{ line, note, title paper.Style }

func smallAt(scale paper.Length) small {
	size := 5.6 * paper.Point * 1000 / scale
	return small{
		line:  paper.Style{Size: size, Ink: black},
		note:  paper.Style{Size: size, Ink: quiet},
		title: paper.Style{Size: size, Bold: true, Ink: leaf},
	}
}

// working sets the steps in two columns, filling the page they begin on and as many
// more as they need.
func (s *slip) working(part scaleticket.Section) {
	width := (s.Room() - smallBetween) / 2
	p := smallAt(s.scale)
	var blocks []paper.Block
	lead := 0
	for _, line := range part.Lines {
		if line.Kind == scaleticket.Sentence && len(blocks) == 0 {
			lead++
			continue
		}
		blocks = append(blocks, p.block(line, width))
	}
	head := p.head(part, part.Lines[:lead], s.Room())
	if s.Left() < leastSmall+head.Height && len(blocks) > 0 {
		s.NewPage()
	}
	if !s.IsFresh() {
		head.Above = ruleSpace
		head.Line(0, 0, s.Room(), 0, 0.5*paper.Point, hair)
	}
	s.Add(head)
	s.Columns(blocks, smallBetween)
}

// head is the title, and the rates of the working.
func (p small) head(s scaleticket.Section, lead []scaleticket.Line, width paper.Length) (b paper.Block) {
	const above = 4 * paper.Point
	var lines []string
	for _, l := range lead {
		lines = append(lines, p.note.Wrap(l.Label, width-gutter)...)
	}
	b.Text(0, above+titleStyle.Baseline(), upper(s.Title), titleStyle)
	b.Height = above + max(b.Paragraph(gutter, above, lines, p.note), titleStyle.Leading()) + 3*paper.Point
	return b
}

// block is one step: what and how much, and how it was worked, beside the
// label where that fits, else below.
func (p small) block(l scaleticket.Line, width paper.Length) (b paper.Block) {
	if l.Kind == scaleticket.Heading || l.Kind == scaleticket.Sentence {
		b.Above, b.Tied = 4*paper.Point, l.Kind == scaleticket.Heading
		b.Height = b.Paragraph(0, 0, []string{l.Label}, p.title)
		return b
	}
	b.Above = 0.9 * paper.Point
	room := width - p.line.Width(l.Value) - smallIndent
	note := scaleticket.Joined("  ", l.Notes...)
	b.TextEnding(width, p.line.Baseline(), l.Value, p.line)
	b.Height = b.Paragraph(0, 0, p.line.Wrap(l.Label, room), p.line)
	if at := p.line.Width(l.Label) + smallIndent; at+p.note.Width(note) <= room {
		b.Text(at, p.note.Baseline(), note, p.note)
		return b
	}
	b.Height += b.Paragraph(smallIndent, b.Height, p.note.Wrap(note, width-smallIndent), p.note)
	return b
}
