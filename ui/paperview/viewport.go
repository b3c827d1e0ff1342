package paperview

import (
	"tenthpoint/internal/scaleticket"
)

// span is a stretch of a sheet, from the top down, in Fyne's units.
type span struct{ from, to float32 }

func (s span) high() float32         { return s.to - s.from }
func (s span) holds(r *typeRow) bool { return s.from <= r.Top && r.bottom() <= s.to }

// page is the slip itself: all of the sheet that comes before the fold.
func (g *lineCache) page() span {
	for _, row := range g.rows {
		if row.lines[0].Kind == scaleticket.PaperFold {
			return span{0, row.Top}
		}
	}
	return span{0, g.height()}
}

// sum is what a slip is looked at for: from the large figures to the last
// total of the page. A sheet without large figures has none, of no height.
func (g *lineCache) sum() (s span) {
	page, edge := g.page(), g.pen.Pad()
	for _, row := range g.rows {
		switch kind := row.lines[0].Kind; {
		case kind == scaleticket.PaperFigure && s.to == 0:
			s = span{row.Top - edge, row.bottom() + edge}
		case kind == scaleticket.PaperTotal && s.to > 0 && page.holds(row):
			s.to = row.bottom() + edge
		}
	}
	return s
}

// wanted is the stretch to have in sight with a row, through a window so high:
// the page, else the sum, else the row and a little around it.
func (g *lineCache) wanted(row *typeRow, room float32) span {
	for _, whole := range []span{g.page(), g.sum()} {
		if whole.holds(row) && whole.high() <= room {
			return whole
		}
	}
	around := 3 * row.high
	return span{row.Top - around, row.bottom() + around}
}

// downFrom is a stretch with the sum below it, where there is room for both.
func (g *lineCache) downFrom(s span, room float32) span {
	if sum := g.sum(); sum.to-s.from <= room {
		s.to = max(s.to, sum.to)
	}
	return s
}
