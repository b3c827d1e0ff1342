package paperview

import (
	"slices"
	"tenthpoint/internal/scaleticket"
	"tenthpoint/ui/paint"

	"fyne.io/fyne/v2"
)

// lineCache keeps a sheet in type, in one size and width. A line that stays as it
// was is not set again: its row is moved to where it now stands. So a keystroke
// costs what it changes, here and where a window keeps pictures of its letters.
type lineCache struct {
	pen   paint.Painter
	width float32
	lines []scaleticket.PaperLine
	rows  []*typeRow
	low   float32 // below the last row
}

// typeRow is one line in type, or several that stand side by side.
type typeRow struct {
	lines   []scaleticket.PaperLine
	first   int // which line of the sheet is the first of the row
	Top     float32
	high    float32
	objects []fyne.CanvasObject
	kept    bool // stands on the sheet that is being set
}

func (r *typeRow) bottom() float32 { return r.Top + r.high }

// moveTo takes a row to another place. Places are whole units, so a row that
// was moved stands exactly where one set there would.
func (r *typeRow) moveTo(top float32) {
	if top == r.Top {
		return
	}
	by := fyne.NewPos(0, top-r.Top)
	for _, o := range r.objects {
		o.Move(o.Position().Add(by))
	}
	r.Top = top
}

// set brings the rows in step with the lines of a sheet.
func (g *lineCache) set(p paint.Painter, width float32, lines []scaleticket.PaperLine) {
	if g.pen != p || g.width != width {
		*g = lineCache{pen: p, width: width}
	}
	if g.rows != nil && slices.Equal(g.lines, lines) {
		return
	}
	s, before := g.setting(), g.rows
	for _, row := range before {
		row.kept = false
	}
	g.lines, g.rows, g.low = lines, make([]*typeRow, 0, len(lines)), paint.Ceil(s.margin())
	for at := 0; at < len(lines); {
		row := g.row(before, lines[at:at+s.together(lines[at:])])
		row.first = at
		row.moveTo(g.low)
		g.rows = append(g.rows, row)
		g.low = row.bottom()
		at += len(row.lines)
	}
}

func (g *lineCache) setting() *pageLayout { return &pageLayout{Painter: g.pen, width: g.width} }

// row is the row of some lines: one that stood before, or one newly set.
func (g *lineCache) row(before []*typeRow, lines []scaleticket.PaperLine) *typeRow {
	for _, row := range before {
		if !row.kept && slices.Equal(row.lines, lines) {
			row.kept = true
			return row
		}
	}
	s := g.setting()
	s.row(lines)
	return &typeRow{lines: lines, high: paint.Ceil(s.y), objects: s.objects}
}

// height is how high the sheet is, with its margins.
func (g *lineCache) height() float32 { return g.low + paint.Ceil(g.setting().margin()) }

// RowOf is the row that a line stands in, nil for what is no line.
func (g *lineCache) RowOf(line int) *typeRow {
	for i := len(g.rows) - 1; i >= 0 && line >= 0 && line < len(g.lines); i-- {
		if g.rows[i].first <= line {
			return g.rows[i]
		}
	}
	return nil
}
