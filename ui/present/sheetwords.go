package present

import (
	"fmt"
	"strings"
)

// shortTitles are what columns of a paper are called on the screen, where all of
// them stand side by side.
var shortTitles = map[string]string{
	"Off for quality":             "Quality",
	"Average moisture":            "Moist.",
	"Average test weight":         "Test wt.",
	"Loads, price later":          "Later: loads",
	"Charges, price later":        "charges",
	"Quantity, price later":       "quantity",
	"Tonight bu, by legal weight": "Tonight bu",
}

// columnTitle is the title of a paper's column in words of this desk; the unit
// after it stays as it is.
func columnTitle(title string) string {
	words, unit := title, ""
	if at := strings.LastIndex(title, " "); at > 0 && isUnit(title[at+1:]) {
		words, unit = title[:at], title[at:]
	}
	if short, known := shortTitles[words]; known {
		words = short
	}
	return Say(words) + unit
}

// isUnit reports whether a word is a unit that a paper's columns are in.
func isUnit(word string) bool {
	return strings.Contains(" lb kg bu cwt t $ % lb/bu kg/hL ", " "+word+" ")
}

// cellWords are the words of a paper's cell. A grain may stand in a longer one:
// "Corn, out", "All Corn".
func cellWords(text string) string {
	for _, c := range []struct{ before, after, whole string }{
		{"", ", out", Say("%s, out")},
		{"", ", to the day's account", Say("%s, to the day's account")},
		{"less: ", " of earlier days, voided or corrected today", Say("less: %s of earlier days, voided or corrected today")},
		{"less: ", " of earlier days", Say("less: %s of earlier days")},
		{"All ", "", Say("All %s")},
		{"contract ", "", Say("contract %s")},
	} {
		grain, starts := strings.CutPrefix(text, c.before)
		if grain, ends := strings.CutSuffix(grain, c.after); starts && ends && grain != "" && translate(text) == text {
			return fmt.Sprintf(c.whole, cellWords(grain))
		}
	}
	return Say(text)
}
