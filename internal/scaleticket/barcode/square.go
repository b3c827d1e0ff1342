package barcode

import (
	"image"
	"image/color"

	"tenthpoint/internal/message"

	"rsc.io/qr/coding"
)

// Square is a text as a QR code in alphanumeric mode, one pixel to a module, without the quiet zone
// around it. Its error correction restores about 15 % of the code.
func Square(text string) (image.Image, error) {
	letters := coding.Alpha(text)
	if err := letters.Check(); err != nil {
		return nil, message.Errorf("the code %.40q cannot be drawn: %w", text, err)
	}
	version := coding.Version(coding.MinVersion)
	for letters.Bits(version) > 8*version.DataBytes(coding.M) {
		if version++; version > coding.MaxVersion {
			return nil, message.Errorf("the code %.40q... is too long to be drawn", text)
		}
	}
	return leastPenalty(letters, version)
}

// masks is the number of mask patterns of a QR code.
const masks = 8

// leastPenalty is the code of the mask that a reader is least likely to stumble over.
func leastPenalty(letters coding.Alpha, version coding.Version) (image.Image, error) {
	var best *image.Gray
	least := 0
	for mask := range coding.Mask(masks) {
		plan, err := coding.NewPlan(version, coding.M, mask)
		if err != nil {
			return nil, err
		}
		code, err := plan.Encode(letters)
		if err != nil {
			return nil, err
		}
		picture := pictureOf(code)
		if p := penalty(picture); best == nil || p < least {
			best, least = picture, p
		}
	}
	return best, nil
}

func pictureOf(code *coding.Code) *image.Gray {
	picture := image.NewGray(image.Rect(0, 0, code.Size, code.Size))
	for y := range code.Size {
		for x := range code.Size {
			if !code.Black(x, y) {
				picture.SetGray(x, y, color.Gray{Y: 0xff})
			}
		}
	}
	return picture
}
