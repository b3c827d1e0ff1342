// Package square reads the QR code in a picture that somebody took of a slip.
package square

import (
	"image"

	"github.com/makiuchi-d/gozxing"
	"github.com/makiuchi-d/gozxing/qrcode"
	"github.com/makiuchi-d/gozxing/qrcode/decoder"
	"github.com/makiuchi-d/gozxing/qrcode/detector"
)

// hints let the reader take its time.
var hints = map[gozxing.DecodeHintType]any{gozxing.DecodeHintType_TRY_HARDER: true, gozxing.DecodeHintType_CHARACTER_SET: "ISO-8859-1"}

// Read is the text of the QR code in a picture of red, green, blue and alpha, a byte each; empty where
// none is found. A code that is misread fails its own error correction, so that a text is the right
// one.
func Read(rgba []byte, width, height int) string {
	if width <= 0 || height <= 0 || len(rgba) != 4*width*height {
		return ""
	}
	img := &image.RGBA{Pix: rgba, Stride: 4 * width, Rect: image.Rect(0, 0, width, height)}
	source := gozxing.NewLuminanceSourceFromImage(img)
	for _, binarizer := range []gozxing.Binarizer{gozxing.NewHybridBinarizer(source), gozxing.NewGlobalHistgramBinarizer(source)} {
		bitmap, err := gozxing.NewBinaryBitmap(binarizer)
		if err != nil {
			continue
		}
		if found, err := qrcode.NewQRCodeReader().Decode(bitmap, hints); err == nil {
			return found.GetText()
		}
		if text := flat(bitmap); text != "" {
			return text
		}
	}
	return ""
}

// The sizes of codes, in modules: every fourth number.
const (
	leastModules = 21
	mostModules  = 81
)

// flat reads a code on flat paper by its three large corners alone. The library goes by a small fourth
// one as well, and is led astray where modules elsewhere look like it; and it takes one size where this
// tries all.
func flat(bitmap *gozxing.BinaryBitmap) string {
	matrix, err := bitmap.GetBlackMatrix()
	if err != nil {
		return ""
	}
	corners, notFound := detector.NewFinderPatternFinder(matrix, nil).Find(hints)
	if notFound != nil {
		return ""
	}
	for modules := leastModules; modules <= mostModules; modules += 4 {
		grid := detector.Detector_createTransform(corners.GetTopLeft(), corners.GetTopRight(), corners.GetBottomLeft(), nil, modules)
		bits, err := detector.Detector_sampleGrid(matrix, grid, modules)
		if err != nil {
			continue
		}
		if found, err := decoder.NewDecoder().Decode(bits, hints); err == nil {
			return found.GetText()
		}
	}
	return ""
}
