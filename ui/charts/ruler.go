package charts

import (
	"tenthpoint/ui/apptheme"
	"tenthpoint/ui/model"
	"tenthpoint/ui/paint"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"
)

// RulerSize is the height of a ruler.
type RulerSize int

// The sizes of a ruler.
const (
	RulerOrdinary RulerSize = iota
	RulerLow                // one line for the names of limits
	RulerLowest             // the names are beside the reading's tag; one without room there is left out
	RulerTall               // to be read from across the room
)

// MoistureRuler draws moisture as a ruler: the points along it, the stretch
// that is dry enough, the limits that cost money, and the load's reading.
type MoistureRuler struct {
	widget.BaseWidget
	size  RulerSize
	marks []model.Mark
	bands []model.Band
}

// NewMoistureRuler makes a bare ruler.
func NewMoistureRuler() *MoistureRuler {
	r := &MoistureRuler{}
	r.ExtendBaseWidget(r)
	return r
}

// Set shows other marks and bands.
func (r *MoistureRuler) Set(marks []model.Mark, bands ...model.Band) {
	r.marks, r.bands = marks, bands
	r.Refresh()
}

// SetSize sets the height of the ruler.
func (r *MoistureRuler) SetSize(size RulerSize) {
	if r.size != size {
		r.size = size
		r.Refresh()
	}
}

// Height returns the height of the ruler in a size.
func (r *MoistureRuler) Height(size RulerSize) float32 {
	return lettersOfRuler(size).rows(paint.PainterFor(r)).end
}

// CreateRenderer implements fyne.Widget.
func (r *MoistureRuler) CreateRenderer() fyne.WidgetRenderer { return paint.NewDrawing(r) }

// rulerLetters holds the text styles of a ruler of one size, and the number of lines of its parts.
type rulerLetters struct {
	point, limit, reading paint.TextStyle
	names                 int     // lines for the names of limits; none: beside the tag
	body                  float32 // height of the ruler itself, in lines
}

func lettersOfRuler(size RulerSize) rulerLetters {
	l := rulerLetters{
		point:   paint.TextStyle{Size: apptheme.SizeNote, Color: apptheme.ColorQuiet},
		limit:   paint.TextStyle{Size: apptheme.SizeNote, Color: apptheme.ColorInk},
		reading: paint.TextStyle{Size: apptheme.SizeStatus, Color: theme.ColorNameBackground, Style: paint.Bold},
		names:   2, body: 2,
	}
	switch size {
	case RulerLow:
		l.names, l.body = 1, 1.5
	case RulerLowest:
		l.names, l.body = 0, 1.5
	case RulerTall:
		l.point.Size, l.limit.Size, l.reading.Size, l.body = apptheme.SizeStatus, apptheme.SizeStatus, apptheme.SizeFigure, 2.5
	}
	return l
}

// rulerRows are the parts of a ruler from the top: the reading's tag, the lines of
// limits' names, the ruler itself, the figures below.
type rulerRows struct{ tag, body, bottom, figures, end float32 }

func (l rulerLetters) rows(p paint.Painter) rulerRows {
	var y rulerRows
	y.tag = p.LineHeight(l.reading)
	y.body = y.tag + p.Pad() + float32(l.names)*p.LineHeight(l.limit)
	if l.names > 0 {
		y.body += p.Pad()
	}
	y.bottom = y.body + paint.Floor(l.body*p.LineHeight(l.point))
	y.figures = y.bottom + 2
	y.end = y.figures + p.LineHeight(l.point)
	return y
}

func (r *MoistureRuler) LeastSize() fyne.Size {
	p := paint.PainterFor(r)
	return fyne.NewSize(20*p.Measure("0", lettersOfRuler(r.size).point).Width, r.Height(r.size))
}

// inset keeps the outermost figures inside the widget.
func (l rulerLetters) inset(p paint.Painter) float32 { return 2 * p.Measure("00", l.point).Width }

