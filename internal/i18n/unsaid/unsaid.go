// Package unsaid finds, for tests, English words left in a text that should be in another language:
// words that no text of that language has.
package unsaid

import (
	"regexp"
	"slices"
	"strings"

	"tenthpoint/internal/i18n"
)

// Finder has the words of a language and the names that are the same in every one.
type Finder struct{ words map[string]bool }

// In makes a finder for a language: its vocabulary is the texts of the language, further texts, and
// the names and typed words of an elevator.
func In(code string, more map[string]string, own ...string) Finder {
	f := Finder{map[string]bool{}}
	for _, text := range i18n.Texts(code) {
		f.Know(text)
	}
	for _, text := range more {
		f.Know(text)
	}
	f.Know(own...)
	return f
}

// Know adds the words of texts.
func (f Finder) Know(texts ...string) {
	for _, text := range texts {
		for _, w := range wordsOf(text) {
			f.words[w] = true
		}
	}
}

// word matches a run of letters; one with digits in it is a number or an id.
var word = regexp.MustCompile(`[\p{L}\p{N}_]*\p{L}[\p{L}\p{N}_]*`)

// Left are the words of a text that are not of the language.
func (f Finder) Left(text string) []string {
	return slices.DeleteFunc(wordsOf(text), func(w string) bool { return f.words[w] })
}

// wordsOf returns the words of a text in small letters, without units, ids and the gaps of formats.
func wordsOf(text string) []string {
	text = gap.ReplaceAllString(text, " ")
	var out []string
	for _, w := range word.FindAllString(text, -1) {
		if len(w) > 1 && !strings.ContainsAny(w, "0123456789_") && !slices.Contains(units, w) {
			out = append(out, strings.ToLower(w))
		}
	}
	return out
}

var gap = regexp.MustCompile(`%(\[\d\])?[-+#0]*\d*(\.\d+)?[a-z]`)

var units = []string{"lb", "kg", "bu", "cwt", "pt", "hL", "USD", "CAD"}
