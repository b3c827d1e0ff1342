package typeset

import (
	"fmt"
	"math"

	"tenthpoint/internal/scaleticket"
)

// drawSlip lays the document out and draws it page by page, with the word set
// across, the running head and the page numbers.
func drawSlip(to canvas, d scaleticket.Document, size Size, o Options) {
	l := arrange(d, size, o)
	c := scaled{to, l.scale}
	for n, blocks := range l.pages {
		c.page()
		l.stamp(c, d)
		for _, b := range blocks {
			b.draw(c, b.x, b.y)
		}
		if len(l.pages) > 1 {
			l.running(c, d, n)
		}
	}
}

// running tells which page of which ticket this is.
func (l *layout) running(c canvas, d scaleticket.Document, n int) {
	foot := l.high - bottomMargin + 12
	right := l.wide - sideMargin
	textRight(c, right, foot, fmt.Sprintf(d.PageOf, n+1, len(l.pages)), noteStyle)
	if n > 0 {
		c.text(sideMargin, topMargin+noteStyle.baseline(), d.Running, noteStyle)
		c.line(sideMargin, topMargin+9, right, topMargin+9, 0.4, hair)
	}
}

// stamp sets a word across the page, under everything else, as large as the
// slant of the page allows.
func (l *layout) stamp(c canvas, d scaleticket.Document) {
	if d.Stamp == "" {
		return
	}
	s := style{size: 150, bold: true, ink: faint}
	if d.Preview {
		s.ink = ghost
	}
	slant := math.Hypot(l.wide, l.high) * 0.78
	c.across(d.Stamp, s.fitted(d.Stamp, slant, 10), l.wide, l.high)
}
