package paperview

import (
	"image/color"

	"tenthpoint/internal/paper"
	"tenthpoint/ui/paint"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
)

// drawer draws the marks of pages as Fyne's objects. A mark that looks as before reuses its object,
// moved to its new place: so a keystroke costs only what it changes, here and where a window caches
// textures of its text.
type drawer struct {
	view    view
	visible span
	before  map[any][]fyne.CanvasObject
	now     map[any][]fyne.CanvasObject
	objects []fyne.CanvasObject
}

func (d *drawer) begin(v view, visible span) {
	if v.scale != d.view.scale {
		d.now = nil // everything is of another size
	}
	d.view, d.visible = v, visible
	d.before, d.now = d.now, map[any][]fyne.CanvasObject{}
	d.objects = nil
}

func (d *drawer) end() []fyne.CanvasObject { return d.objects }

// page draws one page, background first.
func (d *drawer) page(n int, width, height paper.Length, m *paper.Marks) {
	if m.Stamp != nil {
		key := stampKey{*m.Stamp, width, height, d.view.scale}
		d.put(key, d.view.at(n, paper.Place{}), d.view.unit(height), func() fyne.CanvasObject { return key.draw() })
	}
	for _, b := range m.Boxes {
		d.box(n, b)
	}
	for _, r := range m.Rules {
		d.rule(n, r)
	}
	for _, p := range m.Pictures {
		d.picture(n, p)
	}
	for _, r := range m.Runs {
		d.run(n, r)
	}
}

// put draws an object at a place, if any of it is visible: the cached one with the same looks, or a
// new one.
func (d *drawer) put(key any, at fyne.Position, high float32, draw func() fyne.CanvasObject) {
	if at.Y+high < d.visible.from || at.Y > d.visible.to {
		return
	}
	var o fyne.CanvasObject
	if kept := d.before[key]; len(kept) > 0 {
		o, d.before[key] = kept[0], kept[1:]
	} else {
		o = draw()
	}
	if o.Position() != at {
		o.Move(at)
	}
	d.now[key] = append(d.now[key], o)
	d.objects = append(d.objects, o)
}

// boxKey identifies a box by its looks.
type boxKey struct {
	size       fyne.Size
	fill, edge paper.Ink
}

func (d *drawer) box(page int, b paper.Box) {
	at := paint.Whole(d.view.at(page, b.At))
	end := d.view.at(page, paper.Place{X: b.At.X + b.Width, Y: b.At.Y + b.Height})
	key := boxKey{fyne.NewSize(max(1, paint.Floor(end.X+0.5)-at.X), max(1, paint.Floor(end.Y+0.5)-at.Y)), b.Fill, b.Edge}
	d.put(key, at, key.size.Height, func() fyne.CanvasObject {
		r := canvas.NewRectangle(inkColor(key.fill))
		if key.edge.On {
			r.StrokeColor, r.StrokeWidth = inkColor(key.edge), max(1, d.view.unit(paper.EdgeThick))
		}
		r.Resize(key.size)
		return r
	})
}

// rule draws a straight line as a block, so that its edges are crisp. Lines on paper
// run across; the thinnest is one of Fyne's units.
func (d *drawer) rule(page int, r paper.Rule) {
	from, to := d.view.at(page, r.From), d.view.at(page, r.To)
	thick := max(1, paint.Floor(d.view.unit(r.Thick)+0.5))
	at := paint.Whole(fyne.NewPos(from.X, from.Y-thick/2+0.5))
	key := boxKey{fyne.NewSize(max(thick, paint.Floor(to.X+0.5)-at.X), max(thick, paint.Floor(to.Y-from.Y+0.5))), r.Ink, paper.Ink{}}
	d.put(key, at, key.size.Height, func() fyne.CanvasObject {
		b := canvas.NewRectangle(inkColor(key.fill))
		b.Resize(key.size)
		return b
	})
}

// edgeKey identifies the line between two pages by its looks.
type edgeKey struct {
	ink   color.Color
	width float32
}

// edge draws a line over a page, to part it from the one before.
func (d *drawer) edge(page int, ink color.Color, width float32) {
	at := paint.Whole(fyne.NewPos(0, d.view.tops[page]+d.view.unit(aboveShown-betweenPage/2)))
	d.put(edgeKey{ink, width}, at, 1, func() fyne.CanvasObject {
		line := canvas.NewRectangle(ink)
		line.Resize(fyne.NewSize(width, 1))
		return line
	})
}

// pictureKey identifies a QR code by its looks.
type pictureKey struct {
	payload string
	size    fyne.Size
}

func (d *drawer) picture(page int, p paper.Picture) {
	key := pictureKey{p.Code.Payload, fyne.NewSize(d.view.unit(p.Width), d.view.unit(p.Height))}
	d.put(key, d.view.at(page, p.At), key.size.Height, func() fyne.CanvasObject {
		img := canvas.NewImageFromImage(p.Code.Image())
		img.ScaleMode, img.FillMode = canvas.ImageScalePixels, canvas.ImageFillStretch
		img.Resize(key.size)
		return img
	})
}

func (d *drawer) run(page int, r paper.Run) {
	size, at := d.view.unit(r.Style.Size), d.view.at(page, r.At)
	left := paint.Floor(at.X)
	key := runKey{paper.Shown(r.Text, r.Style.Bold), r.Style, int(4 * (at.X - left))}
	top := paint.Floor(at.Y+0.5) - paint.Floor(size*ascent) - 1
	d.put(key, fyne.NewPos(left-before, top), size*(ascent+descent)+2, func() fyne.CanvasObject { return key.draw(size) })
}

func inkColor(k paper.Ink) color.Color {
	if !k.On {
		return color.Transparent
	}
	return color.NRGBA{R: k.Red, G: k.Green, B: k.Blue, A: 0xFF}
}
