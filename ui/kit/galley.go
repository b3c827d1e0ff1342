package kit

import (
	"slices"
	"tenthpoint/internal/slip"

	"fyne.io/fyne/v2"
)

// galley keeps a sheet in type, in one size and width. A line that stays as it
// was is not set again: its row is moved to where it now stands. So a keystroke
// costs what it changes, here and where a window keeps pictures of its letters.
type galley struct {
	pen   pen
	width float32
	lines []slip.PaperLine
	rows  []*typeRow
	low   float32 // beneath the last row
}

// typeRow is one line in type, or several that stand side by side.
type typeRow struct {
	lines   []slip.PaperLine
	first   int // which line of the sheet is the first of the row
	top     float32
	high    float32
	objects []fyne.CanvasObject
	kept    bool // stands on the sheet that is being set
}

func (r *typeRow) bottom() float32 { return r.top + r.high }

// moveTo takes a row to another place. Places are whole units, so a row that
// was moved stands exactly where one set there would.
func (r *typeRow) moveTo(top float32) {
	if top == r.top {
		return
	}
	by := fyne.NewPos(0, top-r.top)
	for _, o := range r.objects {
		o.Move(o.Position().Add(by))
	}
	r.top = top
}

// set brings the rows in step with the lines of a sheet.
func (g *galley) set(p pen, width float32, lines []slip.PaperLine) {
	if g.pen != p || g.width != width {
		*g = galley{pen: p, width: width}
	}
	if g.rows != nil && slices.Equal(g.lines, lines) {
		return
	}
	s, before := g.setting(), g.rows
	for _, row := range before {
		row.kept = false
	}
	g.lines, g.rows, g.low = lines, make([]*typeRow, 0, len(lines)), ceil(s.margin())
	for at := 0; at < len(lines); {
		row := g.row(before, lines[at:at+s.together(lines[at:])])
		row.first = at
		row.moveTo(g.low)
		g.rows = append(g.rows, row)
		g.low = row.bottom()
		at += len(row.lines)
	}
}

func (g *galley) setting() *setting { return &setting{pen: g.pen, width: g.width} }

// row is the row of some lines: one that stood before, or one newly set.
func (g *galley) row(before []*typeRow, lines []slip.PaperLine) *typeRow {
	for _, row := range before {
		if !row.kept && slices.Equal(row.lines, lines) {
			row.kept = true
			return row
		}
	}
	s := g.setting()
	s.row(lines)
	return &typeRow{lines: lines, high: ceil(s.y), objects: s.objects}
}

// height is how high the sheet is, with its margins.
func (g *galley) height() float32 { return g.low + ceil(g.setting().margin()) }

// rowOf is the row that a line stands in, nil for what is no line.
func (g *galley) rowOf(line int) *typeRow {
	for i := len(g.rows) - 1; i >= 0 && line >= 0 && line < len(g.lines); i-- {
		if g.rows[i].first <= line {
			return g.rows[i]
		}
	}
	return nil
}
