package barcode

import (
	"strings"
	"testing"
)

// TestBars compares a barcode with the bar widths of ISO/IEC 15417 (from memory): start B, S, 7,
// check, stop.
func TestBars(t *testing.T) {
	code, err := Code128("S7")
	if err != nil {
		t.Fatal(err)
	}
	var widths strings.Builder
	b := code.Bounds()
	for x := b.Min.X; x < b.Max.X; {
		n := 1
		for x+n < b.Max.X && isDark(code, x+n, b.Min.Y) == isDark(code, x, b.Min.Y) {
			n++
		}
		widths.WriteByte(byte('0' + n))
		x += n
	}
	// Start B is 104, S is 51, 7 is 23; the check is (104 + 51 + 2 x 23) mod 103 = 98.
	const want = "211214" + "213113" + "312131" + "411311" + "2331112"
	if got := widths.String(); got != want {
		t.Errorf("bars are %s, want %s", got, want)
	}
}
