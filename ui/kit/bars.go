package kit

import (
	"tenthpoint/ui/model"

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

// CreateRenderer is Fyne's way to draw the chart.
func (c *BarChart) CreateRenderer() fyne.WidgetRenderer { return newDrawing(c) }

func (c *BarChart) least() fyne.Size {
	p := penFor(c)
	return fyne.NewSize(20*p.measure("0", chartLetters).Width, 5*p.lineHeight(chartLetters))
}

func (c *BarChart) draw(size fyne.Size) []fyne.CanvasObject {
	p := penFor(c)
	line := p.lineHeight(chartLetters)
	left := guideRoom(p, c.guides)
	d := &plot{pen: p, left: left, top: line + 2, width: size.Width - left, height: size.Height - 2*line - 4}
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

// valuesFit tells whether all values can stand over their bars.
func (c *BarChart) valuesFit(p pen, slot float32) bool {
	for _, bar := range c.bars {
		if p.measure(bar.Value, barValue).Width > slot-2 {
			return false
		}
	}
	return true
}

var barValue = lettering{size: SizeNote, color: ColorInk}

func (d *plot) bar(b model.Bar, x, slot float32, value bool) {
	color := ColorBar
	if b.State != model.Plain {
		color = stateInk(b.State)
	}
	gap := max(1, floor(slot/6))
	top := d.y(b.Height)
	body := fyne.NewSize(floor(slot-2*gap), d.top+d.height-top)
	d.add(d.block(color, fyne.NewPos(x+gap, top), body))
	if value && b.Value != "" {
		d.add(d.writeMiddle(b.Value, barValue, x+slot/2, top-d.lineHeight(barValue)))
	}
}

// labels writes what the bars stand for, leaving out every second or more when
// they would run together.
func (d *plot) labels(bars []model.Bar, slot float32) {
	widest := float32(1)
	for _, bar := range bars {
		widest = max(widest, d.measure(bar.Label, chartLetters).Width+d.pad())
	}
	every := 1
	for every < len(bars) && float32(every)*slot < widest {
		every++
	}
	for i := 0; i < len(bars); i += every {
		middle := d.left + (float32(i)+0.5)*slot
		d.add(d.writeMiddle(bars[i].Label, chartLetters, middle, d.top+d.height+2))
	}
}
