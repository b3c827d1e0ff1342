package handbook

import (
	"regexp"
	"strings"
	"unicode"

	"tenthpoint/internal/textsearch"
)

// elided are the small words that French shortens before a vowel. They are stop words.
var elided = regexp.MustCompile(`\b(?:[cdjlmnst]|qu)['’]`)

// wordsOf are the words of a text, folded. An apostrophe parts words, so that
// "l'humidité" is found by its noun; a point stays in a figure, as in 1.18.
func wordsOf(text string) []string {
	words := strings.FieldsFunc(elided.ReplaceAllString(textsearch.Fold(text), " "), func(r rune) bool {
		return !unicode.IsLetter(r) && !unicode.IsDigit(r) && r != '.'
	})
	out := words[:0]
	for _, w := range words {
		if w = strings.Trim(w, "."); w != "" {
			out = append(out, w)
		}
	}
	return out
}
