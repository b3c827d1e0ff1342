package handbook

import (
	"regexp"
	"strings"
	"unicode"
)

// folded are the letters of French, and a few of its neighbors, without their
// marks. Whoever looks for "refaction" in a hurry means "réfaction".
var folded = map[rune]string{
	'à': "a", 'â': "a", 'ä': "a", 'á': "a", 'ç': "c", 'é': "e", 'è': "e", 'ê': "e", 'ë': "e",
	'î': "i", 'ï': "i", 'í': "i", 'ô': "o", 'ö': "o", 'ó': "o", 'ù': "u", 'û': "u", 'ü': "u", 'ú': "u",
	'ÿ': "y", 'ñ': "n", 'œ': "oe", 'æ': "ae",
}

// fold puts a text in small letters without accents, also where an accent is
// written as a mark of its own after its letter.
func fold(text string) string {
	var out strings.Builder
	for _, r := range strings.ToLower(text) {
		plain, known := folded[r]
		switch {
		case known:
			out.WriteString(plain)
		case !unicode.Is(unicode.Mn, r):
			out.WriteRune(r)
		}
	}
	return out.String()
}

// elided are the small words that French shortens before a vowel. They are in
// every sentence and say nothing of what it is about.
var elided = regexp.MustCompile(`\b(?:[cdjlmnst]|qu)['’]`)

// wordsOf are the words of a text, folded. An apostrophe parts words, so that
// "l'humidité" is found by its noun; a point stays in a figure, as in 1.18.
func wordsOf(text string) []string {
	words := strings.FieldsFunc(elided.ReplaceAllString(fold(text), " "), func(r rune) bool {
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
