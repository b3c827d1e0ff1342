// Package spelled writes sums of money in words, as checks have them: whole dollars in the words of a
// language, cents as a fraction of a hundred. A figure is altered by one stroke; words are not, and
// where the two differ the words are what counts (common practice).
package spelled

import (
	"fmt"
	"strings"

	"tenthpoint/internal/quantity"
)

// Most is the first sum that is not written in words.
const Most = 1_000_000_000

// Dollars is a sum of whole cents from nothing to below [Most] dollars in the words of a language;
// false for any other sum and for a language without words of its own.
func Dollars(language string, sum quantity.Amount) (string, bool) {
	cents, ok := cents(sum)
	speak, known := languages[language]
	if !ok || !known {
		return "", false
	}
	return speak(cents/100, fmt.Sprintf("%02d/100", cents%100)), true
}

// cents is a sum as a whole number of cents.
func cents(sum quantity.Amount) (int, bool) {
	if sum.Unit() != quantity.Dollar || sum.Sign() < 0 || !sum.Less(quantity.Int(Most, quantity.Dollar)) {
		return 0, false
	}
	whole, part, found := strings.Cut(sum.Fixed(2), ".")
	var dollars, hundredths int
	if _, err := fmt.Sscanf(strings.ReplaceAll(whole, ",", "")+" "+part, "%d %d", &dollars, &hundredths); !found || err != nil {
		return 0, false
	}
	return dollars*100 + hundredths, true
}

// languages are the languages with words of their own, by their tags.
var languages = map[string]func(dollars int, fraction string) string{
	"en": func(n int, fraction string) string { return english(n) + " and " + fraction + " dollars" },
	"fr": func(n int, fraction string) string {
		return french(n) + ofMillions(n) + dollarFrench(n) + " et " + fraction
	},
	"es": func(n int, fraction string) string {
		return spanish(n) + ofMillions(n) + dollarSpanish(n) + " con " + fraction
	},
}

// ofMillions stands before dollars where a million does: in French and Spanish it is a noun, and
// there are millions of them.
func ofMillions(n int) string {
	if n > 0 && n%1_000_000 == 0 {
		return " de"
	}
	return ""
}
