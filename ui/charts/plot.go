package charts

import (
	"tenthpoint/ui/apptheme"
	"tenthpoint/ui/model"
	"tenthpoint/ui/paint"

	"fyne.io/fyne/v2"
)

var barValue = paint.TextStyle{Size: apptheme.SizeNote, Color: apptheme.ColorInk}

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
