package paperview

import (
	"slices"
	"tenthpoint/ui/model"
	"tenthpoint/ui/paint"

	"fyne.io/fyne/v2"
)

// lineCache keeps the laid-out lines of a card, in one text size and width. An unchanged line is
// not set again: its row is moved to its new place. So a keystroke costs only what it changes, here
// and where a window caches textures of its text.
type lineCache struct {
	painter paint.Painter
	width   float32
	lines   []model.CardLine
	rows    []*typeRow
	low     float32 // below the last row
}

// typeRow is one line in type.
type typeRow struct {
	line    model.CardLine
	Top     float32
	high    float32
	objects []fyne.CanvasObject
	kept    bool // on the card being set
}

func (r *typeRow) bottom() float32 { return r.Top + r.high }

// moveTo moves a row. Positions are whole units, so a moved row is exactly where a new one would
// be.
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

// set updates the rows for the lines of a card.
func (g *lineCache) set(p paint.Painter, width float32, lines []model.CardLine) {
	if g.painter != p || g.width != width {
		*g = lineCache{painter: p, width: width}
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

func (g *lineCache) setting() *cardLayout { return &cardLayout{Painter: g.painter, width: g.width} }

// row returns the row of a line, cached or new.
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

// height returns the height of the card, with its margins.
func (g *lineCache) height() float32 { return g.low + paint.Ceil(g.setting().margin()) }