func (r *MoistureRuler) Paint(size fyne.Size) []fyne.CanvasObject {
	d := &rulerDrawing{Painter: paint.PainterFor(r), letters: lettersOfRuler(r.size), size: size}
	d.rows = d.letters.rows(d.Painter)
	d.inset = d.letters.inset(d.Painter)
	d.body()
	for _, band := range r.bands {
		if !band.Around {
			d.band(band)
		}
	}
	for _, mark := range r.marks {
		if mark.Kind == model.TenthMark || mark.Kind == model.PointMark {
			d.stroke(mark)
		}
	}
	d.add(d.Block(apptheme.ColorInk, fyne.NewPos(d.x(0), d.rows.bottom-1), fyne.NewSize(d.x(1000)-d.x(0)+1, 2)))
	d.limits(r.marks)
	for _, band := range r.bands {
		if band.Around {
			d.clamp(band)
		}
	}
	for _, mark := range r.marks {
		if mark.Kind == model.ReadingMark {
			d.reading(mark)
		}
	}
	return d.objects
}

// rulerDrawing is one drawing of a ruler at a size.
type rulerDrawing struct {
	paint.Painter
	letters rulerLetters
	size    fyne.Size
	rows    rulerRows
	inset   float32
	objects []fyne.CanvasObject
}

func (d *rulerDrawing) add(o ...fyne.CanvasObject) { d.objects = append(d.objects, o...) }

// x is the place of so many thousandths, on a whole unit.
func (d *rulerDrawing) x(permille int) float32 {
	return paint.Floor(d.inset + paint.Along(paint.Within(permille), d.size.Width-2*d.inset))
}

// body is the blank of the ruler, with a line round it.
func (d *rulerDrawing) body() {
	blank := d.Block(theme.ColorNameInputBackground, fyne.NewPos(d.x(0), d.rows.body), fyne.NewSize(d.x(1000)-d.x(0), d.rows.bottom-d.rows.body))
	blank.StrokeColor, blank.StrokeWidth = d.Color(apptheme.ColorRule), 1
	d.add(blank)
}

func (d *rulerDrawing) band(b model.Band) {
	from, to := d.x(b.From), d.x(b.To)
	if to <= from {
		return
	}
	height := d.rows.bottom - d.rows.body
	d.add(d.Block(apptheme.ColorBand, fyne.NewPos(from, d.rows.body), fyne.NewSize(to-from, height)))
	l := d.letters.limit
	if width := d.Measure(b.Label, l).Width; b.Label != "" && width < to-from {
		d.add(d.WriteMiddle(b.Label, l, (from+to)/2, d.rows.body))
	}
}

// clamp is a line with an end at either side, and its name beside it where there
// is room.
func (d *rulerDrawing) clamp(b model.Band) {
	from, to := d.x(b.From), d.x(b.To)
	if to <= from {
		return
	}
	height := paint.Floor((d.rows.bottom - d.rows.body) / 3)
	middle := d.rows.body + paint.Floor(height/2)
	d.add(d.Block(apptheme.ColorWait, fyne.NewPos(from, d.rows.body), fyne.NewSize(2, height)),
		d.Block(apptheme.ColorWait, fyne.NewPos(to-2, d.rows.body), fyne.NewSize(2, height)),
		d.Block(apptheme.ColorWait, fyne.NewPos(from, middle), fyne.NewSize(to-from, 2)))
	l := paint.TextStyle{Size: d.letters.point.Size, Color: apptheme.ColorWait}
	if width := d.Measure(b.Label, l).Width + d.Pad(); b.Label != "" && to+width < d.x(1000) {
		d.add(d.Write(b.Label, l, fyne.NewPos(to+d.Pad(), middle-d.LineHeight(l)/2+1)))
	}
}

func (d *rulerDrawing) stroke(m model.Mark) {
	length := (d.rows.bottom - d.rows.body - d.LineHeight(d.letters.point)) * 2 / 5
	width := float32(1)
	if m.Kind == model.PointMark {
		length, width = 2*length, 2
		d.add(d.WriteMiddle(m.Label, d.letters.point, d.x(m.At), d.rows.figures))
	}
	d.add(d.Block(apptheme.ColorInk, fyne.NewPos(d.x(m.At)-paint.Floor(width/2), d.rows.bottom-length), fyne.NewSize(width, length)))
}

