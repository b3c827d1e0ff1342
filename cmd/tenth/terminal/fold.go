package terminal

import (
	"unicode/utf8"

	"tenthpoint/internal/textwrap"
)

// folded are the lines of a table with its longest cells broken between words into lines of their
// own, so that the table has a width. Words stay whole, and a table of short cells stays wider.
func folded(lines [][]string, width int) [][]string {
	widths := foldedWidths(lines, width)
	var out [][]string
	for _, cells := range lines {
		parts, most := make([][]string, len(cells)), 1
		for i, cell := range cells {
			parts[i] = textwrap.Lines(textwrap.Words(cell), textwrap.InWidth(widths[i]))
			most = max(most, len(parts[i]))
		}
		for n := range most {
			line := make([]string, len(cells))
			for i, part := range parts {
				if n < len(part) {
					line[i] = part[n]
				}
			}
			out = append(out, line)
		}
	}
	return out
}

// foldedWidths narrows the widest column, a letter at a time, until the table fits or no column can
// be narrower than its longest word.
func foldedWidths(lines [][]string, width int) []int {
	var widths, least []int
	for _, cells := range lines {
		for i, cell := range cells {
			if i == len(widths) {
				widths, least = append(widths, 0), append(least, 0)
			}
			widths[i] = max(widths[i], utf8.RuneCountInString(cell))
			for _, word := range textwrap.Words(cell) {
				least[i] = max(least[i], utf8.RuneCountInString(word))
			}
		}
	}
	total := columnGap * (len(widths) - 1)
	for _, w := range widths {
		total += w
	}
	for ; total > width; total-- {
		widest := -1
		for i, w := range widths {
			if w > least[i] && (widest < 0 || w > widths[widest]) {
				widest = i
			}
		}
		if widest < 0 {
			break
		}
		widths[widest]--
	}
	return widths
}
