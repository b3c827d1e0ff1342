package charts

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/widget"

	"tenthpoint/internal/grain/look"
	"tenthpoint/ui/apptheme"
	"tenthpoint/ui/model"
	"tenthpoint/ui/paint"
)

// Columns draws a picture of columns: stacked parts in the colour and hatching of what they are, a
// stroke across each for what is usual, and shading from an edge on. One column may be chosen.
type Columns struct {
	widget.BaseWidget

	picture model.Picture
	chosen  int // below zero: none
	left    float32
	slot    float32 // where the columns were drawn last
}

// NewColumns makes an empty picture.
func NewColumns() *Columns {
	c := &Columns{chosen: -1}
	c.ExtendBaseWidget(c)
	return c
}

// Set shows another picture.
func (c *Columns) Set(p model.Picture) {
	c.picture = p
	c.chosen = min(c.chosen, len(p.Stacks)-1)
	c.Refresh()
}

// Count is how many columns there are, Chosen the one that is chosen.
func (c *Columns) Count() int  { return len(c.picture.Stacks) }
func (c *Columns) Chosen() int { return c.chosen }

// Choose marks a column; below zero it marks none.
func (c *Columns) Choose(n int) {
	if n != c.chosen {
		c.chosen = n
		c.Refresh()
	}
}

// At is the column at a place, or below zero.
func (c *Columns) At(place fyne.Position) int {
	if c.slot <= 0 || place.X < c.left {
		return -1
	}
	n := int((place.X - c.left) / c.slot)
	if n >= c.Count() {
		return -1
	}
	return n
}

// CreateRenderer implements fyne.Widget.
func (c *Columns) CreateRenderer() fyne.WidgetRenderer { return paint.NewDrawing(c) }

// LeastSize is room for legend, values, low columns and labels.
func (c *Columns) LeastSize() fyne.Size {
	p := paint.PainterFor(c)
	return fyne.NewSize(22*p.Measure("0", chartLetters).Width, 6*p.LineHeight(chartLetters))
}

// Paint draws the picture.
func (c *Columns) Paint(size fyne.Size) []fyne.CanvasObject {
	p := paint.PainterFor(c)
	d := &columnsDrawing{of: c.picture, chosen: c.chosen, whole: size}
	d.plot = &plot{Painter: p, left: guideRoom(p, c.picture.Guides), width: size.Width}
	line := p.LineHeight(chartLetters)
	d.top = d.legend()
	if len(c.picture.Stacks) == 0 {
		d.left, d.height = 0, size.Height-d.top
		d.nothing(c.picture.Empty)
		return d.objects
	}
	d.top += line + 2
	d.width, d.height = size.Width-d.left, max(1, size.Height-d.top-line-4)
	d.slot = min(d.width/float32(c.Count()), 9*line)
	c.left, c.slot = d.left, d.slot
	d.edge()
	d.limits()
	d.columns()
	d.add(d.Block(apptheme.ColorQuiet, fyne.NewPos(d.left, d.y(d.of.Base)), fyne.NewSize(d.width, 1)))
	d.labelsOf()
	return d.objects
}

// columnsDrawing is a picture of columns while it is drawn.
type columnsDrawing struct {
	*plot
	of     model.Picture
	chosen int
	whole  fyne.Size
	slot   float32
}

// legend writes the names of looks in lines at the top, and returns how high they are.
func (d *columnsDrawing) legend() float32 {
	x, y, line := float32(0), float32(0), d.LineHeight(chartLetters)
	swatch := fyne.NewSize(line, line-4)
	var surfaces []paint.Surface
	next := func(name string) fyne.Position {
		width := swatch.Width + d.Pad() + d.Measure(name, chartLetters).Width
		if x > 0 && x+width > d.whole.Width {
			x, y = 0, y+line
		}
		at := fyne.NewPos(x, y)
		d.add(d.Write(name, chartLetters, at.AddXY(swatch.Width+d.Pad(), 0)))
		x += width + 2*d.Inner()
		return at
	}
	for _, l := range d.of.Legend {
		surfaces = append(surfaces, paint.Surface{Look: l.Look, At: next(l.Name).AddXY(0, 2), Size: swatch})
	}
	if d.of.Stroke != "" {
		at := next(d.of.Stroke)
		d.add(d.Block(apptheme.ColorInk, at.AddXY(0, line/2), fyne.NewSize(swatch.Width, strokeThick)))
	}
	if x == 0 {
		return 0
	}
	d.surfaces(surfaces)
	return y + line
}

func (d *columnsDrawing) surfaces(all []paint.Surface) {
	if len(all) > 0 {
		d.add(d.Surfaces(d.whole, all))
	}
}

// strokeThick is the thickness of the stroke of what is usual.
const strokeThick = 3

