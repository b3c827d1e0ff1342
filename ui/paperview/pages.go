package paperview

import (
	"tenthpoint/internal/paper"
	"tenthpoint/ui/apptheme"
	"tenthpoint/ui/paint"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/widget"
)

// Pages shows the pages of a paper as they print: the same words, rules and codes in the same
// letters at the same places, scaled to the room. It shows only enough of the margins to keep the
// words off the edge.
//
// In a scrolling window it draws only the visible part.
type Pages struct {
	widget.BaseWidget
	layout paper.Layout
	ends   []paper.Length // where each page ends, with what shows of its margin
	width  float32        // the width last given
	room   float32        // how high the window over it is; 0 without one
	bare   bareSheet
	drawer drawer
}

// The margins that show, and the room between two pages.
const (
	shownMargin paper.Length = 10 * paper.Point
	betweenPage paper.Length = 6 * paper.Point
)

// leastPages is the narrowest that pages are shown, in Fyne's units.
const leastPages = 240

// NewPages makes an empty sheet.
func NewPages() *Pages {
	p := &Pages{}
	p.ExtendBaseWidget(p)
	return p
}

// put takes other pages and reports whether they are others.
func (p *Pages) put(l paper.Layout) bool {
	if p.layout.Equal(l) {
		return false
	}
	p.layout = l
	p.ends = p.ends[:0]
	for i := range l.Pages {
		p.ends = append(p.ends, l.Pages[i].Bottom()+shownMargin)
	}
	return true
}

// side is the margin of the pages that does not show.
func (p *Pages) side() paper.Length {
	side := p.layout.Width
	for i := range p.layout.Pages {
		for _, r := range p.layout.Pages[i].Runs {
			side = min(side, r.At.X)
		}
	}
	return max(0, side-shownMargin)
}

// above is the part of the top margin that is not shown.
const aboveShown = 21*paper.Point - shownMargin

// view is the scale and position of the pages: Fyne's units per point, and the top of the first
// page if all of it showed.
type view struct {
	scale float32
	left  float32
	tops  []float32
}

// unit is a length in Fyne's units.
func (v view) unit(l paper.Length) float32 { return float32(l) * v.scale / paper.Point }

// at is a place on a page.
func (v view) at(page int, place paper.Place) fyne.Position {
	return fyne.NewPos(v.left+v.unit(place.X), v.tops[page]+v.unit(place.Y))
}

// View returns how the pages are shown in the available width: over all of it, or, where the first
// page is then a little too high for the window, scaled to show it whole.
func (p *Pages) View() view {
	side, width := p.side(), max(p.width, leastPages)
	shown := p.layout.Width - 2*side
	v := view{}
	if len(p.layout.Pages) == 0 {
		return v
	}
	v.scale = width * paper.Point / float32(shown)
	if high := v.unit(p.ends[0] - aboveShown); p.room > 0 && high > p.room {
		v.scale = max(v.scale*p.room/high, v.scale*leastOfWidth)
		if v.unit(p.ends[0]-aboveShown) > p.room+1 {
			v.scale = width * paper.Point / float32(shown)
		}
	}
	v.left = (width - v.unit(p.layout.Width)) / 2
	top := -v.unit(aboveShown)
	for _, end := range p.ends {
		v.tops = append(v.tops, top)
		top += v.unit(end - aboveShown + betweenPage)
	}
	return v
}

// leastOfWidth is the least part of the width a page may take to be shown whole.
const leastOfWidth = 0.88

// height returns the height of all pages.
func (p *Pages) height() float32 {
	v := p.View()
	last := len(p.ends) - 1
	if last < 0 {
		return 0
	}
	return paint.Ceil(v.tops[last] + v.unit(p.ends[last]))
}

// CreateRenderer implements fyne.Widget.
func (p *Pages) CreateRenderer() fyne.WidgetRenderer { return paint.NewDrawing(p) }

// Resize notes the width: the height follows.
func (p *Pages) Resize(size fyne.Size) {
	changed := p.width != size.Width
	p.width = size.Width
	p.BaseWidget.Resize(size)
	if changed {
		canvas.Refresh(p)
	}
}

// Move draws what came into sight.
func (p *Pages) Move(at fyne.Position) {
	if at != p.Position() {
		p.BaseWidget.Move(at)
		p.Refresh()
	}
}

func (p *Pages) LeastSize() fyne.Size { return fyne.NewSize(leastPages, p.height()) }

func (p *Pages) Paint(size fyne.Size) []fyne.CanvasObject {
	painter, v := paint.PainterFor(p), p.View()
	objects := p.bare.fit(painter, size)
	visible := span{-p.Position().Y, -p.Position().Y + p.room}
	if p.room == 0 {
		visible = span{0, max(size.Height, p.height())}
	}
	p.drawer.begin(v, visible)
	for n := range p.layout.Pages {
		if n > 0 {
			p.drawer.edge(n, painter.Color(apptheme.ColorPaperRule), size.Width)
		}
		p.drawer.page(n, p.layout.Width, p.layout.Height, &p.layout.Pages[n])
	}
	return append(objects, p.drawer.end()...)
}

// span is a stretch of the pages, from the top down, in Fyne's units.
type span struct{ from, to float32 }

func (s span) high() float32 { return s.to - s.from }

// find returns the place of a fact on the pages.
func (p *Pages) find(field string) (span, bool) {
	v := p.View()
	for n := range p.layout.Pages {
		if a, found := p.layout.Pages[n].Find(field); found {
			return v.span(n, a), true
		}
	}
	return span{}, false
}

// span returns the place of an area on the screen.
func (v view) span(page int, a paper.Area) span {
	return span{v.tops[page] + v.unit(a.Top), v.tops[page] + v.unit(a.Bottom)}
}

// wanted is the stretch to have in sight with a fact, through a window so high: the
// first page, else its sum, else the fact and a little around it, with the sum
// below where there is room for both.
func (p *Pages) wanted(fact span) span {
	v := p.View()
	sum := v.span(0, p.layout.Pages[0].Sum())
	edge := v.unit(4 * paper.Point)
	sum = span{sum.from - edge, sum.to + edge}
	for _, whole := range []span{{0, v.tops[0] + v.unit(p.ends[0])}, sum} {
		if whole.from <= fact.from && fact.to <= whole.to && whole.high() <= p.room {
			return whole
		}
	}
	around := 3 * fact.high()
	want := span{fact.from - around, fact.to + around}
	if sum.to-want.from <= p.room {
		want.to = max(want.to, sum.to)
	}
	return want
}
