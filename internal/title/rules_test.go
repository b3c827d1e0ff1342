package title

import (
	"testing"

	"tenthpoint/internal/law"
	"tenthpoint/internal/quantity"
)

func rulesOf(t *testing.T, rules, place string, day quantity.Date) Rules {
	t.Helper()
	set, problems := law.NewSet(law.Shipped()...)
	if err := problems.Err(); err != nil {
		t.Fatal(err)
	}
	r, err := RulesIn(set.For(rules).In(place).On(day))
	if err != nil {
		t.Fatal(err)
	}
	return r
}

// The words under a ticket and the day of undecided grain are those of the place, with where they
// were read: states differ, and Arkansas says the opposite of Montana.
func TestRulesOfPlaces(t *testing.T) {
	delivered := quantity.MustDate("2026-12-05")
	for _, c := range []struct {
		rules, place, words, due, citation string
	}{
		{"us", "montana", "THIS IS NOT A WAREHOUSE RECEIPT. IT MUST BE EXCHANGED FOR A WAREHOUSE RECEIPT IF GRAIN IS HELD IN STORAGE", "", "MCA 80-4-525"},
		{"us", "arkansas", "A scale ticket without a price is a warehouse receipt (A.C.A. 2-17-202(7)).", "", "A.C.A. 2-17-202(7)"},
		{"us", "louisiana", "", "2026-12-08", "R.S. 3:3415"},
		{"us", "north-dakota", "", "2027-01-04", "N.D.C.C. 60-02-11 as of 2021, since recodified in 4.1-58"},
		{"us", "ohio", "", "2026-12-20", "R.C. 926.29; OAC 901:7-2-03"},
		{"us", "south-dakota", "", "2027-01-04", "SDCL 49-45-10"},
		{"us", "iowa", "", "2027-01-04", "Iowa Code 203C.17"},               // 203C.17(5): paid in 30 days without a licence
		{"us", "kentucky", "", "2027-01-04", "KRS 251"},                     // over 30 days unpaid is a warehouse
		{"us", "minnesota", "", "2027-01-04", "Minnesota Statutes 223.177"}, // a credit contract is signed within 30 days
		{"us", "idaho", "", "2027-01-04", "I.C. 69-251"},                    // paid within 30 days of deposit
		{"us", "", "", "", ""},      // nobody read the place
		{"us", "texas", "", "", ""}, // nor this one
		{"canada", "", "Scale ticket only: no claim for payment protection is made on it. A primary elevator receipt or cash purchase ticket is issued without delay after the grain is unloaded.", "2027-03-05",
			"Canada Grain Regulations s. 33 and 45; Canada Grain Act s. 81; payment protection program"},
	} {
		r := rulesOf(t, c.rules, c.place, delivered)
		if due := r.Due(delivered).String(); r.Words != c.words || due != c.due || r.Citation != c.citation {
			t.Errorf("%s %s: %q, due %q, read in %q", c.rules, c.place, r.Words, due, r.Citation)
		}
	}
}

// Every place whose law is shipped is held to its source above: its days, and which of them the
// ticket tells in words.
func TestEveryPlaceIsHeldToItsSource(t *testing.T) {
	want := map[string]int{"arkansas": 0, "idaho": 30, "iowa": 30, "kentucky": 30, "louisiana": 3, "minnesota": 30, "montana": 0, "north-dakota": 30, "ohio": 15, "south-dakota": 30}
	set, problems := law.NewSet(law.Shipped()...)
	if err := problems.Err(); err != nil {
		t.Fatal(err)
	}
	for _, place := range set.Places() {
		if _, onTickets := set.In(place).On(quantity.MustDate("2026-12-05")).Find(place, KindTitles, ""); !onTickets {
			continue // its law was read for the days of contracts alone
		}
		days, read := want[place]
		if !read {
			t.Errorf("%s is held to no source", place)
		}
		delete(want, place)
		delivered := quantity.MustDate("2026-12-05")
		due := quantity.Date{}
		if days > 0 {
			due = delivered.AddDays(days)
		}
		if r := rulesOf(t, "us", place, delivered); r.Due(delivered) != due || r.Citation == "" {
			t.Errorf("%s: due %s, want %s, read in %q", place, r.Due(delivered), due, r.Citation)
		}
	}
	if len(want) > 0 {
		t.Errorf("no law is shipped of %v", want)
	}
}

// A ticket of the first law has the words of that time.
func TestFirstLawHasItsWords(t *testing.T) {
	if r := rulesOf(t, "us", "", quantity.MustDate("2026-10-01")); r != First {
		t.Errorf("rules %+v", r)
	}
}
