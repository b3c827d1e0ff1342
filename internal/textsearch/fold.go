// Package textsearch folds texts for searching: who types "refaction" finds
// "Réfaction". Case, accents and ligatures make no difference.
package textsearch

import (
	"strings"
	"unicode"

	"golang.org/x/text/cases"
	"golang.org/x/text/runes"
	"golang.org/x/text/transform"
	"golang.org/x/text/unicode/norm"
)

// twoInOne are letters that do not decompose into a letter and an accent.
var twoInOne = strings.NewReplacer("œ", "oe", "æ", "ae", "ø", "o")

// Fold normalizes a text for comparison and search; it is not for reading.
func Fold(text string) string {
	if isPlain(text) {
		return strings.ToLower(text)
	}
	bare := transform.Chain(norm.NFD, runes.Remove(runes.In(unicode.Mn)), norm.NFC)
	plain, _, err := transform.String(bare, text)
	if err != nil { // invalid text is compared unchanged
		plain = text
	}
	// Folding makes some scripts, such as Cherokee, capital: all become small.
	return twoInOne.Replace(strings.ToLower(cases.Fold().String(plain)))
}

// isPlain reports whether a text has only letters without accents, as most have:
// a list of growers is folded at every keystroke.
func isPlain(text string) bool {
	return strings.IndexFunc(text, func(r rune) bool { return r > unicode.MaxASCII }) < 0
}

// Contains reports whether a text has a part, folded.
func Contains(text, part string) bool { return strings.Contains(Fold(text), Fold(part)) }

// Equal reports whether two texts are alike, folded.
func Equal(a, b string) bool { return Fold(a) == Fold(b) }
