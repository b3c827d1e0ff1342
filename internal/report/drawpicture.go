package report

import (
	"tenthpoint/internal/grain/look"
	"tenthpoint/internal/message"
	"tenthpoint/internal/paper"
)

const (
	pictureTall  = 96 * pt // of the columns
	hatchThick   = 0.5 * pt
	guideThick   = 0.5 * pt
	slotMost     = 82 * pt
	swatchWide   = 10 * pt
	edgedFrom    = 6 * pt // narrower columns have no outline
	legendBeside = 9 * pt
)

var (
	edgeInk  = paper.Colour(236, 228, 208)
	limitInk = paper.Grey(40)
	todayInk = paper.Grey(0)
)

// picture is a picture of a width.
func (s *sheet) picture(p Picture, room paper.Length) paper.Block {
	var out paper.Block
	d := &pictureDrawing{Block: &out, say: s.say, of: p, room: room}
	d.head()
	if len(p.Stacks) == 0 {
		out.Height = d.top + out.Paragraph(0, d.top, wrap(s.say.Text(p.Empty), room, smallStyle), smallStyle)
		return out
	}
	d.frame()
	d.edge()
	d.guides()
	values := d.valuesFit()
	for i, stack := range p.Stacks {
		d.stack(stack, d.left+paper.Length(i)*d.slot, values)
	}
	d.labels()
	ground := d.y(p.Base)
	out.Line(d.left, ground, d.left+d.width, ground, 0.6*pt, black)
	out.Height = d.top + pictureTall + barStyle.Leading() + 4*pt
	return out
}

// pictureDrawing is a picture while it is drawn.
type pictureDrawing struct {
	*paper.Block
	say                          *message.Printer
	of                           Picture
	room, top, left, width, slot paper.Length
}

// head writes title, sentence and legend.
func (d *pictureDrawing) head() {
	d.top = d.Paragraph(0, 0, wrap(d.say.Text(d.of.Title), d.room, plainStyle.Strong()), plainStyle.Strong())
	if says := d.say.Text(d.of.Says); says != "" {
		d.top += d.Paragraph(0, d.top, wrap(says, d.room, smallStyle), smallStyle)
	}
	d.top += 2 * pt
	d.legend()
}

func (d *pictureDrawing) legend() {
	x, line := paper.Length(0), smallStyle.Leading()
	next := func(width paper.Length) paper.Length {
		if x > 0 && x+width > d.room {
			x, d.top = 0, d.top+line
		}
		at := x
		x += width + legendBeside
		return at
	}
	for _, l := range d.of.Legend {
		name := d.say.Text(l.Name)
		at := next(swatchWide + 3*pt + smallStyle.Width(name))
		d.surface(l.Look, at, d.top+1*pt, swatchWide, line-3*pt)
		d.Text(at+swatchWide+3*pt, d.top+smallStyle.Baseline(), name, smallStyle)
	}
	if name := d.say.Text(d.of.Stroke); name != "" {
		at := next(swatchWide + 3*pt + smallStyle.Width(name))
		d.Line(at, d.top+line/2, at+swatchWide, d.top+line/2, 1.4*pt, black)
		d.Text(at+swatchWide+3*pt, d.top+smallStyle.Baseline(), name, smallStyle)
	}
	if x > 0 {
		d.top += line
	}
}

// frame finds the place of the columns: right of the values of the guides.
func (d *pictureDrawing) frame() {
	for _, g := range d.of.Guides {
		d.left = max(d.left, barStyle.Width(d.say.Text(g.Label))+4*pt)
	}
	d.top += barStyle.Leading() + 2*pt
	d.slot = min(slotMost, (d.room-d.left)/paper.Length(len(d.of.Stacks)))
	d.width = d.slot * paper.Length(len(d.of.Stacks))
}

// y is the place of a height.
func (d *pictureDrawing) y(permille int) paper.Length {
	return d.top + pictureTall - pictureTall*paper.Length(max(0, min(1000, permille)))/1000
}

