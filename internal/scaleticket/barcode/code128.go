package barcode

import (
	"image"
	"strings"
	"unicode/utf8"

	"github.com/boombuler/barcode/code128"

	"tenthpoint/internal/message"
)

// longestCode is the maximum length of a label's barcode: more letters would make its bars too thin
// for the label printers in use.
const longestCode = 16

// Code128 is a sample number as a Code 128 barcode, one pixel to a module, one
// pixel high.
func Code128(number string) (image.Image, error) {
	number = strings.TrimSpace(number)
	switch {
	case number == "":
		return nil, message.Invalid.Errorf("the sample has no number, and a label is for finding it again. Give the sample a number")
	case utf8.RuneCountInString(number) > longestCode:
		return nil, message.Invalid.Errorf("sample number %.40q has %d letters; the barcode of a label holds %d. Give the sample a shorter number", number, utf8.RuneCountInString(number), longestCode)
	case strings.ContainsFunc(number, func(r rune) bool { return r < ' ' || r > '~' }):
		return nil, message.Invalid.Errorf("sample number %q has a letter that a barcode cannot hold. Use A to Z, digits and signs of a plain keyboard", number)
	}
	code, err := code128.Encode(number)
	if err != nil {
		return nil, message.Errorf("sample number %q cannot be drawn as a barcode: %w", number, err)
	}
	return code, nil
}
