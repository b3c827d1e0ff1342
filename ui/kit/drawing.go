package kit

import (
	"image/color"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/theme"
)

// drawn is a widget that draws itself whole for a size. Most kit widgets are a
// handful of rectangles and words, and drawing them anew is simpler and no
// slower than keeping them in step.
type drawn interface {
	fyne.Widget
	draw(size fyne.Size) []fyne.CanvasObject
	least() fyne.Size
}

// drawing is the renderer of a drawn widget.
type drawing struct {
	of      drawn
	size    fyne.Size
	objects []fyne.CanvasObject
}

func newDrawing(of drawn) *drawing { return &drawing{of: of} }

// Layout draws for another size. For the same one it leaves what is drawn: a
// window lays out whatever has new objects in it, and would do so for ever at
// every frame.
func (d *drawing) Layout(size fyne.Size) {
	if size == d.size {
		return
	}
	d.size = size
	d.redraw()
}

func (d *drawing) Refresh() {
	d.redraw()
	canvas.Refresh(d.of)
}

// redraw draws nothing while there is no room, so that no drawing has to ask.
func (d *drawing) redraw() {
	d.objects = nil
	if d.size.Width > 0 && d.size.Height > 0 {
		d.objects = d.of.draw(d.size)
	}
}

func (d *drawing) MinSize() fyne.Size { return d.of.least() }

// Objects are what is drawn. A window throws away the renderers of what was out
// of sight for a minute, and never lays out the new one of a widget that has its
// size already; so that one draws when it is first asked.
func (d *drawing) Objects() []fyne.CanvasObject {
	if d.size.IsZero() {
		d.Layout(d.of.Size())
	}
	return d.objects
}

func (d *drawing) Destroy() {}

// pen draws in the theme of one widget.
type pen struct {
	theme   fyne.Theme
	variant fyne.ThemeVariant
}

func penFor(w fyne.CanvasObject) pen {
	return pen{theme: theme.CurrentForWidget(w), variant: fyne.CurrentApp().Settings().ThemeVariant()}
}

func (p pen) color(name fyne.ThemeColorName) color.Color { return p.theme.Color(name, p.variant) }
func (p pen) size(name fyne.ThemeSizeName) float32       { return p.theme.Size(name) }
func (p pen) pad() float32                               { return p.theme.Size(theme.SizeNamePadding) }
func (p pen) inner() float32                             { return p.theme.Size(theme.SizeNameInnerPadding) }

// block is a filled rectangle.
func (p pen) block(name fyne.ThemeColorName, at fyne.Position, size fyne.Size) *canvas.Rectangle {
	r := canvas.NewRectangle(p.color(name))
	r.Move(whole(at))
	r.Resize(wholeSize(size))
	return r
}

// frame is an outlined rectangle with nothing in it.
func (p pen) frame(name fyne.ThemeColorName, stroke float32, at fyne.Position, size fyne.Size) *canvas.Rectangle {
	r := canvas.NewRectangle(color.Transparent)
	r.StrokeColor, r.StrokeWidth = p.color(name), stroke
	r.CornerRadius = p.size(theme.SizeNameInputRadius)
	r.Move(at)
	r.Resize(size)
	return r
}

// icon is a square picture.
func (p pen) icon(res fyne.Resource, at fyne.Position, side float32) *canvas.Image {
	img := canvas.NewImageFromResource(res)
	img.FillMode = canvas.ImageFillContain
	img.Move(whole(at))
	img.Resize(fyne.NewSquareSize(side))
	return img
}

// whole puts a position on whole units, so that edges are drawn crisp.
func whole(at fyne.Position) fyne.Position {
	return fyne.NewPos(floor(at.X), floor(at.Y))
}

func wholeSize(size fyne.Size) fyne.Size {
	return fyne.NewSize(floor(size.Width+0.5), floor(size.Height+0.5))
}

func ceil(x float32) float32 { return -floor(-x) }

func floor(x float32) float32 {
	f := float32(int(x))
	if f > x {
		return f - 1
	}
	return f
}

// along gives the place on a stretch of so many thousandths of it.
func along(permille int, stretch float32) float32 {
	return stretch * float32(permille) / 1000
}

// within keeps a number of thousandths between none and all.
func within(permille int) int { return max(0, min(1000, permille)) }

// focusRing is the outline that shows who has the keyboard. It stands a little
// inside, so that it is seen on a dark button too.
func (p pen) focusRing(size fyne.Size) fyne.CanvasObject {
	mark := p.size(SizeMark)
	return p.frame(ColorFocus, mark, fyne.NewPos(-mark, -mark), size.AddWidthHeight(2*mark, 2*mark))
}
