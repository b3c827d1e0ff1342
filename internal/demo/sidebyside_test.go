package demo

import (
	"regexp"
	"slices"
	"strings"
	"testing"

	"tenthpoint/internal/book"
	"tenthpoint/internal/book/sqlite"
	"tenthpoint/internal/i18n"
	"tenthpoint/internal/office"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/scalehouse"
	"tenthpoint/internal/scaleticket"
	"tenthpoint/internal/scaleticket/sheet"
)

// One season printed in every language side by side: the slips, day sheets and statements have other
// words and other signs, and the same figures in the same order.
func TestOneSeasonInEveryLanguage(t *testing.T) {
	english := printed(t, i18n.English)
	for _, code := range i18n.Codes()[1:] {
		other := printed(t, code)
		if len(other) != len(english) {
			t.Fatalf("%s prints %d papers, en %d", code, len(other), len(english))
		}
		same := 0
		for i := range english {
			want, got := figuresOf(english[i].text), figuresOf(other[i].text)
			if want != got {
				t.Errorf("%s of %s: the figures are\n%s\nnot\n%s", english[i].name, code, got, want)
			}
			if english[i].text == other[i].text {
				same++
			}
		}
		if same > 0 {
			t.Errorf("%d papers are the same in %s", same, code)
		}
	}
}

// onePaper is a paper as text.
type onePaper struct{ name, text string }

// printed are the papers of a season in a language.
func printed(t *testing.T, code string) []onePaper {
	t.Helper()
	kept := filled(t, Options{Loads: 60, Seed: 3, Now: noon, Rates: shipped(t), Language: code})
	d := opened(t, kept)
	return append(slipsOf(t, d, kept), daysAndStatements(t, d)...)
}

func slipsOf(t *testing.T, d *scalehouse.Desk, kept *sqlite.Book) (out []onePaper) {
	t.Helper()
	rows, err := kept.Loads(ctx, book.LoadFilter{FromTicket: 1})
	must(t, err)
	for _, row := range rows {
		l, err := office.Load(ctx, d, row.ID)
		must(t, err)
		settled, err := office.Resettle(ctx, d, l)
		must(t, err)
		ticket := scaleticket.Ticket{House: d.Profile(), Load: l, Settlement: settled}
		out = append(out, onePaper{"the slip of ticket " + row.ID, sheet.Text(scaleticket.Compose(ticket), 400)})
	}
	return out
}

func daysAndStatements(t *testing.T, d *scalehouse.Desk) (out []onePaper) {
	t.Helper()
	for day := d.Today().AddDays(-3); !day.After(d.Today()); day = day.AddDays(1) {
		paper, err := office.DayPaper(ctx, d, day)
		must(t, err)
		out = append(out, onePaper{"the sheet of " + day.String(), paper.Text(3000)})
	}
	growers, err := office.Growers(ctx, d)
	must(t, err)
	for _, g := range growers[:3] {
		paper, err := office.Statement(ctx, d, g.ID, quantity.Date{}, quantity.Date{})
		must(t, err)
		out = append(out, onePaper{"the statement of " + g.Name, paper.Text(3000)})
	}
	return out
}

// aNumber matches digits with what may stand between them in one language or another.
var aNumber = regexp.MustCompile(`\d(?:[.,\x{202f}]?\d)*`)

// aHash matches a hash, which is another where the elevator has another language.
var aHash = regexp.MustCompile(`[0-9a-f]{12,}`)

// figuresOf are the digits of the numbers in a text. Rows stand in the order of their names, which is
// another in each language.
func figuresOf(text string) string {
	out := aNumber.FindAllString(aHash.ReplaceAllString(text, ""), -1)
	for i, n := range out {
		out[i] = strings.NewReplacer("\u202f", "", ",", "", ".", "").Replace(n)
	}
	slices.Sort(out)
	return strings.Join(out, " ")
}
