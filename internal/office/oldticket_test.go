package office_test

import (
	"errors"
	"regexp"
	"strings"
	"testing"

	"tenthpoint/internal/explanation"
	"tenthpoint/internal/guard"
	"tenthpoint/internal/i18n"
	"tenthpoint/internal/i18n/unsaid"
	"tenthpoint/internal/load"
	"tenthpoint/internal/office"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/scalehouse"
	"tenthpoint/internal/scalehouse/housetest"
	"tenthpoint/internal/scaleticket"
	"tenthpoint/internal/scaleticket/sheet"
)

// doubted issues a ticket at a house of a language that has something to tell of everything: a cold
// sample, a meter past its check, a truck scale read by hand, a price that was asked about.
func doubted(t *testing.T, language string) (s *scene, number int64) {
	s = housetest.BenchScene(t)
	speaks(s, language)
	s.At("2026-11-20 12:00")
	s.Answered()
	s.As(housetest.Clerk)
	details := housetest.Details()
	details.Day, details.Price = quantity.MustDate("2026-11-20"), housetest.Amount("41.2 $/bu")
	id, err := scalehouse.OpenLoad(ctx, s.Desk, details)
	must(t, err)
	s.Weigh(id, load.Gross, 52300)
	must(t, scalehouse.Weigh(ctx, s.Desk, id, load.Weighing{Which: load.Tare, Weight: housetest.Lb(24300), Source: load.ByHand, Scale: "1", Reason: "K-7"}))
	tests := housetest.DialReading("70", 250)
	tests.Readings[0].Sample, tests.Readings[0].Day = quantity.Int(36, quantity.Fahrenheit), details.Day
	tested, err := scalehouse.TestSample(ctx, s.Desk, s.Load(id), tests)
	must(t, err)
	must(t, scalehouse.RecordTest(ctx, s.Desk, id, load.Sample{Number: "S9", Tester: housetest.Tester}, tested))
	_, err = scalehouse.Issue(ctx, s.Desk, id)
	var asked guard.Asked
	if !errors.As(err, &asked) {
		t.Fatalf("nothing is asked about the price: %v", err)
	}
	for _, f := range asked {
		must(t, scalehouse.Answer(ctx, s.Desk, id, f.ID, f.Reasons[0]))
	}
	number, err = scalehouse.Issue(ctx, s.Desk, id)
	must(t, err)
	if l := s.Load(id); len(l.Sample.Flags) < 2 || len(l.Answers) == 0 {
		t.Fatalf("%d flags and %d answers are written down", len(l.Sample.Flags), len(l.Answers))
	}
	return s, number
}

// papersOf are slip, proof and day sheet of a ticket in the language the house speaks now. What is
// made of hashes is left out: the house's language is a fact too.
func papersOf(s *scene, number int64) string {
	s.T.Helper()
	l, err := office.Ticket(ctx, s.Desk, number)
	must(s.T, err)
	ticket := scaleticket.Ticket{House: s.Profile(), Load: l}
	ticket.Settlement, err = office.Resettle(ctx, s.Desk, l)
	must(s.T, err)
	papers := sheet.Text(scaleticket.Compose(ticket), 200) + explanation.Compose(s.Proof(number, office.ProofOptions{})).Text(200) + s.DayPaper(s.Today()).Text(300)
	return regexp.MustCompile(`\b[0-9a-f]{12,64}\b`).ReplaceAllString(papers, "#")
}

// A ticket issued in one language prints in another, down to its doubts and the questions that were
// asked about it, as if it had been issued in that one.
func TestOldTicketSpeaksAnyLanguage(t *testing.T) {
	for _, c := range []struct{ issued, printed string }{{"en", "fr"}, {"fr", "en"}} {
		s, number := doubted(t, c.issued)
		speaks(s, c.printed)
		got := papersOf(s, number)
		same, again := doubted(t, c.printed)
		speaks(same, c.printed)
		if want := papersOf(same, again); got != want {
			t.Errorf("issued in %s it prints in %s\n%s\nwant\n%s", c.issued, c.printed, got, want)
		}
		if c.printed == "fr" {
			wantFrench(t, s, got)
			if lost := i18n.In("fr").Missing(); len(lost) > 0 {
				t.Errorf("%d texts are lost: %q", len(lost), lost)
			}
		}
	}
}

// fromRates is what papers quote from the file of an edition.
var fromRates = regexp.MustCompile(`Barème affiché, ligne \d+ : .*|^ *part = .*|\[[a-z_, -]+, ligne \d+\]`)

// wantFrench names every word of a text that is neither French nor a name.
func wantFrench(t *testing.T, s *scene, text string) {
	t.Helper()
	p := s.Profile()
	f := unsaid.In("fr", nil, "Pit", "deg", "Minnesota Statutes", "Invented for tests; none: example rates, posted nowhere", p.Business, p.Street, p.Town, p.Phone, housetest.Clerk, housetest.Tester, housetest.Manager, "Ada Field", "Example dial meter A",
		"bench", "corn house example", "Confirm", "file", "rates of the test", "https")
	for _, line := range strings.Split(text, "\n") {
		if left := f.Left(fromRates.ReplaceAllString(line, "")); len(left) > 0 {
			t.Errorf("%q is left in English: %q", strings.TrimSpace(line), left)
		}
	}
}
