package paperview

import (
	"slices"
	"strings"
	"tenthpoint/ui/apptheme"
	"tenthpoint/ui/model"
	"tenthpoint/ui/paint"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/widget"
)

// Card shows lines: a grower, an edition, a working. Figures end at the right edge; digits are
// equally wide, so they line up. It is as high as its lines need at the width it has.
//
// Seen through a window that scrolls, it draws only the rows in sight, and
// takes the largest size of type in which all of it shows.
type Card struct {
	widget.BaseWidget
	lines      []model.CardLine
	width      float32     // the width last given, for saying how high it needs to be
	room       float32     // how high the window over it is; 0 without one
	caches     []lineCache // one for each size of type
	first, end int         // the rows that are drawn
	bare       bareSheet
}

// NewCard makes an empty card.
func NewCard() *Card {
	p := &Card{caches: make([]lineCache, len(paint.TypeSizes))}
	p.ExtendBaseWidget(p)
	return p
}

// SetLines shows other lines.
func (p *Card) SetLines(lines []model.CardLine) {
	if p.put(lines) {
		p.Refresh()
	}
}

// put takes other lines and reports whether they are others.
func (p *Card) put(lines []model.CardLine) bool {
	lines = withDashes(lines)
	if slices.Equal(p.lines, lines) {
		return false
	}
	p.lines = lines
	return true
}

var dashes = strings.NewReplacer("\u2212", "\u2013")

// withDashes replaces the minus sign, which the screen font lacks, with a dash: another font would
// draw it off the baseline.
func withDashes(lines []model.CardLine) []model.CardLine {
	out := slices.Clone(lines)
	for i := range out {
		out[i].Right, out[i].Note = dashes.Replace(out[i].Right), dashes.Replace(out[i].Note)
	}
	return out
}

// Lines returns the lines of the card.
func (p *Card) Lines() []model.CardLine { return p.lines }

// CreateRenderer implements fyne.Widget.
func (p *Card) CreateRenderer() fyne.WidgetRenderer { return paint.NewDrawing(p) }

// Resize notes the width: lines wrap to it, and the height follows.
func (p *Card) Resize(size fyne.Size) {
	changed := p.width != size.Width
	p.width = size.Width
	p.BaseWidget.Resize(size)
	if changed {
		canvas.Refresh(p)
	}
}

// Move draws what came into sight.
func (p *Card) Move(at fyne.Position) {
	if at == p.Position() {
		return
	}
	p.BaseWidget.Move(at)
	if first, end := p.inSight(p.InType()); first != p.first || end != p.end {
		p.Refresh()
	}
}

// LeastSize is only the width until there is one that lines can wrap to.
func (p *Card) LeastSize() fyne.Size {
	if p.width == 0 {
		return fyne.NewSize(p.leastWidth(), 0)
	}
	return fyne.NewSize(p.leastWidth(), p.InType().height())
}

func (p *Card) leastWidth() float32 {
	s := cardLayout{Painter: paint.PainterFor(p)}
	return s.leastWidth()
}

func (p *Card) Paint(size fyne.Size) []fyne.CanvasObject {
	g := p.InType()
	objects := p.bare.fit(paint.PainterFor(p), size)
	p.first, p.end = p.inSight(g)
	for _, row := range g.rows[p.first:p.end] {
		objects = append(objects, row.objects...)
	}
	return objects
}

// inSight returns the range of rows visible in the window.
func (p *Card) inSight(g *lineCache) (first, end int) {
	if p.room == 0 {
		return 0, len(g.rows)
	}
	top := -p.Position().Y
	for first < len(g.rows) && g.rows[first].bottom() <= top {
		first++
	}
	for end = first; end < len(g.rows) && g.rows[end].Top < top+p.room; end++ {
	}
	return first, end
}

// InType has the lines set: in the largest size in which all of the card shows, else
// in the ordinary one.
func (p *Card) InType() *lineCache {
	painter, width := paint.PainterFor(p), max(p.width, p.leastWidth())
	for i := range paint.TypeSizes {
		g := &p.caches[i]
		g.set(painter.InSize(paint.TypeSizes[i]), width, p.lines)
		if g.height() <= p.room {
			return g
		}
		if g.height() > farToo*p.room {
			break
		}
	}
	return &p.caches[0]
}

// farToo is the ratio of a card's height to its window's from which no smaller text size can make
// it fit.
const farToo = 2

// bareSheet is the paper itself. Its edges are thin blocks: a frame around a
// long sheet would be slow to paint. It is kept while painter and size stay.
type bareSheet struct {
	painter paint.Painter
	size    fyne.Size
	objects []fyne.CanvasObject
}

// fit returns the blocks of a sheet, in a slice of their own.
func (b *bareSheet) fit(p paint.Painter, size fyne.Size) []fyne.CanvasObject {
	if b.objects == nil || b.painter != p || b.size != size {
		edge := func(x, y, wide, high float32) fyne.CanvasObject {
			return p.Block(apptheme.ColorPaperRule, fyne.NewPos(x, y), fyne.NewSize(wide, high))
		}
		*b = bareSheet{painter: p, size: size, objects: []fyne.CanvasObject{
			p.Block(apptheme.ColorPaper, fyne.NewPos(0, 0), size),
			edge(0, 0, size.Width, 1),
			edge(0, 0, 1, size.Height),
			edge(size.Width-1, 0, 1, size.Height),
			edge(0, size.Height-1, size.Width, 1),
		}}
	}
	return append([]fyne.CanvasObject{}, b.objects...)
}
