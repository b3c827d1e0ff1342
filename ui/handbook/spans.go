package handbook

import (
	"regexp"
	"strings"
)

// The marks inside a line: a word of the screen or a key in two stars, a word of a file or one that
// is typed in backticks, and a chapter to go to.
var marks = regexp.MustCompile("\\*\\*(.+?)\\*\\*|`([^`]+)`|\\[([^\\]]+)\\]\\(([a-z]+)\\.md\\)")

// spans parts a text at its marks.
func spans(text string) []Span {
	var out []Span
	at := 0
	for _, m := range marks.FindAllStringSubmatchIndex(text, -1) {
		if m[0] > at {
			out = append(out, Span{Text: text[at:m[0]]})
		}
		part := func(n int) string {
			if m[2*n] < 0 {
				return ""
			}
			return text[m[2*n]:m[2*n+1]]
		}
		out = append(out, Span{Text: part(1) + part(2) + part(3), Bold: true, Chapter: part(4)})
		at = m[1]
	}
	if at < len(text) {
		out = append(out, Span{Text: text[at:]})
	}
	return out
}

// plain is a text without its marks.
func plain(text string) string { return Block{Text: spans(text)}.Plain() }

// tied inserts no-break spaces: between a figure and its unit, in citations, and before French
// punctuation. It also normalizes line ends.
var tied = strings.NewReplacer("\r\n", "\n", " %", "\u00a0%", " °", "\u00a0°", " lb", "\u00a0lb", " CFR ", "\u00a0CFR\u00a0",
	" :", "\u00a0:", "« ", "«\u00a0", " »", "\u00a0»")
