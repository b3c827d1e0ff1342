package paint

import (
	"image"
	"image/color"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"

	"tenthpoint/internal/grain/look"
	"tenthpoint/ui/apptheme"
)

// Surface is a rectangle with the colour and hatching of a grain.
type Surface struct {
	Look look.Look
	At   fyne.Position
	Size fyne.Size
}

// hatchThick is the thickness of a hatching's lines in Fyne's units.
const hatchThick = 1.5

// edgedFrom is the width and height from which a surface has an outline.
const edgedFrom = 7

// Surfaces draws many surfaces as one picture over a whole widget: a hundred columns are no hundred
// textures. Hatchings run on from one surface to the next.
func (p Painter) Surfaces(size fyne.Size, all []Surface) fyne.CanvasObject {
	r := canvas.NewRaster(func(w, h int) image.Image {
		img := image.NewNRGBA(image.Rect(0, 0, w, h))
		if size.Width <= 0 || w == 0 {
			return img
		}
		scale := float32(w) / size.Width
		for _, s := range all {
			p.surface(img, s, scale)
		}
		return img
	})
	r.Resize(size)
	return r
}

// surface draws one of them at so many dots to a unit.
func (p Painter) surface(img *image.NRGBA, s Surface, scale float32) {
	left, top := dots(s.At.X, scale), dots(s.At.Y, scale)
	right, bottom := dots(s.At.X+s.Size.Width, scale), dots(s.At.Y+s.Size.Height, scale)
	area := image.Rect(left, top, right, bottom).Intersect(img.Rect)
	ink, between := apptheme.LookInk(p.Theme, s.Look), apptheme.LookGround(p.Theme, s.Look)
	thick := max(1, dots(hatchThick, scale))
	edged := s.Size.Width >= edgedFrom && s.Size.Height >= edgedFrom/2
	for y := area.Min.Y; y < area.Max.Y; y++ {
		for x := area.Min.X; x < area.Max.X; x++ {
			atEdge := edged && (x < left+thick || x >= right-thick || y < top+thick || y >= bottom-thick)
			img.SetNRGBA(x, y, inkOr(atEdge || s.Look.Hatch.Inked(x, y, thick), ink, between))
		}
	}
}

func inkOr(inked bool, ink, between color.NRGBA) color.NRGBA {
	if inked {
		return ink
	}
	return between
}

func dots(units, scale float32) int { return int(Floor(units*scale + 0.5)) }
