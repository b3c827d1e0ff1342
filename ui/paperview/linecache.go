package paperview

import (
	"slices"
	"tenthpoint/ui/model"
	"tenthpoint/ui/paint"

	"fyne.io/fyne/v2"
)

// lineCache keeps a card in type, in one size and width. A line that stays as it
// was is not set again: its row is moved to where it now stands. So a keystroke
// costs what it changes, here and where a window keeps pictures of its letters.
type lineCache struct {
	pen   paint.Painter
	width float32
	lines []model.CardLine
	rows  []*typeRow
	low   float32 // below the last row
}

// typeRow is one line in type.
type typeRow struct {
	line    model.CardLine
	Top     float32
	high    float32
	objects []fyne.CanvasObject
	kept    bool // stands on the card that is being set
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

// set brings the rows in step with the lines of a card.
func (g *lineCache) set(p paint.Painter, width float32, lines []model.CardLine) {
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
	for _, line := range lines {
		row := g.row(before, line)
		row.moveTo(g.low)
		g.rows = append(g.rows, row)
		g.low = row.bottom()
	}
}

func (g *lineCache) setting() *cardLayout { return &cardLayout{Painter: g.pen, width: g.width} }

// row is the row of a line: one that stood before, or one newly set.
func (g *lineCache) row(before []*typeRow, line model.CardLine) *typeRow {
	for _, row := range before {
		if !row.kept && row.line == line {
			row.kept = true
			return row
		}
	}
	s := g.setting()
	s.set(line)
	return &typeRow{line: line, high: paint.Ceil(s.y), objects: s.objects}
}

// height is how high the card is, with its margins.
func (g *lineCache) height() float32 { return g.low + paint.Ceil(g.setting().margin()) }
