package textsearch

import (
	"cmp"
	"strings"
)

// Compare orders texts as people do: figures by their value, so that 2 comes before
// 10, and letters folded.
func Compare(a, b string) int {
	a, b = Fold(a), Fold(b)
	for a != "" && b != "" {
		x, y := leading(a), leading(b)
		a, b = a[len(x):], b[len(y):]
		if c := comparePart(x, y); c != 0 {
			return c
		}
	}
	return cmp.Compare(len(a), len(b))
}

// leading is the run of digits, or of anything else, that a text begins with.
func leading(text string) string {
	digits := isDigit(text[0])
	for i := range len(text) {
		if isDigit(text[i]) != digits {
			return text[:i]
		}
	}
	return text
}

func isDigit(b byte) bool { return '0' <= b && b <= '9' }

func comparePart(x, y string) int {
	if isDigit(x[0]) && isDigit(y[0]) {
		x, y = strings.TrimLeft(x, "0"), strings.TrimLeft(y, "0")
		if c := cmp.Compare(len(x), len(y)); c != 0 {
			return c
		}
	}
	return strings.Compare(x, y)
}
