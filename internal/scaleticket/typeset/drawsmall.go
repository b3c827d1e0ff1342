package typeset

import "tenthpoint/internal/scaleticket"

// Small print is set in two columns.
const (
	smallBetween = 14.0
	smallIndent  = 6.0
	ruleSpace    = 8.0
	leastSmall   = 70.0 // less room than this is left empty
)

// small is the lettering of small print, which keeps its size whatever the
// scale of the slip.
type small struct{ line, note, title style }

func smallAt(scale float64) small {
	size := 5.6 / scale
	return small{
		line:  style{size: size, ink: black},
		note:  style{size: size, ink: quiet},
		title: style{size: size, bold: true, ink: leaf},
	}
}

// smallPrint sets the working in two columns, filling the page it begins on and
// as many more as it needs. On the last page the columns are of equal height.
func (l *layout) smallPrint(s scaleticket.Section) {
	width := (l.width() - smallBetween) / 2
	p := smallAt(l.scale)
	var blocks []block
	lead := 0
	for _, line := range s.Lines {
		if line.Kind == scaleticket.Sentence && len(blocks) == 0 {
			lead++
			continue
		}
		blocks = append(blocks, p.block(line, width))
	}
	head := p.head(s, s.Lines[:lead], l.width())
	if l.room() < leastSmall+head.height && len(blocks) > 0 {
		l.newPage()
	}
	if !l.isHead {
		l.y += ruleSpace
		l.put(sideMargin, l.y, ruleAcross(l.width()))
	}
	l.add(head)
	for len(blocks) > 0 {
		blocks = l.columns(blocks, width)
		if len(blocks) > 0 {
			l.newPage()
		}
	}
}

// ruleAcross parts the working from the ticket above it.
func ruleAcross(width float64) block {
	return block{draw: func(c canvas, x, y float64) { c.line(x, y, x+width, y, 0.5, hair) }}
}

// head is the title, and what the working was worked under.
func (p small) head(s scaleticket.Section, lead []scaleticket.Line, width float64) block {
	var lines []string
	for _, l := range lead {
		lines = append(lines, p.note.wrap(l.Label, width-gutter)...)
	}
	height := 4 + max(float64(len(lines))*p.note.leading(), titleStyle.leading()) + 3
	return block{height: height, draw: func(c canvas, x, y float64) {
		c.text(x, y+4+titleStyle.baseline(), upper(s.Title), titleStyle)
		paragraph(c, x+gutter, y+4, lines, p.note)
	}}
}

// columns places what fits on the page in two columns and returns the rest.
func (l *layout) columns(blocks []block, width float64) []block {
	room := l.room()
	height := room
	for h := room / 64; h < room; h += room / 64 {
		if n := fill(blocks, h); n+fill(blocks[n:], h) == len(blocks) {
			height = h
			break
		}
	}
	end := l.y
	x := sideMargin
	for range 2 {
		n := fill(blocks, height)
		end = max(end, l.column(blocks[:n], x))
		blocks = blocks[n:]
		x += width + smallBetween
	}
	l.y, l.isHead = end, false
	return blocks
}

func (l *layout) column(blocks []block, x float64) float64 {
	y := l.y
	for i, b := range blocks {
		if i > 0 {
			y += b.above
		}
		l.put(x, y, b)
		y += b.height
	}
	return y
}

// fill is how many blocks fit in a column of the height, no title left at its
// foot. A column of a whole page always takes one.
func fill(blocks []block, height float64) int {
	y, n := 0.0, 0
	for i, b := range blocks {
		if i > 0 {
			y += b.above
		}
		if y += b.height; y > height {
			break
		}
		n = i + 1
	}
	for n > 0 && n < len(blocks) && blocks[n-1].tied {
		n--
	}
	return n
}

// block is one step: what and how much, and how it was worked, beside the
// label where that fits, else below.
func (p small) block(l scaleticket.Line, width float64) block {
	if l.Kind == scaleticket.Heading || l.Kind == scaleticket.Sentence {
		return block{above: 4, height: p.title.leading(), tied: l.Kind == scaleticket.Heading, draw: func(c canvas, x, y float64) {
			c.text(x, y+p.title.baseline(), l.Label, p.title)
		}}
	}
	room := width - p.line.width(l.Value) - smallIndent
	label := p.line.wrap(l.Label, room)
	note := scaleticket.Joined("  ", l.Notes...)
	notes := p.note.wrap(note, width-smallIndent)
	beside := ""
	if at := p.line.width(l.Label) + smallIndent; at+p.note.width(note) <= room {
		beside, notes = note, nil
	}
	height := float64(len(label))*p.line.leading() + float64(len(notes))*p.note.leading()
	return block{above: 0.9, height: height, draw: func(c canvas, x, y float64) {
		textRight(c, x+width, y+p.line.baseline(), l.Value, p.line)
		if beside != "" {
			c.text(x+p.line.width(l.Label)+smallIndent, y+p.note.baseline(), beside, p.note)
		}
		y += paragraph(c, x, y, label, p.line)
		paragraph(c, x+smallIndent, y, notes, p.note)
	}}
}
