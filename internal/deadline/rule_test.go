package deadline_test

import (
	"encoding/csv"
	"os"
	"regexp"
	"testing"

	"tenthpoint/internal/deadline"
	"tenthpoint/internal/law"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/tomlfile"
)

func rulesOf(t *testing.T, rules, place string) []deadline.Rule {
	t.Helper()
	set, problems := law.NewSet(law.Shipped()...)
	if err := problems.Err(); err != nil {
		t.Fatal(err)
	}
	read, err := deadline.RulesIn(set.For(rules).In(place).On(quantity.MustDate("2026-12-05")))
	if err != nil {
		t.Fatal(err)
	}
	return read
}

// Each place's days are those that were read, counted from the day its law names.
func TestDaysOfPlaces(t *testing.T) {
	counted := deadline.Counted{Settled: quantity.MustDate("2026-11-01")}.With(quantity.MustDate("2026-10-05")).With(quantity.MustDate("2026-09-28"))
	for _, c := range []struct {
		rules, place string
		of           deadline.Of
		due          string
		atMarket     bool
	}{
		{"us", "illinois", deadline.Signature, "2026-11-04", true},
		{"us", "ohio", deadline.Signature, "2026-10-13", false},
		{"us", "minnesota", deadline.Signature, "2026-10-28", false},
		{"us", "colorado", deadline.Signature, "2026-10-28", false},
		{"us", "south-dakota", deadline.Payment, "2026-11-04", false},
		{"us", "idaho", deadline.Payment, "2026-11-04", false},
		{"canada", "", deadline.Payment, "2026-12-01", false},
		{"us", "ohio", deadline.Payment, "", false}, // nobody read one
		{"us", "", deadline.Signature, "", false},   // nor the place
		{"us", "canada", deadline.Payment, "2026-12-01", false},
	} {
		due, rule, found := deadline.Earliest(rulesOf(t, c.rules, c.place), c.of, counted)
		if due.String() != c.due || rule.AtMarket != c.atMarket || found != (c.due != "") {
			t.Errorf("%s of %s %s: due %q by %+v", c.of, c.rules, c.place, due, rule)
		}
		if found && (rule.Citation == "" || rule.IfPassed == "") {
			t.Errorf("%s of %s %s does not say where it was read and what becomes of it", c.of, c.rules, c.place)
		}
	}
}

var (
	delivered = regexp.MustCompile(`deliver(?:y|ies) (\d{4}-\d\d-\d\d)`)
	paid      = regexp.MustCompile(`cheque(?: for all on)? (\d{4}-\d\d-\d\d)`)
)

// The Canadian days of payment protection are those that the commission printed.
func TestPublishedProtection(t *testing.T) {
	file, err := os.Open("../../testdata/published/after-the-ticket/money.csv")
	if err != nil {
		t.Fatal(err)
	}
	defer file.Close()
	rows, err := csv.NewReader(file).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	rules, held := rulesOf(t, "canada", ""), 0
	for _, row := range rows {
		if row[1] != "payment window" || row[7] == "not eligible" {
			continue
		}
		counted := deadline.Counted{}.With(quantity.MustDate(delivered.FindStringSubmatch(row[4])[1]))
		if cheque := paid.FindStringSubmatch(row[4]); cheque != nil {
			counted.Settled = quantity.MustDate(cheque[1])
		}
		if due, _, _ := deadline.Earliest(rules, deadline.Payment, counted); due.String() != row[7] {
			t.Errorf("%s, %s: protected until %s; printed %s", row[0], row[4], due, row[7])
		}
		held++
	}
	if held < 6 {
		t.Errorf("%d published days were compared", held)
	}
}

// What is wrong with a file is told, all of it at once.
func TestMistakes(t *testing.T) {
	const heading = "[law]\nid = \"x\"\ntitle = \"x\"\nkind = \"deadlines\"\njurisdiction = \"x\"\ncitation = \"x\"\nread = \"read\"\n"
	for body, problems := range map[string]int{
		"[[deadline]]\nof = \"signature\"\nfrom = \"settlement\"\ndays = \"30\"\nif_passed = \"x\"\n":                       1,
		"[[deadline]]\nof = \"rent\"\nfrom = \"birth\"\ndays = \"0\"\n":                                                     4,
		"[[deadline]]\nof = \"payment\"\nfrom = \"settlement\"\ndays = \"30\"\nif_passed = \"x\"\nat_market_price = true\n": 0,
	} {
		f, err := law.Open("x.toml", []byte(heading+body))
		if err != nil {
			t.Fatal(err)
		}
		_, err = deadline.ReadRules(f)
		if found, _ := err.(tomlfile.Problems); len(found) != problems {
			t.Errorf("%q: %d problems, want %d: %v", body, len(found), problems, err)
		}
	}
}