// edge shades what lies beyond the edge and names it.
func (d *columnsDrawing) edge() {
	if d.of.Edge.Label == "" {
		return
	}
	x := paint.Floor(d.left + paint.Along(paint.Within(d.of.Edge.At), d.slot*float32(len(d.of.Stacks))))
	end := d.left + d.slot*float32(len(d.of.Stacks))
	d.add(d.Block(apptheme.ColorWarnGround, fyne.NewPos(x, d.top), fyne.NewSize(end-x, d.height)),
		d.Block(apptheme.ColorWarn, fyne.NewPos(x-1, d.top), fyne.NewSize(2, d.height)))
	l := paint.TextStyle{Size: apptheme.SizeNote, Color: apptheme.ColorWarn, Style: paint.Bold}
	at := min(x+d.Pad(), d.whole.Width-d.Measure(d.of.Edge.Label, l).Width)
	d.add(d.Write(d.of.Edge.Label, l, fyne.NewPos(max(d.left, at), d.top-d.LineHeight(l)-1)))
}

// limits draws the lines of the scale; those of a limit are in its own colour.
func (d *columnsDrawing) limits() {
	for _, g := range d.of.Guides {
		color := apptheme.ColorRule
		if g.State != model.Plain {
			color = apptheme.StateInk(g.State)
		}
		y := d.y(g.At)
		d.add(d.Block(color, fyne.NewPos(d.left, y), fyne.NewSize(d.width, 1)),
			d.WriteEnding(g.Label, chartLetters, d.left-2*d.Pad(), y-d.LineHeight(chartLetters)/2))
	}
}

// columns draws the columns under one picture of surfaces, their values and strokes over it.
func (d *columnsDrawing) columns() {
	var surfaces []paint.Surface
	values := d.valuesFit()
	var over []fyne.CanvasObject
	for i, stack := range d.of.Stacks {
		x := d.left + float32(i)*d.slot
		parts, top := d.stack(stack, x)
		surfaces = append(surfaces, parts...)
		foot := top // of the value, which no stroke may cross
		line := d.LineHeight(barValue)
		if stack.Now {
			foot = top - 2*strokeThick
			over = append(over, d.Block(apptheme.ColorFocus, fyne.NewPos(x, foot), fyne.NewSize(d.slot, strokeThick)))
		}
		if stack.HasStroke {
			y := d.y(stack.Stroke) - 1
			if y < foot && y+strokeThick > foot-line {
				foot = y
			}
			over = append(over, d.Block(apptheme.ColorInk, fyne.NewPos(x, y), fyne.NewSize(d.slot, strokeThick)))
		}
		if values && stack.Value != "" {
			over = append(over, d.WriteMiddle(stack.Value, barValue, x+d.slot/2, foot-line))
		}
		if i == d.chosen {
			over = append(over, d.Frame(apptheme.ColorFocus, 2, paint.Whole(fyne.NewPos(x, d.top)), fyne.NewSize(max(4, d.slot), d.height)))
		}
	}
	d.surfaces(surfaces)
	d.add(over...)
}

// stack is the surfaces of a column, and where its top is.
func (d *columnsDrawing) stack(stack model.Stack, x float32) (parts []paint.Surface, top float32) {
	gap := max(min(1, d.slot/6), d.slot/8, (d.slot-4*d.LineHeight(chartLetters))/2)
	up, down := d.of.Base, d.of.Base
	for _, part := range stack.Parts {
		from := &up
		if part.Height < 0 {
			from = &down
		}
		a, b := d.y(*from), d.y(*from+part.Height)
		*from += part.Height
		parts = append(parts, surfaceOf(part.Look, x+gap, min(a, b), d.slot-2*gap, max(a, b)-min(a, b)))
	}
	return parts, d.y(up)
}

func surfaceOf(l look.Look, x, y, width, height float32) paint.Surface {
	return paint.Surface{Look: l, At: fyne.NewPos(x, y), Size: fyne.NewSize(width, height)}
}

func (d *columnsDrawing) valuesFit() bool {
	for _, stack := range d.of.Stacks {
		if d.Measure(stack.Value, barValue).Width > d.slot-2 {
			return false
		}
	}
	return true
}

// labelsOf draws the labels below, leaving out every second or more when they would run together.
func (d *columnsDrawing) labelsOf() {
	widest := float32(1)
	for _, stack := range d.of.Stacks {
		widest = max(widest, d.Measure(stack.Label, chartLetters).Width+d.Pad())
	}
	every := 1
	for every < len(d.of.Stacks) && float32(every)*d.slot < widest {
		every++
	}
	for i := 0; i < len(d.of.Stacks); i += every {
		label := d.of.Stacks[i].Label
		half := d.Measure(label, chartLetters).Width / 2
		middle := min(max(d.left+(float32(i)+0.5)*d.slot, half), d.whole.Width-half)
		d.add(d.WriteMiddle(label, chartLetters, middle, d.top+d.height+2))
	}
}
