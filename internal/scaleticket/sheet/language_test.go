package sheet

import (
	"regexp"
	"strings"
	"testing"

	"tenthpoint/internal/i18n"
	"tenthpoint/internal/i18n/unsaid"
	"tenthpoint/internal/scaleticket"
	"tenthpoint/internal/tickettest"
)

// ownOfTickets are the names on the tickets of the table, and what people typed.
var ownOfTickets = []string{
	"Example Prairie Elevator", "12 Rail Street", "Exampleton", "Licence EX", "North", "South", "Deck", "Minnesota Statutes", "posted street price of the day",
	"Alder Farm", "Beech Land Trust", "C. Cedar", "D. Driver", "Josephine Clerk", "M. Manager", "T. Tester", "Pit", "shelf", "rack", "yellow",
	"U.S. No. 3 Yellow Corn", "retained sample tested again", "at the official laboratory", "indicator cable broken, read from the dial",
	"rates harvest", "spoiled in the printer", "Example Valley Grain Terminal", "Spring wheat by the tonne, example rates", "second load of the day",
	"Humidimètre M-2 was last checked on; its check was due on", "Sample at deg is under; warm it sealed and test again", "Readings lie apart, more than",
	"agreed with the grower by phone", "Winter wheat with weight deductions", "wrong grower, weighed again", "Example River Mill", "Example Freight Agency",
	"Bin", "chart of", "SHA", "CFR", "oven", "Meter", "Shrunken and broken", "heating, sour smell",
}

// fromFile matches what a slip names of the file of its rates: the words of the file are the same
// in every language.
var fromFile = regexp.MustCompile(`\[[\p{L}0-9_, -]+, (?:ligne|renglón) \d+\]|[a-z-]+-example-\d+(, [A-Z][A-Za-z ]+(, example rates)?(, harvest)?)?`)

// Every slip of an elevator that speaks another language speaks it to the last remark: each of its
// words is one of the texts in that language, or a name.
func TestNothingIsLeftInEnglish(t *testing.T) {
	for _, language := range i18n.Codes()[1:] {
		spoken := unsaid.In(language, nil, ownOfTickets...)
		for _, c := range tickettest.Table {
			if c.Name == "local-words" {
				continue // it has words of its own
			}
			ticket := c.Make(t)
			ticket.House.Language = language
			for _, line := range strings.Split(Text(scaleticket.Compose(ticket), 400), "\n") {
				if left := spoken.Left(fromFile.ReplaceAllString(line, "")); len(left) > 0 {
					t.Errorf("%s, %s: %q is left in English: %s", language, c.Name, strings.TrimSpace(line), left)
				}
			}
		}
		if missing := i18n.In(language).Missing(); len(missing) > 0 {
			t.Errorf("%s lacks %q", language, missing)
		}
	}
}
