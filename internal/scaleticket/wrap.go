package scaleticket

import (
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"
)

// wrapped breaks text at blanks into lines that fit; a word that fits on no
// line is broken itself. A figure and its unit stay together. No text is no
// lines.
func wrapped(text string, fits func(line string) bool) []string {
	var out []string
	var line string
	for _, word := range wordsOf(text) {
		if line != "" && !fits(line+" "+word) {
			out, line = append(out, line), ""
		}
		for !fits(word) {
			head := longest(word, fits)
			out, word = append(out, head), word[len(head):]
		}
		line = joined(" ", line, word)
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

// wordsOf parts text at blanks, but never a figure from its unit: "0.5 %" is
// one word.
func wordsOf(text string) []string {
	var out []string
	for _, word := range strings.Fields(text) {
		if len(out) > 0 && isUnit(word) && endsInDigit(out[len(out)-1]) {
			out[len(out)-1] += " " + word
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
	return slices.Contains(unitWords, strings.TrimRight(word, ").,:;"))
}

var unitWords = []string{"%", "lb", "kg", "bu", "t", "cwt", "pt", "g", "lb/bu", "kg/hL", "°F", "°C", "dial", "ct", "%/pt"}
