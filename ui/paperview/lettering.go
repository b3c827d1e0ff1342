package paperview

import (
	"image"
	"sync"

	"tenthpoint/internal/fonts"
	"tenthpoint/internal/paper"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"golang.org/x/image/font/sfnt"
	"golang.org/x/image/math/fixed"
	"golang.org/x/image/vector"
)

// The letters of pages are drawn here from their outlines, since the window's own
// text is spaced for whole sizes only: a line of nine and a half units would be as
// wide as one of ten, and end beyond the margin.

// point is a place in parts of the letters' size, from the left end of their base.
type point struct{ x, y float32 }

// stroke is a piece of an outline: a line, a curve, or the begin of another.
type stroke struct {
	op     sfnt.SegmentOp
	points [2]point
}

// glyph is the outline of a letter and how far it takes the pen.
type glyph struct {
	strokes []stroke
	advance float32
}

// outlines caches the glyphs of one font, each loaded on first use.
type outlines struct {
	mu     sync.Mutex
	font   *sfnt.Font
	buffer sfnt.Buffer
	glyphs map[rune]glyph
}

var (
	regularOutlines = sync.OnceValue(func() *outlines { return newOutlines(fonts.Regular) })
	boldOutlines    = sync.OnceValue(func() *outlines { return newOutlines(fonts.Bold) })
)

func outlinesOf(isBold bool) *outlines {
	if isBold {
		return boldOutlines()
	}
	return regularOutlines()
}

func newOutlines(file []byte) *outlines {
	f, err := sfnt.Parse(file)
	if err != nil {
		panic("paperview: the font of papers cannot be read: " + err.Error())
	}
	return &outlines{font: f, glyphs: map[rune]glyph{}}
}

// fine is the size outlines are read at.
const fine = 1024

func (o *outlines) glyph(r rune, isBold bool) glyph {
	o.mu.Lock()
	defer o.mu.Unlock()
	if g, known := o.glyphs[r]; known {
		return g
	}
	const size = 1000 * paper.Point
	g := glyph{advance: float32(paper.Style{Size: size, Bold: isBold}.Width(string(r))) / size}
	if index, err := o.font.GlyphIndex(&o.buffer, r); err == nil {
		if segments, err := o.font.LoadGlyph(&o.buffer, index, fixed.I(fine), nil); err == nil {
			for _, s := range segments {
				g.strokes = append(g.strokes, stroke{s.Op, [2]point{partOf(s.Args[0]), partOf(s.Args[1])}})
			}
		}
	}
	o.glyphs[r] = g
	return g
}

func partOf(p fixed.Point26_6) point {
	return point{float32(p.X) / 64 / fine, float32(p.Y) / 64 / fine}
}

// fillText adds the outlines of a text to a picture; place maps its points to pixels.
func fillText(to *vector.Rasterizer, text string, isBold bool, place func(point) (x, y float32)) {
	all := outlinesOf(isBold)
	pen := float32(0)
	for _, r := range text {
		g := all.glyph(r, isBold)
		for _, s := range g.strokes {
			x, y := place(point{pen + s.points[0].x, s.points[0].y})
			switch s.op {
			case sfnt.SegmentOpMoveTo:
				to.ClosePath()
				to.MoveTo(x, y)
			case sfnt.SegmentOpLineTo:
				to.LineTo(x, y)
			case sfnt.SegmentOpQuadTo:
				endX, endY := place(point{pen + s.points[1].x, s.points[1].y})
				to.QuadTo(x, y, endX, endY)
			}
		}
		to.ClosePath()
		pen += g.advance
	}
}

// runKey identifies a text run by its looks: its letters, and its offset from a whole unit in
// quarters.
type runKey struct {
	text    string
	style   paper.Style
	quarter int
}

// How far letters of papers reach above their base and below it, in parts of their
// size, and how far to the left of their beginning.
const (
	ascent  = 0.98
	descent = 0.26
	before  = 1 // of Fyne's units
)

// draw makes the line, its letters size units large, as fine as the screen is.
func (k runKey) draw(size float32) fyne.CanvasObject {
	width := size * float32(k.style.Width(k.text)) / float32(k.style.Size)
	units := fyne.NewSize(float32(int(width)+2+2*before), float32(int(size*(ascent+descent))+2))
	raster := canvas.NewRaster(once(func(w, h int) image.Image {
		pixels := float32(h) / units.Height
		left, base := (before+float32(k.quarter)/4)*pixels, float32(int(size*ascent)+1)*pixels
		return filled(w, h, k.style.Ink, func(to *vector.Rasterizer) {
			fillText(to, k.text, k.style.Bold, func(p point) (x, y float32) {
				return left + p.x*size*pixels, base + p.y*size*pixels
			})
		})
	}))
	raster.Resize(units)
	return raster
}

// once caches a picture until another size is needed.
func once(draw func(w, h int) image.Image) func(w, h int) image.Image {
	var kept image.Image
	return func(w, h int) image.Image {
		if kept == nil || kept.Bounds().Dx() != w || kept.Bounds().Dy() != h {
			kept = draw(w, h)
		}
		return kept
	}
}

// filled is a picture of shapes in one ink.
func filled(w, h int, ink paper.Ink, shapes func(*vector.Rasterizer)) image.Image {
	picture := image.NewNRGBA(image.Rect(0, 0, w, h))
	if w <= 0 || h <= 0 {
		return picture
	}
	raster := vector.NewRasterizer(w, h)
	shapes(raster)
	mask := image.NewAlpha(picture.Rect)
	raster.Draw(mask, mask.Rect, image.Opaque, image.Point{})
	for i, coverage := range mask.Pix {
		if coverage > 0 {
			copy(picture.Pix[4*i:], []uint8{ink.Red, ink.Green, ink.Blue, coverage})
		}
	}
	return picture
}

// stampKey identifies a stamp across a page by its looks.
type stampKey struct {
	stamp         paper.Stamp
	width, height paper.Length
	scale         float32
}

// draw makes a picture of the page with nothing but the stamp, turned about its
// middle.
func (k stampKey) draw() fyne.CanvasObject {
	units := fyne.NewSize(view{scale: k.scale}.unit(k.width), view{scale: k.scale}.unit(k.height))
	style := k.stamp.Style
	raster := canvas.NewRaster(once(func(w, h int) image.Image {
		size := float32(h) * float32(style.Size) / float32(k.height)
		half := float32(style.Width(k.stamp.Text)) / float32(style.Size) / 2
		middle := point{float32(w) / 2, float32(h) * paper.StampMiddle / 1000}
		return filled(w, h, style.Ink, func(to *vector.Rasterizer) {
			fillText(to, k.stamp.Text, style.Bold, func(p point) (x, y float32) {
				const sine, cosine = paper.StampSine / 1e6, paper.StampCosine / 1e6
				along, down := (p.x-half)*size, (p.y+0.36)*size
				return middle.x + along*cosine + down*sine, middle.y - along*sine + down*cosine
			})
		})
	}))
	raster.Resize(units)
	return raster
}
