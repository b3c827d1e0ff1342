package session

import (
	"strings"

	"tenthpoint/internal/grain"
	"tenthpoint/internal/textsearch"
)

// YesOrNo returns the text of a yes-no field.
func (l Language) YesOrNo(present bool) string {
	if present {
		return l.Say("yes")
	}
	return l.Say("no")
}

// PlainText is a text as the factor reads it. Yes and no are understood in the
// language of the desk as in English, and by their first letter.
func PlainText(in Language, factor grain.Factor, text string) string {
	if factor.YesNo {
		for _, word := range []string{"yes", "no"} {
			if said := textsearch.Fold(in.Say(word)); isBegun(said, textsearch.Fold(strings.TrimSpace(text))) {
				return word
			}
		}
	}
	return text
}

// isBegun reports whether a text is a word or its first letter.
func isBegun(word, text string) bool { return text != "" && (text == word || text == word[:1]) }
