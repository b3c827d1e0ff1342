package typeset

import "tenthpoint/internal/scaleticket"

// Facts stand in two columns, a long one across both.
const (
	factColumns = 2
	factBetween = 18.0
	factSpace   = 6.0 // the least between a label and its value
)

// cell is a fact, set: its label at the left, its value at the right edge.
type cell struct {
	scaleticket.Line
	wide  bool
	width float64
	value []string
	note  []string // what does not fit beside the label
}

// facts sets a section of facts side by side; a sentence takes the whole width.
func facts(s scaleticket.Section, width float64) []block {
	inner := width - gutter
	var rows []block
	var row []cell
	flush := func() {
		if len(row) > 0 {
			rows = append(rows, factRow(row))
			row = nil
		}
	}
	for _, l := range s.Lines {
		if l.Kind == scaleticket.Warning {
			flush()
			rows = append(rows, warning(l, inner))
			continue
		}
		one := newCell(l, inner)
		if one.wide || len(row) == factColumns {
			flush()
		}
		row = append(row, one)
		if one.wide {
			flush()
		}
	}
	flush()
	return inGutter(s.Title, rows)
}

// newCell makes a cell one column wide if that holds its fact, else two.
func newCell(l scaleticket.Line, inner float64) cell {
	column := (inner - factBetween) / factColumns
	need := factStyle.width(l.Label) + factSpace + valueStyle(l).width(l.Value)
	for _, note := range l.Notes {
		need += factSpace + noteStyle.width(note)
	}
	if need <= column {
		return cell{Line: l, width: column, value: []string{l.Value}}
	}
	one := cell{Line: l, width: inner, wide: true}
	one.value = valueStyle(l).wrap(l.Value, inner-factSpace-factStyle.width(l.Label))
	if need > inner {
		one.Notes, one.note = nil, noteStyle.wrap(scaleticket.Joined(", ", l.Notes...), inner)
	}
	return one
}

func valueStyle(l scaleticket.Line) style {
	if l.Emphasis {
		return strongStyle
	}
	return plainStyle
}

func (one cell) height() float64 {
	return float64(max(1, len(one.value)))*plainStyle.leading() + float64(len(one.note))*noteStyle.leading()
}

func factRow(cells []cell) block {
	height := 0.0
	for _, one := range cells {
		height = max(height, one.height())
	}
	return block{height: height + 0.8, draw: func(c canvas, x, y float64) {
		x += gutter
		for _, one := range cells {
			one.draw(c, x, y)
			c.line(x, y+height+0.3, x+one.width, y+height+0.3, 0.3, veil)
			x += one.width + factBetween
		}
	}}
}

func (one cell) draw(c canvas, x, y float64) {
	base := y + plainStyle.baseline()
	c.text(x, base, one.Label, factStyle)
	at := x + factStyle.width(one.Label) + factSpace
	for _, note := range one.Notes {
		c.text(at, base, note, noteStyle)
		at += noteStyle.width(note) + factSpace
	}
	look := valueStyle(one.Line)
	for _, line := range one.value {
		if one.Missing {
			missing(c, x+one.width, y, line, look)
		} else {
			textRight(c, x+one.width, y+look.baseline(), line, look)
		}
		y += look.leading()
	}
	paragraph(c, x, y, one.note, noteStyle)
}

// missing writes what is still to come so that it ends at x, in a frame, so
// that it is seen on any printer.
func missing(c canvas, x, y float64, text string, s style) {
	w := s.width(text) + 7
	c.box(x-w, y+0.9, w, s.leading()-1.3, tint, stop)
	c.text(x-w+3.5, y+s.baseline(), text, s.in(stop))
}

// warning is a sentence that must be noticed, beside a bar.
func warning(l scaleticket.Line, inner float64) block {
	look := strongStyle.sized(7.2)
	lines := look.wrap(l.Label, inner-8)
	height := float64(len(lines)) * look.leading()
	return block{above: 2.5, height: height + 1.5, draw: func(c canvas, x, y float64) {
		c.box(x+gutter, y+1, 2.4, height-1.4, black, noInk)
		paragraph(c, x+gutter+7, y, lines, look)
	}}
}

// inGutter sets a title in the gutter, beside the first of the blocks.
func inGutter(title string, blocks []block) []block {
	if len(blocks) == 0 {
		return nil
	}
	lines := titleStyle.wrap(upper(title), gutter-4)
	first := blocks[0].draw
	blocks[0].height = max(blocks[0].height, float64(len(lines))*titleStyle.leading())
	blocks[0].above = 6
	blocks[0].draw = func(c canvas, x, y float64) {
		paragraph(c, x, y+1.2, lines, titleStyle)
		first(c, x, y)
	}
	return blocks
}
