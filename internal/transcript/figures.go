package transcript

import (
	"regexp"
	"slices"
	"strings"
)

// firstFigures compares the digits of all lines, those left out that may be new.
func firstFigures(was, is []string, rules []*rule) (before, after string, differ bool) {
	kept := slices.DeleteFunc(slices.Clone(is), func(line string) bool { return added(line, rules) })
	w, i := digitsOfAll(was, rules), digitsOfAll(kept, rules)
	if w == i {
		return "", "", false
	}
	same := 0
	for same < min(len(w), len(i)) && w[same] == i[same] {
		same++
	}
	from := max(same-20, 0)
	return w[from:min(same+20, len(w))], i[from:min(same+20, len(i))], true
}

// digitsOfAll returns the digits of lines, without masked parts.
func digitsOfAll(lines []string, rules []*rule) string {
	var b strings.Builder
	for _, line := range lines {
		b.WriteString(digits(masked(line, rules)))
	}
	return b.String()
}

func masked(line string, rules []*rule) string {
	for _, r := range rules {
		if r.mask != nil {
			line = r.mask.ReplaceAllString(line, "#")
		}
	}
	return line
}

// firstLost finds the first figure of an older output that is not in today's.
func firstLost(was, is []string, rules []*rule) (before, after string, differ bool) {
	there := map[string]bool{}
	for _, line := range is {
		line = masked(line, rules)
		for _, figure := range slices.Concat(figure.FindAllString(line, -1), spacedFigure.FindAllString(line, -1)) {
			there[digits(figure)] = true
		}
	}
	for _, line := range was {
		for _, figure := range figure.FindAllString(masked(line, rules), -1) {
			if !there[digits(figure)] {
				return line, figure + " is nowhere", true
			}
		}
	}
	return "", "", false
}

var (
	figure       = regexp.MustCompile(`\d+(?:[.,]\d+)*`)
	spacedFigure = regexp.MustCompile(`\d{1,3}(?:[ \x{a0}\x{202f}]\d{3})+(?:,\d+)?`) // thousands parted by blanks
)

// digits are the digits of a line, in order.
func digits(line string) string {
	return strings.Map(func(c rune) rune {
		if c < '0' || c > '9' {
			return -1
		}
		return c
	}, line)
}
