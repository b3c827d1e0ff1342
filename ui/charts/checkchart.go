package charts

import (
	"cmp"
	"image/color"
	"slices"
	"tenthpoint/ui/apptheme"
	"tenthpoint/ui/model"
	"tenthpoint/ui/paint"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/widget"
)

// CheckChart follows a meter's error from check to check, between the limits
// it must keep.
type CheckChart struct {
	widget.BaseWidget

	// Empty is the sentence shown when there are no points.
	Empty string

	points []model.ChartPoint
	limits []model.Guide // lines across, named at the right
	scale  []model.Guide // values at the left
	days   []model.Guide // labels below
}

// NewCheckChart makes an empty chart.
func NewCheckChart() *CheckChart {
	c := &CheckChart{}
	c.ExtendBaseWidget(c)
	return c
}

// Set shows other points with the limits across them.
func (c *CheckChart) Set(points []model.ChartPoint, limits []model.Guide) {
	c.points, c.limits = points, limits
	c.Refresh()
}

// SetAxes shows values at the left and labels below.
func (c *CheckChart) SetAxes(scale, days []model.Guide) {
	c.scale, c.days = scale, days
	c.Refresh()
}

// CreateRenderer implements fyne.Widget.
func (c *CheckChart) CreateRenderer() fyne.WidgetRenderer { return paint.NewDrawing(c) }

func (c *CheckChart) LeastSize() fyne.Size {
	p := paint.PainterFor(c)
	return fyne.NewSize(24*p.Measure("0", chartLetters).Width, 4*p.LineHeight(chartLetters))
}

func (c *CheckChart) Paint(size fyne.Size) []fyne.CanvasObject {
	p := paint.PainterFor(c)
	line := p.LineHeight(chartLetters)
	left, right := guideRoom(p, c.scale), guideRoom(p, c.limits)
	d := &plot{Painter: p, left: left, top: line, width: size.Width - left - right, height: size.Height - 2*line - 4}
	d.guides(c.scale)
	d.base()
	for i, y := range d.apart(c.limits, line) {
		d.limit(c.limits[i], y)
	}
	for _, day := range c.days {
		half := d.Measure(day.Label, chartLetters).Width / 2
		d.add(d.WriteMiddle(day.Label, chartLetters, max(d.x(day.At), d.left+half), d.top+d.height+2))
	}
	if len(c.points) == 0 {
		d.nothing(c.Empty)
	}
	for i := 1; i < len(c.points); i++ {
		d.join(c.points[i-1], c.points[i])
	}
	for _, point := range c.points {
		d.point(point)
	}
	return d.objects
}

// apart places the names of the limits: each at its line, or where lines are close, as far from the
// next one as the text needs.
func (c *plot) apart(limits []model.Guide, line float32) []float32 {
	out, order := make([]float32, len(limits)), make([]int, len(limits))
	for i := range limits {
		out[i], order[i] = c.y(limits[i].At), i
	}
	slices.SortStableFunc(order, func(a, b int) int { return cmp.Compare(out[a], out[b]) })
	over := float32(0)
	for i := 1; i < len(order); i++ {
		least := out[order[i-1]] + line
		over += max(0, least-out[order[i]])
		out[order[i]] = max(out[order[i]], least)
	}
	if n := len(order); n > 1 {
		for i := range out {
			out[i] -= paint.Floor(over / float32(n))
		}
	}
	return out
}

// limit draws a horizontal line, dashed to tell it from the grid, with its name at the right.
func (c *plot) limit(g model.Guide, name float32) {
	ink := apptheme.StateInk(g.State)
	y := c.y(g.At)
	dash := c.Inner()
	for x := c.left; x < c.left+c.width; x += 2 * dash {
		c.add(c.Block(ink, fyne.NewPos(x, y), fyne.NewSize(min(dash, c.left+c.width-x), 2)))
	}
	l := paint.TextStyle{Size: apptheme.SizeNote, Color: ink, Style: paint.Bold}
	c.add(c.Write(g.Label, l, fyne.NewPos(c.left+c.width+2*c.Pad(), name-c.LineHeight(l)/2)))
}

func (c *plot) join(a, b model.ChartPoint) {
	line := canvas.NewLine(c.Color(apptheme.ColorBar))
	line.StrokeWidth = 2
	line.Position1 = fyne.NewPos(c.x(a.X), c.y(a.Y))
	line.Position2 = fyne.NewPos(c.x(b.X), c.y(b.Y))
	c.add(line)
}

func (c *plot) point(p model.ChartPoint) {
	at, r := fyne.NewPos(c.x(p.X), c.y(p.Y)), c.Pad()
	dot := canvas.NewCircle(c.Color(apptheme.ColorBar))
	dot.Move(at.SubtractXY(r, r))
	dot.Resize(fyne.NewSquareSize(2 * r))
	c.add(dot)
	if p.State == model.Plain {
		return
	}
	ring := canvas.NewCircle(color.Transparent)
	ring.StrokeColor, ring.StrokeWidth = c.Color(apptheme.StateInk(p.State)), 2
	ring.Move(at.SubtractXY(2*r, 2*r))
	ring.Resize(fyne.NewSquareSize(4 * r))
	l := paint.TextStyle{Size: apptheme.SizeNote, Color: apptheme.StateInk(p.State), Style: paint.Bold}
	c.add(ring, c.WriteMiddle(p.Label, l, at.X, max(0, at.Y-2*r-c.LineHeight(l))))
}
