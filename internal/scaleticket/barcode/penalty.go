package barcode

import "image"

// A window of eleven modules that looks like a finder pattern with light modules on one side.
const (
	elevenModules = 1<<11 - 1
	finderLight   = 0b10111010000
	lightFinder   = 0b00001011101
)

// penalty counts what makes a QR code hard to read, by the four rules of ISO/IEC 18004, 7.8.3 (from
// memory): long runs of one colour, blocks of one colour, what looks like a finder pattern, and more of
// one colour than of the other.
func penalty(code *image.Gray) int {
	side := code.Rect.Dx()
	p := blocks(code.Pix, side) + imbalance(code.Pix)
	for i := range side {
		p += line(code.Pix[i*side:], side, 1) + line(code.Pix[i:], side, side)
	}
	return p
}

// line counts the runs of five and more, and what looks like a finder, in a row or a column.
func line(modules []byte, side, step int) int {
	p, run, window := 0, 0, 0
	for i := range side {
		at := modules[i*step]
		if i > 0 && at == modules[(i-1)*step] {
			run++
		} else {
			run = 1
		}
		switch {
		case run == 5:
			p += 3
		case run > 5:
			p++
		}
		window = window<<1&elevenModules | int(1&^at)
		if i >= 10 && (window == finderLight || window == lightFinder) {
			p += 40
		}
	}
	return p
}

// blocks counts the squares of two by two modules of one colour.
func blocks(modules []byte, side int) int {
	p := 0
	for at := range len(modules) - side - 1 {
		if one := modules[at]; at%side < side-1 && one == modules[at+1] && one == modules[at+side] && one == modules[at+side+1] {
			p += 3
		}
	}
	return p
}

// imbalance counts each full 5 % that the dark modules are away from half.
func imbalance(modules []byte) int {
	dark := 0
	for _, m := range modules {
		dark += int(1 &^ m)
	}
	return abs(20*dark-10*len(modules)) / len(modules) * 10
}

func abs(n int) int { return max(n, -n) }
