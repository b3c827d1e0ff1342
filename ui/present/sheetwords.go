package present

import "tenthpoint/internal/report"

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
	words, unit := report.Column{Title: title}.Words()
	if short, known := shortTitles[words]; known {
		words = short
	}
	return Say(words) + unit
}
