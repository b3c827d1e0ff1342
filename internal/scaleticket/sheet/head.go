package sheet

import (
	"fmt"

	"tenthpoint/internal/paper"
	"tenthpoint/internal/scaleticket"
)

// numberRoom is the width kept for the ticket's number.
const numberRoom = 124 * paper.Point

// letterhead is the elevator at the left, the ticket's number at the right, and
// below both what must be noticed first.
func letterhead(d scaleticket.Document, s, number scaleticket.Section, width paper.Length) []paper.Block {
	left := width - numberRoom - 10*paper.Point
	head := paper.Stacked(nameLines(s, left), markRow(d.Marks, left)).Named(fieldsOf(s.Lines)...)
	head.Beside(width-numberRoom, numberLines(number, numberRoom).Named(fieldsOf(number.Lines)...))
	head.Tied = true
	out := []paper.Block{head}
	if len(number.Lines) > statusLines {
		out = append(out, references(number.Lines[statusLines:], width, d.Named))
	}
	return out
}

func fieldsOf(lines []scaleticket.Line) []string {
	out := make([]string, len(lines))
	for i, l := range lines {
		out[i] = l.Field
	}
	return out
}

// statusLines is the number of lines in the corner: number, status, copy. Any further lines refer
// to other tickets.
const statusLines = 3

// nameLines is the name large, then the address and what else identifies the
// scale, as many to a line as fit.
func nameLines(s scaleticket.Section, width paper.Length) (b paper.Block) {
	look := nameStyle
	if s.Lines[0].Missing {
		look = look.In(stop)
	}
	var parts []string
	for _, l := range s.Lines[1:] {
		parts = append(parts, scaleticket.Joined(" ", l.Label, l.Value))
	}
	b.Height = b.Paragraph(0, 0, look.Wrap(s.Lines[0].Value, width), look)
	b.Height += b.Paragraph(0, b.Height, filled(parts, addressStyle, width), addressStyle)
	return b
}

// filled sets parts side by side, as many to a line as fit.
func filled(parts []string, s paper.Style, width paper.Length) []string {
	var out []string
	line := ""
	for _, part := range parts {
		longer := scaleticket.Joined("  ·  ", line, part)
		if s.Width(longer) <= width {
			line = longer
			continue
		}
		out = append(out, s.Wrap(line, width)...)
		line = part
	}
	return append(out, s.Wrap(line, width)...)
}

// numberLines sets the title, the number in large type, and below it status and copy.
func numberLines(s scaleticket.Section, width paper.Length) (b paper.Block) {
	ending := func(line string, look paper.Style) {
		b.TextEnding(width, b.Height+look.Baseline(), line, look)
		b.Height += look.Leading()
	}
	ending(upper(s.Title), titleStyle)
	ending(s.Lines[0].Value, numberStyle.Fitted(s.Lines[0].Value, width, 9*paper.Point))
	for _, l := range s.Lines[1:min(statusLines, len(s.Lines))] {
		for _, line := range addressStyle.Wrap(l.Value, width) {
			ending(line, addressStyle)
		}
	}
	return b
}

// references tie the ticket to others: which it corrects, why it ended.
func references(lines []scaleticket.Line, width paper.Length, named string) paper.Block {
	b := paper.Block{Above: 4 * paper.Point}
	for _, l := range lines {
		text := fmt.Sprintf(named, l.Label, scaleticket.Joined("; ", append([]string{l.Value}, l.Notes...)...))
		b.Height += b.Paragraph(0, b.Height, strongStyle.Wrap(text, width), strongStyle)
	}
	return b.Named(fieldsOf(lines)...)
}

// markRow sets the marks side by side in frames, the first one reversed.
func markRow(marks []string, width paper.Length) (b paper.Block) {
	x, y := paper.Length(0), paper.Length(0)
	for i, mark := range marks {
		w := chipWidth(mark, markStyle)
		if x > 0 && x+w > width {
			x, y = 0, y+chipHeight(markStyle)+3*paper.Point
		}
		if i == 0 {
			chip(&b.Marks, x, y, mark, markStyle.In(white), black)
		} else {
			chip(&b.Marks, x, y, mark, markStyle, white)
		}
		x += w + 5*paper.Point
	}
	if len(marks) > 0 {
		b.Above, b.Height = 5*paper.Point, y+chipHeight(markStyle)
	}
	return b
}
