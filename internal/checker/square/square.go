// Package square reads the QR code in a picture that somebody took of a slip.
package square

import (
	"image"

	"github.com/makiuchi-d/gozxing"
	"github.com/makiuchi-d/gozxing/qrcode"
)

// Read is the text of the QR code in a picture of red, green, blue and alpha, a byte each; empty where none
// is found. A code that is
// misread fails its own error correction, so that a text is the right one.
func Read(rgba []byte, width, height int) string {
	if width <= 0 || height <= 0 || len(rgba) != 4*width*height {
		return ""
	}
	img := &image.RGBA{Pix: rgba, Stride: 4 * width, Rect: image.Rect(0, 0, width, height)}
	source := gozxing.NewLuminanceSourceFromImage(img)
	hints := map[gozxing.DecodeHintType]any{gozxing.DecodeHintType_TRY_HARDER: true, gozxing.DecodeHintType_CHARACTER_SET: "ISO-8859-1"}
	for _, binarizer := range []gozxing.Binarizer{gozxing.NewHybridBinarizer(source), gozxing.NewGlobalHistgramBinarizer(source)} {
		bitmap, err := gozxing.NewBinaryBitmap(binarizer)
		if err != nil {
			continue
		}
		if found, err := qrcode.NewQRCodeReader().Decode(bitmap, hints); err == nil {
			return found.GetText()
		}
	}
	return ""
}
