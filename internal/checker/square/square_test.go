package square

import (
	"image"
	"image/color"
	"math"
	"math/rand"
	"testing"

	"tenthpoint/internal/scaleticket/barcode"

	"golang.org/x/image/draw"
	"golang.org/x/image/math/f64"
)

// letters are those of a slip's code.
const letters = "0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZ $%*+-./:"

func anyText(random *rand.Rand, n int) string {
	text := make([]byte, n)
	for i := range text {
		text[i] = letters[random.Intn(len(letters))]
	}
	return string(text)
}

// turned is a picture of a code on paper, each module so many points wide, turned by degrees.
func turned(t *testing.T, text string, each, degrees float64) *image.RGBA {
	t.Helper()
	code, err := barcode.Square(text)
	if err != nil {
		t.Fatal(err)
	}
	side := int(float64(code.Bounds().Dx())*each) + 160
	img := image.NewRGBA(image.Rect(0, 0, side, side))
	draw.Draw(img, img.Rect, image.NewUniform(color.Gray{Y: 230}), image.Point{}, draw.Src)
	sin, cos := math.Sincos(degrees * math.Pi / 180)
	draw.BiLinear.Transform(img, f64.Aff3{each * cos, -each * sin, 100, each * sin, each * cos, 60}, code, code.Bounds(), draw.Over, nil)
	return img
}

// TestRead reads codes of every length a slip has, in pictures of several sizes, straight and turned:
// the right text, or rarely none, never another.
func TestRead(t *testing.T) {
	random := rand.New(rand.NewSource(7))
	all, read := 0, 0
	for _, length := range []int{115, 190, 262, 340, 379} {
		for _, each := range []float64{3, 4.5, 7} {
			for _, degrees := range []float64{0, 3, -3} {
				text := anyText(random, length)
				img := turned(t, text, each, degrees)
				got := Read(img.Pix, img.Rect.Dx(), img.Rect.Dy())
				if all++; got == text {
					read++
				} else if got != "" {
					t.Errorf("%q is read as %q", text, got)
				}
			}
		}
	}
	if read < all*95/100 {
		t.Errorf("%d of %d codes were read", read, all)
	}
}

// TestReadNothing looks at pictures without a code, and at what is no picture.
func TestReadNothing(t *testing.T) {
	random := rand.New(rand.NewSource(7))
	noise := make([]byte, 4*200*200)
	random.Read(noise)
	for what, c := range map[string]struct {
		points        []byte
		width, height int
	}{"noise": {noise, 200, 200}, "nothing": {nil, 0, 0}, "too few points": {noise, 300, 200}, "blank paper": {make([]byte, 4*50*50), 50, 50}} {
		if got := Read(c.points, c.width, c.height); got != "" {
			t.Errorf("in %s is %q", what, got)
		}
	}
}
