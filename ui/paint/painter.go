package paint

import (
	"image/color"
	"tenthpoint/ui/apptheme"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/theme"
)

// drawn is a widget that draws itself whole for a size. Most widgets are a handful of
// rectangles and words, and drawing them again is simpler and no slower than keeping them in step.
type drawn interface {
	fyne.Widget
	Paint(size fyne.Size) []fyne.CanvasObject
	LeastSize() fyne.Size
}

// Drawing is the renderer of a drawn widget.
type Drawing struct {
	of      drawn
	size    fyne.Size
	objects []fyne.CanvasObject
}

func NewDrawing(of drawn) *Drawing { return &Drawing{of: of} }

// Layout draws for another size. For an unchanged size it does nothing: a window lays out every
// widget that has new objects, and would do so for ever at every frame.
func (d *Drawing) Layout(size fyne.Size) {
	if size == d.size {
		return
	}
	d.size = size
	d.redraw()
}

func (d *Drawing) Refresh() {
	d.redraw()
	canvas.Refresh(d.of)
}

// redraw draws nothing while there is no room, so that no drawing has to ask.
func (d *Drawing) redraw() {
	d.objects = nil
	if d.size.Width > 0 && d.size.Height > 0 {
		d.objects = d.of.Paint(d.size)
	}
}

func (d *Drawing) MinSize() fyne.Size { return d.of.LeastSize() }

// Objects returns the objects drawn. A window destroys the renderers of widgets hidden for a
// minute, and never lays out the new one of a widget that has its Size already; so that one draws
// when it is first asked.
func (d *Drawing) Objects() []fyne.CanvasObject {
	if d.size.IsZero() {
		d.Layout(d.of.Size())
	}
	return d.objects
}

func (d *Drawing) Destroy() {}

// Painter draws in the theme of one widget.
type Painter struct {
	Theme   fyne.Theme
	Variant fyne.ThemeVariant
}

func PainterFor(w fyne.CanvasObject) Painter {
	return Painter{Theme: theme.CurrentForWidget(w), Variant: fyne.CurrentApp().Settings().ThemeVariant()}
}

func (p Painter) Color(name fyne.ThemeColorName) color.Color { return p.Theme.Color(name, p.Variant) }
func (p Painter) Size(name fyne.ThemeSizeName) float32       { return p.Theme.Size(name) }
func (p Painter) Pad() float32                               { return p.Theme.Size(theme.SizeNamePadding) }
func (p Painter) Inner() float32                             { return p.Theme.Size(theme.SizeNameInnerPadding) }

// Block is a filled rectangle.
func (p Painter) Block(name fyne.ThemeColorName, at fyne.Position, size fyne.Size) *canvas.Rectangle {
	r := canvas.NewRectangle(p.Color(name))
	r.Move(Whole(at))
	r.Resize(wholeSize(size))
	return r
}

// Frame is an outlined rectangle with nothing in it.
func (p Painter) Frame(name fyne.ThemeColorName, stroke float32, at fyne.Position, size fyne.Size) *canvas.Rectangle {
	r := canvas.NewRectangle(color.Transparent)
	r.StrokeColor, r.StrokeWidth = p.Color(name), stroke
	r.CornerRadius = p.Size(theme.SizeNameInputRadius)
	r.Move(at)
	r.Resize(size)
	return r
}

// Icon is a square picture.
func (p Painter) Icon(res fyne.Resource, at fyne.Position, side float32) *canvas.Image {
	img := canvas.NewImageFromResource(res)
	img.FillMode = canvas.ImageFillContain
	img.Move(Whole(at))
	img.Resize(fyne.NewSquareSize(side))
	return img
}

// Whole rounds a position to whole units, so that edges are drawn crisp.
func Whole(at fyne.Position) fyne.Position {
	return fyne.NewPos(Floor(at.X), Floor(at.Y))
}

func wholeSize(size fyne.Size) fyne.Size {
	return fyne.NewSize(Floor(size.Width+0.5), Floor(size.Height+0.5))
}

func Ceil(x float32) float32 { return -Floor(-x) }

func Floor(x float32) float32 {
	f := float32(int(x))
	if f > x {
		return f - 1
	}
	return f
}

// Along returns the position at so many thousandths of a length.
func Along(permille int, stretch float32) float32 {
	return stretch * float32(permille) / 1000
}

// Within keeps a number of thousandths between none and all.
func Within(permille int) int { return max(0, min(1000, permille)) }

// FocusRing is the outline of the focused widget. It is drawn a little inside, so that it is seen
// on a dark button too.
func (p Painter) FocusRing(size fyne.Size) fyne.CanvasObject {
	mark := p.Size(apptheme.SizeMark)
	return p.Frame(apptheme.ColorFocus, mark, fyne.NewPos(-mark, -mark), size.AddWidthHeight(2*mark, 2*mark))
}
