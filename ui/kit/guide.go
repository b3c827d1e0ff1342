package kit

import (
	"tenthpoint/ui/model"

	"fyne.io/fyne/v2"
)

// plot is the inside of a chart: the part where values are drawn, with room
// left for labels around it.
type plot struct {
	pen
	left, top, width, height float32
	objects                  []fyne.CanvasObject
}

var chartLetters = lettering{size: SizeNote, color: ColorQuiet}

func (c *plot) add(o ...fyne.CanvasObject) { c.objects = append(c.objects, o...) }

// x and y turn thousandths into places; y counts from the bottom.
func (c *plot) x(permille int) float32 { return floor(c.left + along(within(permille), c.width)) }
func (c *plot) y(permille int) float32 {
	return floor(c.top + c.height - along(within(permille), c.height))
}

// base is the line the values stand on.
func (c *plot) base() {
	c.add(c.block(ColorQuiet, fyne.NewPos(c.left, c.top+c.height), fyne.NewSize(c.width, 1)))
}

// guides draws the faint lines of the scale with their values at the left.
func (c *plot) guides(guides []model.Guide) {
	for _, g := range guides {
		y := c.y(g.At)
		c.add(c.block(ColorRule, fyne.NewPos(c.left, y), fyne.NewSize(c.width, 1)),
			c.writeEnding(g.Label, chartLetters, c.left-2*c.pad(), y-c.lineHeight(chartLetters)/2))
	}
}

// guideRoom is the width the labels at the left need.
func guideRoom(p pen, guides []model.Guide) float32 {
	widest := float32(0)
	for _, g := range guides {
		widest = max(widest, p.measure(g.Label, chartLetters).Width)
	}
	return widest + 3*p.pad()
}

// nothing writes the sentence of an empty chart in its middle.
func (c *plot) nothing(text string) {
	l := chartLetters
	y := c.top + (c.height-c.lineHeight(l))/2
	c.add(c.writeMiddle(c.clip(text, l, c.width), l, c.left+c.width/2, y))
}
