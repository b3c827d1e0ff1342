package kit

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"
)

// RulerMarkKind says what a mark on a ruler is for.
type RulerMarkKind int

// The kinds of mark.
const (
	MarkTenth   RulerMarkKind = iota // a short stroke, never labelled
	MarkPoint                        // a long stroke, labelled beneath
	MarkLimit                        // a line across with its name over it: trigger, shrink-to
	MarkReading                      // the pointer: where this load stands
)

// RulerMark is one mark. At is its place in thousandths of the ruler's length.
type RulerMark struct {
	Label string
	At    int
	Kind  RulerMarkKind
	State State // the colour of a reading
}

// RulerBand is a stretch of the ruler, in thousandths. It is laid in colour; with
// Around it is a clamp about the reading: how far that may be off.
type RulerBand struct {
	From, To int
	Label    string
	Around   bool
}

// MoistureRuler draws moisture as a ruler: the points along it, the stretch
// that is dry enough, the limits that cost money, and the load's reading.
type MoistureRuler struct {
	widget.BaseWidget
	marks []RulerMark
	bands []RulerBand
}

// NewMoistureRuler makes a bare ruler.
func NewMoistureRuler() *MoistureRuler {
	r := &MoistureRuler{}
	r.ExtendBaseWidget(r)
	return r
}

// Set shows other marks and bands.
func (r *MoistureRuler) Set(marks []RulerMark, bands ...RulerBand) {
	r.marks, r.bands = marks, bands
	r.Refresh()
}

// CreateRenderer is Fyne's way to draw the ruler.
func (r *MoistureRuler) CreateRenderer() fyne.WidgetRenderer { return newDrawing(r) }

var (
	rulerPoint   = lettering{size: SizeNote, color: ColorQuiet}
	rulerLimit   = lettering{size: SizeNote, color: ColorInk}
	rulerReading = lettering{size: SizeStatus, color: theme.ColorNameBackground, style: bold}
)

// layout of the ruler from the top: the reading's tag, two lines of limit
// names, the ruler itself, the figures beneath.
type rulerRows struct{ tag, limits, body, bottom, figures, end float32 }

func (r *MoistureRuler) rows(p pen) rulerRows {
	var y rulerRows
	y.limits = p.lineHeight(rulerReading) + p.pad()
	y.body = y.limits + 2*p.lineHeight(rulerLimit) + p.pad()
	y.bottom = y.body + 2*p.lineHeight(rulerPoint)
	y.figures = y.bottom + 2
	y.end = y.figures + p.lineHeight(rulerPoint)
	return y
}

func (r *MoistureRuler) least() fyne.Size {
	p := penFor(r)
	return fyne.NewSize(20*p.measure("0", rulerPoint).Width, r.rows(p).end)
}

// inset keeps the outermost figures inside the widget.
func (r *MoistureRuler) inset(p pen) float32 { return 2 * p.measure("00", rulerPoint).Width }

func (r *MoistureRuler) draw(size fyne.Size) []fyne.CanvasObject {
	d := &rulerDrawing{pen: penFor(r), size: size}
	d.rows = r.rows(d.pen)
	d.inset = r.inset(d.pen)
	d.body()
	for _, band := range r.bands {
		if !band.Around {
			d.band(band)
		}
	}
	for _, mark := range r.marks {
		if mark.Kind == MarkTenth || mark.Kind == MarkPoint {
			d.stroke(mark)
		}
	}
	d.add(d.block(ColorInk, fyne.NewPos(d.x(0), d.rows.bottom-1), fyne.NewSize(d.x(1000)-d.x(0)+1, 2)))
	d.limits(r.marks)
	for _, band := range r.bands {
		if band.Around {
			d.clamp(band)
		}
	}
	for _, mark := range r.marks {
		if mark.Kind == MarkReading {
			d.reading(mark)
		}
	}
	return d.objects
}

// rulerDrawing is one drawing of a ruler at a size.
type rulerDrawing struct {
	pen
	size    fyne.Size
	rows    rulerRows
	inset   float32
	objects []fyne.CanvasObject
}

func (d *rulerDrawing) add(o ...fyne.CanvasObject) { d.objects = append(d.objects, o...) }

// x is the place of so many thousandths, on a whole unit.
func (d *rulerDrawing) x(permille int) float32 {
	return floor(d.inset + along(within(permille), d.size.Width-2*d.inset))
}

// body is the blank of the ruler, with a line round it.
func (d *rulerDrawing) body() {
	blank := d.block(theme.ColorNameInputBackground, fyne.NewPos(d.x(0), d.rows.body), fyne.NewSize(d.x(1000)-d.x(0), d.rows.bottom-d.rows.body))
	blank.StrokeColor, blank.StrokeWidth = d.color(ColorRule), 1
	d.add(blank)
}