func (d *pictureDrawing) edge() {
	if d.of.Edge.IsZero() {
		return
	}
	x := d.left + d.width*paper.Length(d.of.Edge.At)/1000
	d.Box(x, d.top, d.left+d.width-x, pictureTall, edgeInk, noInk)
	d.Line(x, d.top, x, d.top+pictureTall, 1*pt, limitInk)
	label := d.say.Text(d.of.Edge.Label)
	at := min(x+2*pt, d.left+d.width-barStyle.Width(label))
	d.Text(max(d.left, at), d.top-barStyle.Leading()+barStyle.Baseline(), label, barStyle.Strong())
}

func (d *pictureDrawing) guides() {
	for _, g := range d.of.Guides {
		y, ink := d.y(g.At), rowInk
		if g.Limit {
			ink = limitInk
		}
		d.Box(d.left, y-guideThick/2, d.width, guideThick, ink, noInk) // under the columns, as lines never are
		d.TextEnding(d.left-3*pt, y-barStyle.Leading()/2+barStyle.Baseline(), d.say.Text(g.Label), barStyle)
	}
}

// valuesFit reports whether all values fit over their columns; an edge has its name there.
func (d *pictureDrawing) valuesFit() bool {
	for _, stack := range d.of.Stacks {
		if barStyle.Width(d.say.Text(stack.Value)) > d.slot-1*pt {
			return false
		}
	}
	return true
}

func (d *pictureDrawing) stack(stack Stack, left paper.Length, values bool) {
	gap := max(d.slot/6, (d.slot-30*pt)/2)
	x, width := left+gap, d.slot-2*gap
	up, down := d.of.Base, d.of.Base
	for _, part := range stack.Parts {
		from := &up
		if part.Height < 0 {
			from = &down
		}
		a, b := d.y(*from), d.y(*from+part.Height)
		*from += part.Height
		d.surface(part.Look, x, min(a, b), width, max(a, b)-min(a, b))
	}
	if stack.HasStroke {
		y := d.y(stack.Stroke)
		d.Line(left, y, left+d.slot, y, 1.4*pt, black)
	}
	if stack.Now {
		y := d.y(up) - 2*pt
		d.Line(left, y, left+d.slot, y, 1.2*pt, todayInk)
	}
	if values {
		d.TextMiddle(left+d.slot/2, d.y(up)-barStyle.Leading()+barStyle.Baseline(), d.say.Text(stack.Value), barStyle)
	}
}

// labels writes the labels below, leaving out every second or more when they would run together.
func (d *pictureDrawing) labels() {
	widest := paper.Length(1)
	for _, stack := range d.of.Stacks {
		widest = max(widest, barStyle.Width(d.say.Text(stack.Label))+3*pt)
	}
	every := int((widest + d.slot - 1) / d.slot)
	for i := 0; i < len(d.of.Stacks); i += max(1, every) {
		d.TextMiddle(d.left+paper.Length(i)*d.slot+d.slot/2, d.top+pictureTall+2*pt+barStyle.Baseline(), d.say.Text(d.of.Stacks[i].Label), barStyle)
	}
}

// surface fills a rectangle with a look.
func (d *pictureDrawing) surface(l look.Look, x, y, width, height paper.Length) {
	if width <= 0 || height <= 0 {
		return
	}
	ink := inkOf(l.Light)
	if l.Hatch.IsFull() {
		d.Box(x, y, width, height, ink, noInk)
		return
	}
	edge := noInk
	if width >= edgedFrom && height >= edgedFrom/2 {
		edge = ink
	}
	d.Box(x, y, width, height, inkOf(l.Light.Toward(white, look.Washed)), edge)
	for _, s := range l.Hatch.Strokes(int(x), int(y), int(width), int(height), int(hatchThick)) {
		d.Line(paper.Length(s.X1), paper.Length(s.Y1), paper.Length(s.X2), paper.Length(s.Y2), hatchThick, ink)
	}
}

var white = look.Colour{Red: 255, Green: 255, Blue: 255}

func inkOf(c look.Colour) paper.Ink { return paper.Colour(c.Red, c.Green, c.Blue) }
