package barcode

import (
	"image"

	"tenthpoint/internal/message"

	"github.com/boombuler/barcode/qr"
)

// Square is a text as a QR code in alphanumeric mode, one pixel to a module, without the quiet zone
// around it. Its error correction restores about 15 % of the code.
func Square(text string) (image.Image, error) {
	code, err := qr.Encode(text, qr.M, qr.AlphaNumeric)
	if err != nil {
		return nil, message.Errorf("the code %.40q cannot be drawn: %w", text, err)
	}
	return code, nil
}
