package typeset

import (
	"fmt"

	"tenthpoint/internal/scaleticket"
)

// numberRoom is the width kept for the ticket's number.
const numberRoom = 124.0

// letterhead is the elevator at the left, the ticket's number at the right, and
// below both what must be noticed first.
func letterhead(d scaleticket.Document, s, number scaleticket.Section, width float64) []block {
	left := stacked(nameLines(s, width-numberRoom-10), markRow(d.Marks, width-numberRoom-10))
	right := numberLines(number, numberRoom)
	out := []block{{height: max(left.height, right.height), tied: true, draw: func(c canvas, x, y float64) {
		left.draw(c, x, y)
		right.draw(c, x+width-numberRoom, y)
	}}}
	if len(number.Lines) > statusLines {
		out = append(out, references(number.Lines[statusLines:], width, d.Named))
	}
	return out
}

// statusLines are the lines of the number that stand in the corner: number,
// status, copy. What follows them refers to other tickets.
const statusLines = 3

// stacked is two blocks as one, the second under the first.
func stacked(a, b block) block {
	return block{height: a.height + b.above + b.height, draw: func(c canvas, x, y float64) {
		a.draw(c, x, y)
		b.draw(c, x, y+a.height+b.above)
	}}
}

var addressStyle = noteStyle.sized(7.2)

// nameLines is the name large, then the address and what else identifies the
// scale, as many to a line as fit.
func nameLines(s scaleticket.Section, width float64) block {
	look := nameStyle
	if s.Lines[0].Missing {
		look = look.in(stop)
	}
	names := look.wrap(s.Lines[0].Value, width)
	var parts []string
	for _, l := range s.Lines[1:] {
		parts = append(parts, scaleticket.Joined(" ", l.Label, l.Value))
	}
	lines := filled(parts, addressStyle, width)
	height := float64(len(names))*look.leading() + float64(len(lines))*addressStyle.leading()
	return block{height: height, draw: func(c canvas, x, y float64) {
		y += paragraph(c, x, y, names, look)
		paragraph(c, x, y, lines, addressStyle)
	}}
}

// filled sets parts side by side, as many to a line as fit.
func filled(parts []string, s style, width float64) []string {
	var out []string
	line := ""
	for _, part := range parts {
		longer := scaleticket.Joined("  ·  ", line, part)
		if s.width(longer) <= width {
			line = longer
			continue
		}
		out = append(out, s.wrap(line, width)...)
		line = part
	}
	return append(out, s.wrap(line, width)...)
}

// numberLines is the title, the number large, and below it how the ticket
// stands and which copy this is.
func numberLines(s scaleticket.Section, width float64) block {
	big := numberStyle.fitted(s.Lines[0].Value, width, 9)
	var lines []string
	for _, l := range s.Lines[1:min(statusLines, len(s.Lines))] {
		lines = append(lines, addressStyle.wrap(l.Value, width)...)
	}
	height := titleStyle.leading() + big.leading() + float64(len(lines))*addressStyle.leading()
	return block{height: height, draw: func(c canvas, x, y float64) {
		textRight(c, x+width, y+titleStyle.baseline(), upper(s.Title), titleStyle)
		y += titleStyle.leading()
		textRight(c, x+width, y+big.baseline(), s.Lines[0].Value, big)
		y += big.leading()
		for _, line := range lines {
			textRight(c, x+width, y+addressStyle.baseline(), line, addressStyle)
			y += addressStyle.leading()
		}
	}}
}

// references tie the ticket to others: which it corrects, why it ended.
func references(lines []scaleticket.Line, width float64, named string) block {
	var texts []string
	for _, l := range lines {
		text := fmt.Sprintf(named, l.Label, scaleticket.Joined("; ", append([]string{l.Value}, l.Notes...)...))
		texts = append(texts, strongStyle.wrap(text, width)...)
	}
	height := float64(len(texts)) * strongStyle.leading()
	return block{above: 4, height: height, draw: func(c canvas, x, y float64) {
		paragraph(c, x, y, texts, strongStyle)
	}}
}

// markRow sets the marks side by side in frames, the first one reversed.
func markRow(marks []string, width float64) block {
	type at struct{ x, y float64 }
	var places []at
	x, y := 0.0, 0.0
	for _, mark := range marks {
		w := chipWidth(mark, markStyle)
		if x > 0 && x+w > width {
			x, y = 0, y+chipHeight(markStyle)+3
		}
		places = append(places, at{x, y})
		x += w + 5
	}
	if len(marks) == 0 {
		return block{draw: func(canvas, float64, float64) {}}
	}
	return block{above: 5, height: y + chipHeight(markStyle), draw: func(c canvas, left, top float64) {
		for i, mark := range marks {
			look, fill := markStyle, white
			if i == 0 {
				look, fill = markStyle.in(white), black
			}
			chip(c, left+places[i].x, top+places[i].y, mark, look, fill, black)
		}
	}}
}
