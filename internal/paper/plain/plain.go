// Package plain sets papers as lines of equally wide letters, for terminals, files
// and receipt printers.
package plain

import (
	"strings"
	"unicode/utf8"

	"tenthpoint/internal/textwrap"
)

// Lines is a text being set, line by line.
type Lines struct {
	Width int // letters to a line
	out   strings.Builder
}

// Text returns the text set so far.
func (l *Lines) Text() string { return l.out.String() }

// Line adds a line.
func (l *Lines) Line(text string) {
	l.out.WriteString(strings.TrimRight(text, " "))
	l.out.WriteByte('\n')
}

// Gap adds an empty line, but not at the beginning.
func (l *Lines) Gap() {
	if l.out.Len() > 0 {
		l.out.WriteByte('\n')
	}
}

// Rule fills a line with a letter.
func (l *Lines) Rule(letter string) { l.Line(strings.Repeat(letter, l.Width)) }

// Middle sets text in the middle.
func (l *Lines) Middle(text string) {
	for _, part := range Wrap(text, l.Width) {
		l.Line(strings.Repeat(" ", (l.Width-Letters(part))/2) + part)
	}
}

// Running sets running text, its first line after one indent and the others after
// another.
func (l *Lines) Running(first, rest, text string) {
	indent := first
	for _, part := range Wrap(text, l.Width-Letters(rest)) {
		l.Line(indent + part)
		indent = rest
	}
}

// Ending sets text at the right edge, on as many lines as it needs.
func (l *Lines) Ending(text string, width int) {
	for _, part := range Wrap(text, width) {
		l.Line(Right(part, l.Width))
	}
}

// Letters returns the number of characters of a text.
func Letters(text string) int { return utf8.RuneCountInString(text) }

// Left fills a text up with blanks at its right, Right at its left.
func Left(text string, width int) string  { return text + blanks(width-Letters(text)) }
func Right(text string, width int) string { return blanks(width-Letters(text)) + text }

func blanks(n int) string { return strings.Repeat(" ", max(0, n)) }

// Wrap breaks text into lines of at most so many letters. A figure and its unit stay
// together, and a word that is longer than a line is broken.
func Wrap(text string, width int) []string {
	return textwrap.Broken(textwrap.Words(text), textwrap.InWidth(width))
}

// Paragraph is [Wrap], but no text keeps the room of an empty line.
func Paragraph(text string, width int) []string {
	if lines := Wrap(text, width); len(lines) > 0 {
		return lines
	}
	return []string{""}
}
