package charts

import (
	"image/color"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/widget"

	"tenthpoint/internal/grain/look"
	"tenthpoint/ui/apptheme"
	"tenthpoint/ui/model"
	"tenthpoint/ui/paint"
)

// Curves draws figures against another one as lines laid over each other, with their names above.
type Curves struct {
	widget.BaseWidget
	picture model.Curves
}

// NewCurves makes an empty picture.
func NewCurves() *Curves {
	c := &Curves{}
	c.ExtendBaseWidget(c)
	return c
}

// Set shows other curves.
func (c *Curves) Set(p model.Curves) {
	c.picture = p
	c.Refresh()
}

// CreateRenderer implements fyne.Widget.
func (c *Curves) CreateRenderer() fyne.WidgetRenderer { return paint.NewDrawing(c) }

// LeastSize is room for names, a low picture and the values below.
func (c *Curves) LeastSize() fyne.Size {
	p := paint.PainterFor(c)
	return fyne.NewSize(18*p.Measure("0", chartLetters).Width, 5*p.LineHeight(chartLetters))
}

// Paint draws the picture.
func (c *Curves) Paint(size fyne.Size) []fyne.CanvasObject {
	p := paint.PainterFor(c)
	line := p.LineHeight(chartLetters)
	d := &plot{Painter: p, left: guideRoom(p, c.picture.Guides), top: 2.5 * line}
	d.width, d.height = size.Width-d.left-d.Pad(), max(1, size.Height-d.top-line-4)
	title := paint.TextStyle{Size: apptheme.SizeNote, Color: apptheme.ColorInk, Style: paint.Bold}
	d.add(d.Write(d.Clip(c.picture.Title, title, size.Width), title, fyne.NewPos(0, 0)))
	if len(c.picture.Curves) == 0 {
		d.nothing(c.picture.Empty)
		return d.objects
	}
	d.guides(c.picture.Guides)
	d.base()
	for _, g := range c.picture.Below {
		half := d.Measure(g.Label, chartLetters).Width / 2
		d.add(d.WriteMiddle(g.Label, chartLetters, min(max(d.x(g.At), d.left+half), size.Width-half), d.top+d.height+2))
	}
	x := float32(0)
	for i, curve := range c.picture.Curves {
		ink := apptheme.LookInk(p.Theme, look.Kind(i))
		d.line(ink, curve.Dashed, fyne.NewPos(x, 1.5*line), fyne.NewPos(x+2*line, 1.5*line))
		at := x + 2*line + d.Pad()
		d.add(d.Write(curve.Name, chartLetters, fyne.NewPos(at, line)))
		x = at + d.Measure(curve.Name, chartLetters).Width + 2*d.Inner()
		for n := 1; n < len(curve.Points); n++ {
			a, b := curve.Points[n-1], curve.Points[n]
			d.line(ink, curve.Dashed && n%2 == 0, fyne.NewPos(d.x(a.X), d.y(a.Y)), fyne.NewPos(d.x(b.X), d.y(b.Y)))
		}
	}
	return d.objects
}

// line draws a piece of a curve; half of it where it is dashed.
func (c *plot) line(ink color.Color, half bool, from, to fyne.Position) {
	if half {
		to = fyne.NewPos((from.X+to.X)/2, (from.Y+to.Y)/2)
	}
	l := canvas.NewLine(ink)
	l.StrokeWidth = 2.5
	l.Position1, l.Position2 = from, to
	c.add(l)
}
