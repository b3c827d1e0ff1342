package sheet

import (
	"tenthpoint/internal/paper"
	"tenthpoint/internal/scaleticket"
)

// Facts are set in two columns, a long one across both.
const (
	factColumns = 2
	factBetween = 18 * paper.Point
	factSpace   = 6 * paper.Point // the least between a label and its value
)

// cell is a fact, set: its label at the left, its value at the right edge.
type cell struct {
	scaleticket.Line
	wide  bool
	width paper.Length
	value []string
	note  []string // what does not fit beside the label
}

// facts sets a section of facts side by side; a sentence takes the whole width.
func facts(s scaleticket.Section, width paper.Length) []paper.Block {
	inner := width - gutter
	var rows []paper.Block
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
func newCell(l scaleticket.Line, inner paper.Length) cell {
	column := (inner - factBetween) / factColumns
	need := factStyle.Width(l.Label) + factSpace + valueStyle(l).Width(l.Value)
	for _, note := range l.Notes {
		need += factSpace + noteStyle.Width(note)
	}
	if need <= column {
		return cell{Line: l, width: column, value: []string{l.Value}}
	}
	one := cell{Line: l, width: inner, wide: true}
	one.value = valueStyle(l).Wrap(l.Value, inner-factSpace-factStyle.Width(l.Label))
	if need > inner {
		one.Notes, one.note = nil, noteStyle.Wrap(scaleticket.Joined(", ", l.Notes...), inner)
	}
	return one
}

func valueStyle(l scaleticket.Line) paper.Style {
	if l.Emphasis {
		return strongStyle
	}
	return plainStyle
}

func (one cell) height() paper.Length {
	return paper.Length(max(1, len(one.value)))*plainStyle.Leading() + paper.Length(len(one.note))*noteStyle.Leading()
}

func factRow(cells []cell) (b paper.Block) {
	height := paper.Length(0)
	for _, one := range cells {
		height = max(height, one.height())
	}
	b.Height = height + 0.8*paper.Point
	x := paper.Length(gutter)
	for _, one := range cells {
		one.draw(&b.Marks, x)
		b.Line(x, height+0.3*paper.Point, x+one.width, height+0.3*paper.Point, 0.3*paper.Point, veil)
		b = b.Named(one.Field)
		x += one.width + factBetween
	}
	return b
}

func (one cell) draw(m *paper.Marks, x paper.Length) {
	base := plainStyle.Baseline()
	m.Text(x, base, one.Label, factStyle)
	at := x + factStyle.Width(one.Label) + factSpace
	for _, note := range one.Notes {
		m.Text(at, base, note, noteStyle)
		at += noteStyle.Width(note) + factSpace
	}
	y, look := paper.Length(0), valueStyle(one.Line)
	for _, line := range one.value {
		if one.Missing {
			missing(m, x+one.width, y, line, look)
		} else {
			m.TextEnding(x+one.width, y+look.Baseline(), line, look)
		}
		y += look.Leading()
	}
	m.Paragraph(x, y, one.note, noteStyle)
}

// missing writes a placeholder so that it ends at x, in a frame, so that it is seen on any printer.
func missing(m *paper.Marks, x, y paper.Length, text string, s paper.Style) {
	w := s.Width(text) + 7*paper.Point
	m.Box(x-w, y+0.9*paper.Point, w, s.Leading()-1.3*paper.Point, tint, stop)
	m.Text(x-w+3.5*paper.Point, y+s.Baseline(), text, s.In(stop))
}

// warning is a sentence that must be noticed, beside a bar.
func warning(l scaleticket.Line, inner paper.Length) paper.Block {
	look := strongStyle.Sized(7.2 * paper.Point)
	b := paper.Block{Above: 2.5 * paper.Point}
	height := b.Paragraph(gutter+7*paper.Point, 0, look.Wrap(l.Label, inner-8*paper.Point), look)
	b.Box(gutter, 1*paper.Point, 2.4*paper.Point, height-1.4*paper.Point, black, noInk)
	b.Height = height + 1.5*paper.Point
	return b.Named(l.Field)
}

// inGutter sets a title in the gutter, beside the first of the blocks.
func inGutter(title string, blocks []paper.Block) []paper.Block {
	if len(blocks) == 0 {
		return nil
	}
	lines := titleStyle.Wrap(upper(title), gutter-4*paper.Point)
	var beside paper.Block
	beside.Paragraph(0, 1.2*paper.Point, lines, titleStyle)
	first := &blocks[0]
	beside.Put(0, 0, first.Marks)
	beside.Height = max(first.Height, paper.Length(len(lines))*titleStyle.Leading())
	beside.Above, beside.Tied = 6*paper.Point, first.Tied
	*first = beside
	return blocks
}