func (d *rulerDrawing) band(b RulerBand) {
	from, to := d.x(b.From), d.x(b.To)
	if to <= from {
		return
	}
	height := d.rows.bottom - d.rows.body
	d.add(d.block(ColorBand, fyne.NewPos(from, d.rows.body), fyne.NewSize(to-from, height)))
	l := lettering{size: SizeNote, color: ColorInk}
	if width := d.measure(b.Label, l).Width; b.Label != "" && width < to-from {
		d.add(d.writeMiddle(b.Label, l, (from+to)/2, d.rows.body))
	}
}

// clamp is a line with an end at either side, and its name beside it where there
// is room.
func (d *rulerDrawing) clamp(b RulerBand) {
	from, to := d.x(b.From), d.x(b.To)
	if to <= from {
		return
	}
	height := floor((d.rows.bottom - d.rows.body) / 3)
	middle := d.rows.body + floor(height/2)
	d.add(d.block(ColorWait, fyne.NewPos(from, d.rows.body), fyne.NewSize(2, height)),
		d.block(ColorWait, fyne.NewPos(to-2, d.rows.body), fyne.NewSize(2, height)),
		d.block(ColorWait, fyne.NewPos(from, middle), fyne.NewSize(to-from, 2)))
	l := lettering{size: SizeNote, color: ColorWait}
	if width := d.measure(b.Label, l).Width + d.pad(); b.Label != "" && to+width < d.x(1000) {
		d.add(d.write(b.Label, l, fyne.NewPos(to+d.pad(), middle-d.lineHeight(l)/2+1)))
	}
}

func (d *rulerDrawing) stroke(m RulerMark) {
	length := (d.rows.bottom - d.rows.body) / 5
	width := float32(1)
	if m.Kind == MarkPoint {
		length, width = 2*length, 2
		d.add(d.writeMiddle(m.Label, rulerPoint, d.x(m.At), d.rows.figures))
	}
	d.add(d.block(ColorInk, fyne.NewPos(d.x(m.At)-floor(width/2), d.rows.bottom-length), fyne.NewSize(width, length)))
}

// limits draws the lines across and their names. A name that would run into
// its neighbour goes one line up.
func (d *rulerDrawing) limits(marks []RulerMark) {
	height := d.lineHeight(rulerLimit)
	pointer := d.pointer(marks)
	ends := [2]float32{-1e6, -1e6} // where the names on the lower and upper line end
	for _, m := range marks {
		if m.Kind != MarkLimit {
			continue
		}
		x := d.x(m.At)
		width := d.measure(m.Label, rulerLimit).Width
		left := d.clear(min(max(0, x-width/2), d.size.Width-width), width, x, pointer)
		line := 0
		if left < ends[0]+d.inner() {
			line = 1
		}
		ends[line] = left + width
		top := d.rows.body - d.pad()/2 - float32(line+1)*height
		d.add(d.block(ColorInk, fyne.NewPos(x-1, top+height), fyne.NewSize(2, d.rows.bottom-top-height)),
			d.write(m.Label, rulerLimit, fyne.NewPos(left, top)))
	}
}

// pointer is where the reading's pointer comes down, or far off without one.
func (d *rulerDrawing) pointer(marks []RulerMark) float32 {
	for _, m := range marks {
		if m.Kind == MarkReading {
			return d.x(m.At)
		}
	}
	return -1e6
}

// clear moves a limit's name off the pointer, to the side its limit is on, where
// there is room.
func (d *rulerDrawing) clear(left, width, limit, pointer float32) float32 {
	room := d.pad() + d.pen.size(SizeMark)
	switch {
	case pointer < left-room || pointer > left+width+room:
		return left
	case limit <= pointer && pointer-room-width >= 0:
		return pointer - room - width
	case limit > pointer && pointer+room+width <= d.size.Width:
		return pointer + room
	}
	return left
}

// reading draws the pointer with its value on a tag.
func (d *rulerDrawing) reading(m RulerMark) {
	x := d.x(m.At)
	mark := d.pen.size(SizeMark) + 1
	width := d.measure(m.Label, rulerReading).Width + 2*d.inner()
	left := min(max(0, x-width/2), d.size.Width-width)
	tag := d.block(m.State.ink(), fyne.NewPos(left, 0), fyne.NewSize(width, d.lineHeight(rulerReading)))
	d.add(d.block(m.State.ink(), fyne.NewPos(x-mark/2, 0), fyne.NewSize(mark, d.rows.bottom)),
		tag, d.write(m.Label, rulerReading, fyne.NewPos(left+d.inner(), 0)))
}
