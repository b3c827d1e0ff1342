package paper

import "image"

// Code is a code of dark and light modules, such as a QR code.
type Code struct {
	Columns, Rows int
	// Payload is the content of the code, for printers that draw it themselves.
	Payload string
	// Dark are the dark modules, neighbors merged, so that no hairline separates them.
	Dark []DarkRun
}

// CodeInk is the ink of dark modules.
var CodeInk = Colour(22, 26, 30)

// DarkRun are dark modules side by side.
type DarkRun struct{ Column, Row, Length int }

// NewCode reads a code from a picture of it, one pixel to a module.
func NewCode(picture image.Image, payload string) *Code {
	b := picture.Bounds()
	c := &Code{Columns: b.Dx(), Rows: b.Dy(), Payload: payload}
	for y := b.Min.Y; y < b.Max.Y; y++ {
		for x := b.Min.X; x < b.Max.X; x++ {
			run := 0
			for x+run < b.Max.X && isDark(picture, x+run, y) {
				run++
			}
			if run > 0 {
				c.Dark = append(c.Dark, DarkRun{x - b.Min.X, y - b.Min.Y, run})
				x += run
			}
		}
	}
	return c
}

func isDark(picture image.Image, x, y int) bool {
	r, _, _, _ := picture.At(x, y).RGBA()
	return r < 0x8000
}

// Image is the code as a picture, one pixel to a module.
func (c *Code) Image() image.Image {
	img := image.NewGray(image.Rect(0, 0, c.Columns, c.Rows))
	for i := range img.Pix {
		img.Pix[i] = 0xFF
	}
	for _, d := range c.Dark {
		for n := range d.Length {
			img.Pix[d.Row*img.Stride+d.Column+n] = 0
		}
	}
	return img
}
