package present

import (
	"strings"

	"tenthpoint/internal/grain"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/textsearch"
)

// yesOrNo is how a thing that is there or not stands in its field.
func yesOrNo(present bool) string {
	if present {
		return Say("yes")
	}
	return Say("no")
}

// readFactor reads what was typed of a factor. Yes and no are understood in the
// language of the desk as in English, and by their first letter.
func readFactor(factor grain.Factor, text string) (quantity.Amount, error) {
	if factor.YesNo {
		for _, word := range []string{"yes", "no"} {
			if said := textsearch.Fold(Say(word)); isBegun(said, textsearch.Fold(strings.TrimSpace(text))) {
				text = word
				break
			}
		}
	}
	return factor.Parse(text)
}

// isBegun reports whether a text is a word or its first letter.
func isBegun(word, text string) bool { return text != "" && (text == word || text == word[:1]) }
