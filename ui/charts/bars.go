package charts

import (
	"tenthpoint/ui/apptheme"
	"tenthpoint/ui/model"
	"tenthpoint/ui/paint"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/widget"
)

// BarChart shows a few amounts side by side: loads by hour, bushels by bin.
type BarChart struct {
	widget.BaseWidget

	// Empty is the sentence shown when there are no bars.
	Empty string

	bars   []model.Bar
	guides []model.Guide
}

// NewBarChart makes an empty chart.
func NewBarChart() *BarChart {
	c := &BarChart{}
	c.ExtendBaseWidget(c)
	return c
}

// Set shows other bars, and the lines of the scale behind them.
func (c *BarChart) Set(bars []model.Bar, guides ...model.Guide) {
	c.bars, c.guides = bars, guides
	c.Refresh()
}

// CreateRenderer implements fyne.Widget.
func (c *BarChart) CreateRenderer() fyne.WidgetRenderer { return paint.NewDrawing(c) }

func (c *BarChart) LeastSize() fyne.Size {
	p := paint.PainterFor(c)
	return fyne.NewSize(20*p.Measure("0", chartLetters).Width, 5*p.LineHeight(chartLetters))
}

func (c *BarChart) Paint(size fyne.Size) []fyne.CanvasObject {
	p := paint.PainterFor(c)
	line := p.LineHeight(chartLetters)
	left := guideRoom(p, c.guides)
	d := &plot{Painter: p, left: left, top: line + 2, width: size.Width - left, height: size.Height - 2*line - 4}
	d.guides(c.guides)
	d.base()
	if len(c.bars) == 0 {
		d.nothing(c.Empty)
		return d.objects
	}
	slot := d.width / float32(len(c.bars))
	values := c.valuesFit(p, slot)
	for i, bar := range c.bars {
		d.bar(bar, d.left+float32(i)*slot, slot, values)
	}
	d.labels(c.bars, slot)
	return d.objects
}

// valuesFit reports whether all values fit over their bars.
func (c *BarChart) valuesFit(p paint.Painter, slot float32) bool {
	for _, bar := range c.bars {
		if p.Measure(bar.Value, barValue).Width > slot-2 {
			return false
		}
	}
	return true
}

var barValue = paint.TextStyle{Size: apptheme.SizeNote, Color: apptheme.ColorInk}

func (d *plot) bar(b model.Bar, x, slot float32, value bool) {
	color := apptheme.ColorBar
	if b.State != model.Plain {
		color = apptheme.StateInk(b.State)
	}
	gap := max(1, paint.Floor(slot/6))
	top := d.y(b.Height)
	body := fyne.NewSize(paint.Floor(slot-2*gap), d.top+d.height-top)
	d.add(d.Block(color, fyne.NewPos(x+gap, top), body))
	if value && b.Value != "" {
		d.add(d.WriteMiddle(b.Value, barValue, x+slot/2, top-d.LineHeight(barValue)))
	}
}

// labels draws the labels of the bars, leaving out every second or more when they would run
// together.
func (d *plot) labels(bars []model.Bar, slot float32) {
	widest := float32(1)
	for _, bar := range bars {
		widest = max(widest, d.Measure(bar.Label, chartLetters).Width+d.Pad())
	}
	every := 1
	for every < len(bars) && float32(every)*slot < widest {
		every++
	}
	for i := 0; i < len(bars); i += every {
		middle := d.left + (float32(i)+0.5)*slot
		d.add(d.WriteMiddle(bars[i].Label, chartLetters, middle, d.top+d.height+2))
	}
}

// plot is the inside of a chart: the part where values are drawn, with room
// left for labels around it.
type plot struct {
	paint.Painter
	left, top, width, height float32
	objects                  []fyne.CanvasObject
}

var chartLetters = paint.TextStyle{Size: apptheme.SizeNote, Color: apptheme.ColorQuiet}

func (c *plot) add(o ...fyne.CanvasObject) { c.objects = append(c.objects, o...) }

// x and y turn thousandths into places; y counts from the bottom.
func (c *plot) x(permille int) float32 {
	return paint.Floor(c.left + paint.Along(paint.Within(permille), c.width))
}
func (c *plot) y(permille int) float32 {
	return paint.Floor(c.top + c.height - paint.Along(paint.Within(permille), c.height))
}

// base draws the axis under the bars.
func (c *plot) base() {
	c.add(c.Block(apptheme.ColorQuiet, fyne.NewPos(c.left, c.top+c.height), fyne.NewSize(c.width, 1)))
}

// guides draws the faint lines of the scale with their values at the left.
func (c *plot) guides(guides []model.Guide) {
	for _, g := range guides {
		y := c.y(g.At)
		c.add(c.Block(apptheme.ColorRule, fyne.NewPos(c.left, y), fyne.NewSize(c.width, 1)),
			c.WriteEnding(g.Label, chartLetters, c.left-2*c.Pad(), y-c.LineHeight(chartLetters)/2))
	}
}

// guideRoom is the width the labels at the left need.
func guideRoom(p paint.Painter, guides []model.Guide) float32 {
	widest := float32(0)
	for _, g := range guides {
		widest = max(widest, p.Measure(g.Label, chartLetters).Width)
	}
	return widest + 3*p.Pad()
}

// nothing writes the sentence of an empty chart in its middle.
func (c *plot) nothing(text string) {
	l := chartLetters
	y := c.top + (c.height-c.LineHeight(l))/2
	c.add(c.WriteMiddle(c.Clip(text, l, c.width), l, c.left+c.width/2, y))
}
