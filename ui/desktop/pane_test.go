package desktop

import (
	"fmt"
	"image"
	"image/draw"
	"slices"
	"tenthpoint/ui/shell"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/driver/software"
	"fyne.io/fyne/v2/test"
)

// pane is a part of the window as a picture that is kept up to date: where
// something came, went, moved or looks otherwise, all that lies there is
// painted again, and the rest of the picture stays. So does a window system.
type pane struct {
	of      fyne.CanvasObject
	picture *image.NRGBA
	shown   map[look]int
}

// leaf is something painted and where its parent lies in the pane.
type leaf struct {
	object fyne.CanvasObject
	parent fyne.Position
	box    image.Rectangle // the pixels it may take
}

// look is all that a person sees of a leaf.
type look struct {
	box   image.Rectangle
	about string
}

func newPane(of fyne.CanvasObject) *pane {
	p := &pane{of: of}
	p.picture = image.NewNRGBA(image.Rect(0, 0, int(of.Size().Width), int(of.Size().Height)))
	p.update()
	return p
}

// leaves lists what is painted of an object, from the bottom up.
func leaves(o fyne.CanvasObject, parent fyne.Position, add func(leaf)) {
	if !o.Visible() {
		return
	}
	at := parent.Add(o.Position())
	switch o := o.(type) {
	case *fyne.Container:
		for _, child := range o.Objects {
			leaves(child, at, add)
		}
	case fyne.Widget:
		for _, child := range test.WidgetRenderer(o).Objects() {
			leaves(child, at, add)
		}
	default:
		box := image.Rect(int(at.X)-2, int(at.Y)-2, int(at.X+o.Size().Width)+3, int(at.Y+o.Size().Height)+3)
		add(leaf{object: o, parent: parent, box: box})
	}
}

// look tells what is seen of a leaf through the pane.
func (p *pane) look(l leaf) look {
	seen := look{box: l.box.Intersect(p.picture.Rect)}
	switch o := l.object.(type) {
	case *canvas.Text:
		seen.box = l.box // half a letter is not a letter half as large
		seen.about = o.Text + fmt.Sprint(o.Color, o.TextSize, o.TextStyle)
	case *canvas.Rectangle:
		seen.about = fmt.Sprint(o.FillColor, o.StrokeColor, o.StrokeWidth)
	case *canvas.Image, *canvas.Raster:
		seen.about = fmt.Sprintf("%p", o)
	}
	return seen
}

// update paints again where the pane looks otherwise than last time.
func (p *pane) update() {
	before, now := p.shown, map[look]int{}
	var all []leaf
	var dirty []image.Rectangle
	leaves(p.of, fyne.NewPos(0, 0).Subtract(p.of.Position()), func(l leaf) {
		if l.box.Overlaps(p.picture.Rect) {
			all = append(all, l)
			now[p.look(l)]++
		}
	})
	for l, n := range now {
		if before[l] != n {
			dirty = spreadOver(dirty, l.box.Intersect(p.picture.Rect))
		}
	}
	for l := range before {
		if now[l] == 0 {
			dirty = spreadOver(dirty, l.box.Intersect(p.picture.Rect))
		}
	}
	p.shown = now
	for _, place := range dirty {
		p.paint(all, place)
	}
}

// spreadOver adds a place to some of which no two overlap.
func spreadOver(places []image.Rectangle, one image.Rectangle) []image.Rectangle {
	for i := 0; i < len(places); i++ {
		if places[i].Overlaps(one) {
			one = one.Union(places[i])
			places = slices.Delete(places, i, i+1)
			i = -1
		}
	}
	return append(places, one)
}

// paint draws all leaves in a rectangle.
func (p *pane) paint(all []leaf, place image.Rectangle) {
	content := container.NewWithoutLayout()
	for _, l := range all {
		if l.box.Overlaps(place) {
			at := container.NewWithoutLayout(l.object)
			at.Move(l.parent.SubtractXY(float32(place.Min.X), float32(place.Min.Y)))
			content.Add(at)
		}
	}
	painted := capture(content, fyne.NewSize(float32(place.Dx()), float32(place.Dy())))
	draw.Draw(p.picture, place, painted, image.Point{}, draw.Src)
}

// capture is the picture of an object alone.
func capture(o fyne.CanvasObject, size fyne.Size) image.Image {
	c := software.NewCanvas()
	c.SetPadded(false)
	c.Resize(size)
	place := container.NewWithoutLayout(o)
	place.Move(fyne.NewPos(0, 0).Subtract(o.Position()))
	c.SetContent(container.NewWithoutLayout(place))
	return c.Capture()
}

// TestPaneIsTheWholePicture: what is kept up to date by its changes looks, to
// the pixel, as if it were painted whole.
func TestPaneIsTheWholePicture(t *testing.T) {
	s := newScene(t, shell.Look{}, 40)
	s.letCornBeTyped()
	slip := yardOf(s.Window).Papers.Slip
	kept := newPane(slip)
	whole := fyne.NewSize(float32(kept.picture.Rect.Dx()), float32(kept.picture.Rect.Dy()))
	for _, field := range []string{"tare", "moisture", "grower", "remark"} {
		yardOf(s.Window).Load.FocusOrder.Focus(field)
		for _, key := range []string{"1", "BackSpace", "BackSpace"} {
			if key == "1" {
				s.letters(key)
			} else {
				s.press(fyne.KeyName(key))
			}
			kept.update()
			if n := differing(kept.picture, capture(slip, whole)); n > 0 {
				t.Fatalf("after %s in %s %d pixels differ", key, field, n)
			}
		}
	}
}

func differing(a, b image.Image) (n int) {
	for y := a.Bounds().Min.Y; y < a.Bounds().Max.Y; y++ {
		for x := a.Bounds().Min.X; x < a.Bounds().Max.X; x++ {
			if a.At(x, y) != b.At(x, y) {
				n++
			}
		}
	}
	return n
}
