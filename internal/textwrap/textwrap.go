// Package textwrap breaks text into lines, for papers, terminals and screens.
// What fits is decided by the caller, who knows the width of its letters.
package textwrap

import (
	"strings"
	"unicode"
	"unicode/utf8"

	"tenthpoint/internal/quantity"
)

// Lines joins words into lines that fit. A word that fits on no line has its own line.
func Lines(words []string, fits func(line string) bool) []string {
	var out []string
	line := ""
	for _, word := range words {
		if line == "" {
			line = word
			continue
		}
		if longer := line + " " + word; fits(longer) {
			line = longer
			continue
		}
		out, line = append(out, line), word
	}
	if line != "" {
		out = append(out, line)
	}
	return out
}

// Broken is [Lines] with words that fit on no line broken into parts that do.
func Broken(words []string, fits func(line string) bool) []string {
	var out []string
	line := ""
	for _, word := range words {
		if line != "" {
			if longer := line + " " + word; fits(longer) {
				line = longer
				continue
			}
			out = append(out, line)
		}
		for !fits(word) {
			head := longest(word, fits)
			if head == word { // one letter, wider than the line
				break
			}
			out, word = append(out, head), word[len(head):]
		}
		line = word
	}
	if line != "" {
		out = append(out, line)
	}
	return out
}

// longest is as much of a word as fits, and at least one letter of it.
func longest(word string, fits func(string) bool) string {
	_, size := utf8.DecodeRuneInString(word)
	for at := size; at < len(word); {
		_, next := utf8.DecodeRuneInString(word[at:])
		if !fits(word[:at+next]) {
			break
		}
		at += next
		size = at
	}
	return word[:size]
}

// InWidth reports whether a line has at most so many letters.
func InWidth(width int) func(line string) bool {
	return func(line string) bool { return utf8.RuneCountInString(line) <= width }
}

// Fields parts text at blanks and line ends. A no-break space, as some languages
// write between thousands, parts nothing.
func Fields(text string) []string {
	return strings.FieldsFunc(text, func(r rune) bool { return r == ' ' || r == '\n' || r == '\t' || r == '\r' })
}

// Words parts text at blanks, but never a figure from its unit: "0.5 %" is one
// word.
func Words(text string) []string {
	var out []string
	for _, word := range Fields(text) {
		if last := len(out) - 1; last >= 0 && endsInDigit(out[last]) && isUnit(word) {
			out[last] += " " + word
			continue
		}
		out = append(out, word)
	}
	return out
}

func endsInDigit(word string) bool {
	last, _ := utf8.DecodeLastRuneInString(word)
	return unicode.IsDigit(last) || last == '…'
}

// isUnit reports whether a word is a unit, with or without a stop after it.
func isUnit(word string) bool {
	bare := strings.TrimRight(word, ").,:;")
	return bare != "" && quantity.IsUnit(bare)
}