// limits draws the lines across and their names. A name that would run into
// its neighbour goes one line up, where there is one.
func (d *rulerDrawing) limits(marks []model.Mark) {
	height := d.LineHeight(d.letters.limit)
	lines := max(1, d.letters.names)
	taken := d.taken(marks)
	ends := [2]float32{-1e6, -1e6} // where the names on the lower and upper line end
	for _, m := range marks {
		if m.Kind != model.LimitMark {
			continue
		}
		x := d.x(m.At)
		width := d.Measure(m.Label, d.letters.limit).Width
		left, free := d.clear(min(max(0, x-width/2), d.size.Width-width), width, x, taken)
		line := 0
		if left < ends[0]+d.Inner() {
			line = 1
		}
		if line >= lines || !free {
			d.add(d.Block(apptheme.ColorInk, fyne.NewPos(x-1, d.rows.body), fyne.NewSize(2, d.rows.bottom-d.rows.body)))
			if !free && ends[0] < 0 {
				d.onTwoLines(m.Label, x, taken)
			}
			continue
		}
		ends[line] = left + width
		top := d.rows.body - d.Pad()/2 - float32(line+1)*height
		d.add(d.Block(apptheme.ColorInk, fyne.NewPos(x-1, top+height), fyne.NewSize(2, d.rows.bottom-top-height)),
			d.Write(m.Label, d.letters.limit, fyne.NewPos(left, top)))
	}
}

// onTwoLines writes a limit's name that has no room beside the reading on one line, where there are
// two and they reach. Otherwise the line has no name.
func (d *rulerDrawing) onTwoLines(name string, limit float32, taken reach) {
	room := taken.from - d.Pad() - d.Painter.Size(apptheme.SizeMark)
	words := d.Wrap(name, d.letters.limit, room)
	if d.letters.names < len(words) {
		return
	}
	height := d.LineHeight(d.letters.limit)
	for i, line := range words {
		width := d.Measure(line, d.letters.limit).Width
		if width > room {
			return
		}
		left := min(max(0, limit-width/2), room-width)
		d.add(d.Write(line, d.letters.limit, fyne.NewPos(left, d.rows.body-d.Pad()/2-float32(len(words)-i)*height)))
	}
}

// reach is a horizontal range.
type reach struct{ from, to float32 }

// taken returns the range the reading takes of the lines of names: its pointer, and its tag if that
// is on the same line; far off without a reading.
func (d *rulerDrawing) taken(marks []model.Mark) reach {
	for _, m := range marks {
		switch {
		case m.Kind != model.ReadingMark:
		case d.letters.names == 0:
			return d.tag(m)
		default:
			return reach{d.x(m.At), d.x(m.At)}
		}
	}
	return reach{-1e6, -1e6}
}

// clear moves a limit's name off the reading, to the side its limit is on, and
// reports whether there is room.
func (d *rulerDrawing) clear(left, width, limit float32, taken reach) (float32, bool) {
	room := d.Pad() + d.Painter.Size(apptheme.SizeMark)
	switch {
	case taken.to < left-room || taken.from > left+width+room:
		return left, true
	case limit <= (taken.from+taken.to)/2 && taken.from-room-width >= 0:
		return taken.from - room - width, true
	case limit > (taken.from+taken.to)/2 && taken.to+room+width <= d.size.Width:
		return taken.to + room, true
	}
	return left, false
}

// tag returns the range of the reading's tag.
func (d *rulerDrawing) tag(m model.Mark) reach {
	width := d.Measure(m.Label, d.letters.reading).Width + 2*d.Inner()
	left := min(max(0, d.x(m.At)-width/2), d.size.Width-width)
	return reach{left, left + width}
}

// reading draws the pointer with its value on a tag.
func (d *rulerDrawing) reading(m model.Mark) {
	x, tag := d.x(m.At), d.tag(m)
	mark := d.Painter.Size(apptheme.SizeMark) + 1
	ground := d.Block(apptheme.StateInk(m.State), fyne.NewPos(tag.from, 0), fyne.NewSize(tag.to-tag.from, d.rows.tag))
	d.add(d.Block(apptheme.StateInk(m.State), fyne.NewPos(x-mark/2, 0), fyne.NewSize(mark, d.rows.bottom)),
		ground, d.Write(m.Label, d.letters.reading, fyne.NewPos(tag.from+d.Inner(), 0)))
}
