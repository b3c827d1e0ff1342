package charts

import (
	"slices"
	"tenthpoint/ui/apptheme"
	"tenthpoint/ui/model"
	"tenthpoint/ui/paint"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/widget"
)

// House draws the bins of a house side by side to one scale, each filled as high as its grain
// stands. A bin is chosen by a click; the keyboard chooses it in the list beside.
type House struct {
	widget.BaseWidget

	OnChoose func(key string)

	bins   []model.BinPicture
	places []binPlace // where each was drawn last
}

type binPlace struct {
	key         string
	left, right float32
}

// NewHouse makes a house without bins.
func NewHouse() *House {
	h := &House{}
	h.ExtendBaseWidget(h)
	return h
}

// Set shows other bins.
func (h *House) Set(bins []model.BinPicture) {
	h.bins = bins
	h.Refresh()
}

// CreateRenderer implements fyne.Widget.
func (h *House) CreateRenderer() fyne.WidgetRenderer { return paint.NewDrawing(h) }

// LeastSize is room for the labels and a low drawing.
func (h *House) LeastSize() fyne.Size {
	p := paint.PainterFor(h)
	return fyne.NewSize(20*p.Measure("0", chartLetters).Width, 7*p.LineHeight(chartLetters))
}

// Tapped chooses the bin that was clicked on.
func (h *House) Tapped(e *fyne.PointEvent) {
	for _, at := range h.places {
		if e.Position.X >= at.left && e.Position.X < at.right && h.OnChoose != nil {
			h.OnChoose(at.key)
			return
		}
	}
}

// Paint draws all bins on one ground line.
func (h *House) Paint(size fyne.Size) []fyne.CanvasObject {
	p := paint.PainterFor(h)
	d := &houseDrawing{Painter: p, ground: size.Height - 2*p.LineHeight(chartLetters) - 2, height: size.Height - 2*p.LineHeight(chartLetters) - 4}
	d.fit(h.bins, size.Width)
	d.add(d.Block(apptheme.ColorRule, fyne.NewPos(0, d.ground), fyne.NewSize(size.Width, 1)))
	h.places = h.places[:0]
	outlines := len(d.objects)
	left := float32(0)
	for _, b := range h.bins {
		slot := d.slot(b)
		d.bin(b, left, slot)
		h.places = append(h.places, binPlace{b.Key, left, left + slot})
		left += slot
	}
	if len(d.surfaces) > 0 { // grain lies behind its walls
		d.objects = slices.Insert(d.objects, outlines, d.Surfaces(size, d.surfaces))
	}
	return d.objects
}

// houseDrawing is a house while it is drawn.
type houseDrawing struct {
	paint.Painter
	ground, height float32 // where the ground is, and how high the tallest may stand
	unit           float32 // the length of a thousandth
	least          float32 // the least width of a bin with its labels
	objects        []fyne.CanvasObject
	surfaces       []paint.Surface // of the grain
}

func (d *houseDrawing) add(o ...fyne.CanvasObject) { d.objects = append(d.objects, o...) }

// fit finds the scale at which all bins fit.
func (d *houseDrawing) fit(bins []model.BinPicture, width float32) {
	tallest := 1
	for _, b := range bins {
		tallest = max(tallest, b.Cone+b.Wall+b.Peak)
	}
	d.unit = d.height / float32(tallest)
	d.least = d.Measure("000 %", chartLetters).Width + d.Pad()
	for range 12 { // labels have a least width, so the scale is found step by step
		total := float32(0)
		for _, b := range bins {
			total += d.slot(b)
		}
		if total <= width {
			return
		}
		d.unit *= 0.8
		if d.unit*float32(tallest) < d.height/4 {
			d.least *= 0.8
		}
	}
}

// slot is the width that a bin takes with the gap beside it.
func (d *houseDrawing) slot(b model.BinPicture) float32 {
	return paint.Ceil(max(d.least, d.unit*float32(b.Width)+2*d.Pad()))
}

// bin draws one bin in its slot, and its labels below the ground line.
func (d *houseDrawing) bin(b model.BinPicture, left, slot float32) {
	ink := fyne.ThemeColorName(apptheme.ColorQuiet)
	switch {
	case b.State != model.Plain:
		ink = apptheme.StateInk(b.State)
	case b.Chosen:
		ink = apptheme.ColorFocus
	}
	middle := left + slot/2
	body := binBody{left: paint.Floor(middle - d.unit*float32(b.Width)/2), right: paint.Floor(middle + d.unit*float32(b.Width)/2)}
	body.floor = d.ground - d.unit*float32(b.Cone)
	body.eave = paint.Floor(body.floor - d.unit*float32(b.Wall))
	body.top = body.eave - d.unit*float32(b.Peak)
	body.stroke = 1
	if b.Chosen {
		body.stroke = 3
	}
	d.grain(b, body)
	d.outline(b, body, middle, ink)
	label := paint.TextStyle{Size: apptheme.SizeNote, Color: apptheme.ColorInk, Style: paint.Bold}
	d.add(d.WriteMiddle(d.Clip(b.Label, label, slot), label, middle, d.ground+2))
	under := chartLetters
	if b.State != model.Plain {
		under.Color = apptheme.StateInk(b.State)
	}
	d.add(d.WriteMiddle(d.Clip(b.Under, under, slot), under, middle, d.ground+2+d.LineHeight(label)))
}

// binBody is where the parts of a bin are.
type binBody struct{ left, right, top, eave, floor, stroke float32 }

// grainStep is how high the slices are in which grain is drawn where a hopper narrows.
const grainStep = 2

// grain fills a bin to its level, from the lowest point: in the hopper slice by slice, as wide as it
// is there.
func (d *houseDrawing) grain(b model.BinPicture, at binBody) {
	if b.Unmeasured || b.Level <= 0 || b.Pile {
		return
	}
	top := paint.Floor(d.ground - paint.Along(paint.Within(b.Level), d.ground-at.eave))
	if top < at.floor {
		d.surfaces = append(d.surfaces, surfaceOf(b.Look, at.left, top, at.right-at.left, at.floor-top))
	}
	middle, cone := (at.left+at.right)/2, d.ground-at.floor
	for y := max(top, at.floor); cone > 0 && y < d.ground; y += grainStep {
		half := (at.right - at.left) / 2 * (d.ground - y) / cone
		d.surfaces = append(d.surfaces, surfaceOf(b.Look, middle-half, y, 2*half, min(grainStep, d.ground-y)))
	}
}

// outline draws walls, roof and hopper.
func (d *houseDrawing) outline(b model.BinPicture, at binBody, middle float32, ink fyne.ThemeColorName) {
	line := func(x1, y1, x2, y2 float32) {
		l := canvas.NewLine(d.Color(ink))
		l.StrokeWidth = at.stroke
		l.Position1, l.Position2 = fyne.NewPos(x1, y1), fyne.NewPos(x2, y2)
		d.add(l)
	}
	if !b.Pile {
		line(at.left, at.floor, at.left, at.eave)
		line(at.right, at.floor, at.right, at.eave)
	}
	if b.Peak > 0 {
		line(at.left, at.eave, middle, at.top)
		line(middle, at.top, at.right, at.eave)
	}
	if b.Cone > 0 {
		line(at.left, at.floor, middle, d.ground)
		line(middle, d.ground, at.right, at.floor)
	} else {
		line(at.left, at.floor, at.right, at.floor)
	}
}
