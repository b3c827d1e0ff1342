package settle_test

import (
	"strings"
	"testing"
)

const discountHead = `[[discount]]
label = "Damage discount"
factor = "damage"
basis = "dry"
untested = "none"
`

func damage(rest string) string { return discountHead + rest }

const damageRows = `form = "table"
of = "money"
refuse_over = "20.0 %"

[[discount.row]]
upto = "5.0 %"
discount = "0 $/bu"

[[discount.row]]
over = "5.0 %"
under = "8.0 %"
discount = "0.02 $/bu"

[[discount.row]]
from = "8.0 %"
discount = "0.05 $/bu"`

// Just below, on and just above every end and limit.
func TestDiscountTableOnBreakpoints(t *testing.T) {
	e := scene(t, damage(damageRows))
	for value, want := range map[string]string{
		"0 %": "$0.00", "4.9 %": "$0.00", "5.0 %": "$0.00", "5.04 %": "$0.00", "5.05 %": "$20.00", "5.1 %": "$20.00",
		"7.9 %": "$20.00", "8.0 %": "$50.00", "8.1 %": "$50.00", "20.0 %": "$50.00",
	} {
		shows(t, mustSettle(t, corn("56000", "15.0", with("damage", value)), e), map[string]string{"discount.damage": want})
	}
	problems := refused(t, corn("56000", "15.0", with("damage", "20.1 %")), e,
		"Damaged kernels, total is 20.1 %, over the limit of 20.0 % (corn-plain: discount damage, line 46). Refuse the load, or let a manager accept it.")
	if len(problems) == 1 && (problems[0].Accept != "damage" || problems[0].Field != "damage") {
		t.Errorf("who may accept what: %+v", problems[0])
	}
}

// Accepted by a manager, the load is docked by its row and the sheet says who
// let it in.
func TestAcceptedBeyondTheLimit(t *testing.T) {
	e := scene(t, damage(damageRows))
	s := mustSettle(t, corn("56000", "15.0", with("damage", "25.0 %"), accepting("damage")), e)
	shows(t, s, map[string]string{"discount.damage": "$50.00", "discount.damage.limit": "20.0 %"})
	if limit, _ := s.Sheet.Step("discount.damage.limit"); limit == nil || limit.Note().String() != "25.0 % is over it; accepted by a manager" {
		t.Errorf("the acceptance is not on the sheet: %v", limit)
	}
	// An acceptance that was not needed changes nothing.
	plain := mustSettle(t, corn("56000", "15.0", with("damage", "6.0 %")), e)
	same := mustSettle(t, corn("56000", "15.0", with("damage", "6.0 %"), accepting("damage")), e)
	if plain.Sheet.Text(80) != same.Sheet.Text(80) {
		t.Error("an acceptance that was not needed changed the sheet")
	}
}

func TestRowsThatTurnAway(t *testing.T) {
	e := scene(t, damage(`form = "table"
of = "price"

[[discount.row]]
upto = "10.0 %"
discount = "1 %"

[[discount.row]]
over = "10.0 %"
upto = "15.0 %"
refuse = true
discount = "20 %"

[[discount.row]]
over = "15.0 %"
refuse = true`))
	refused(t, corn("56000", "15.0", with("damage", "10.1 %")), e, "Damaged kernels, total is 10.1 %, in the row over 10.0 % up to 15.0 % that is rejected")
	for value, want := range map[string]string{"10.0 %": "$40.00", "10.1 %": "$800.00", "15.1 %": "$0.00"} {
		s := mustSettle(t, corn("56000", "15.0", with("damage", value), accepting("damage"), at("4.00 $/bu")), e)
		shows(t, s, map[string]string{"discount.damage": want})
	}
}

func TestDiscountPerUnit(t *testing.T) {
	for _, c := range []struct{ part, value, count, charge string }{
		{"exact", "5.0 %", "", "$0.00"}, {"exact", "5.1 %", "0.1", "$2.00"}, {"exact", "7.5 %", "2.5", "$50.00"},
		{"up", "5.1 %", "1", "$20.00"}, {"up", "6.0 %", "1", "$20.00"}, {"up", "6.1 %", "2", "$40.00"},
		{"down", "5.9 %", "0", "$0.00"}, {"down", "6.0 %", "1", "$20.00"},
		{"nearest", "5.4 %", "0", "$0.00"}, {"nearest", "5.5 %", "1", "$20.00"},
		{"exact", "30.0 %", "25", "$160.00"}, // the cap
	} {
		e := scene(t, damage("form = \"per-unit\"\nof = \"money\"\nbase = \"5.0 %\"\nside = \"above\"\nper = \"1.0 %\"\ndiscount = \"0.02 $/bu\"\ncap = \"0.16 $/bu\"\npart = \""+c.part+"\""))
		s := mustSettle(t, corn("56000", "15.0", with("damage", c.value)), e)
		shows(t, s, map[string]string{"discount.damage.count": c.count, "discount.damage": c.charge})
	}
}

func TestDiscountBelowABase(t *testing.T) {
	e := scene(t, `[[discount]]
label = "Test weight discount"
factor = "test-weight"
form = "per-unit"
of = "money"
basis = "net"
untested = "refuse"
base = "54.0 lb/bu"
side = "below"
per = "0.5 lb/bu"
part = "up"
discount = "0.01 $/bu"
refuse_under = "45.0 lb/bu"`)
	for value, want := range map[string]string{"54.1 lb/bu": "$0.00", "54.0 lb/bu": "$0.00", "53.9 lb/bu": "$10.00", "53.5 lb/bu": "$10.00", "53.4 lb/bu": "$20.00", "45.0 lb/bu": "$180.00"} {
		shows(t, mustSettle(t, corn("56000", "15.0", with("test-weight", value)), e), map[string]string{"discount.test-weight": want})
	}
	refused(t, corn("56000", "15.0", with("test-weight", "44.9 lb/bu")), e, "Test weight is 44.9 lb/bu, under the limit of 45.0 lb/bu")
	refused(t, corn("56000", "15.0"), e, "Test weight has not been tested, and corn-plain: discount test-weight, line 46 settles no load without it")
	refused(t, corn("56000", "15.0", with("test-weight", "70.0 kg/hL")), e, "Test weight is 70.0 kg/hL; corn-plain: discount test-weight, line 46 is written in lb/bu. Test or type it in lb/bu.")
}

// 7 CFR 810.102 drops parts of a half pound for some grains; kg/hL has no such
// step and is recorded to the tenth.
func TestTestWeightIsRecordedByItsUnit(t *testing.T) {
	oats := shipped(t, "oats-metric-2025")
	f := corn("52300", "13.0", with("test-weight", "48.96 kg/hL"))
	s := mustSettle(t, f, oats)
	shows(t, s, map[string]string{"factor.test-weight": "49.0 kg/hL", "discount.test-weight": "$0.00"})
	lb := mustSettle(t, corn("52300", "13.0", with("test-weight", "33.9 lb/bu")), shipped(t, "oats-main-2025"))
	shows(t, lb, map[string]string{"factor.test-weight": "33.5 lb/bu"})
}

// Money, percent of price, percent of weight; with a price and while it comes
// later.
func TestDiscountOfWhat(t *testing.T) {
	of := func(of, figure string) string {
		return damage("form = \"per-unit\"\nof = \"" + of + "\"\nbase = \"5.0 %\"\nside = \"above\"\nper = \"1.0 %\"\npart = \"exact\"\n" + figure)
	}
	wet := corn("56000", "15.0", with("damage", "7.0 %"))
	priced := corn("56000", "15.0", with("damage", "7.0 %"), at("4.00 $/bu"))

	money := scene(t, of("money", `discount = "0.02 $/bu"`))
	shows(t, mustSettle(t, priced, money), map[string]string{"discount.damage": "$40.00", "payable": "$3,960.00"})

	price := scene(t, of("price", `discount = "1.5 %"`))
	shows(t, mustSettle(t, priced, price), map[string]string{"discount.damage.unit": "$0.12/bu", "discount.damage": "$120.00", "payable": "$3,880.00"})
	later := mustSettle(t, wet, price)
	shows(t, later, map[string]string{"discount.damage": "$0.00", "adjustments": "$0.00"})
	if note := later.Deductions[0].Step.Note(); note.String() != "without a price; 3 % of one would be the figure" {
		t.Errorf("note: %s", note)
	}

	weight := scene(t, of("weight", `discount = "1.5 %"`))
	shows(t, mustSettle(t, priced, weight), map[string]string{
		"discount.damage": "1,680 lb", "discount.damage.after": "54,320 lb", "dry": "56,000 lb",
		"settled": "54,320 lb", "quantity": "970.00 bu", "bushels": "1,000.00 bu", "adjustments": "$0.00", "payable": "$3,880.00",
	})

	premium := scene(t, of("money", `premium = "0.02 $/bu"`))
	shows(t, mustSettle(t, priced, premium), map[string]string{"discount.damage": "$40.00", "premiums": "$40.00", "adjustments": "$40.00", "payable": "$4,040.00"})
	added := scene(t, of("weight", `premium = "1.5 %"`))
	shows(t, mustSettle(t, priced, added), map[string]string{"settled": "57,680 lb", "payable": "$4,120.00"})
}

// The published tie: 11 % of $3.50 is 0.385, half-up 0.39, half-even 0.38; and
// rounding it before it meets 1,000 bushels costs the grower $5.
func TestPriceDiscountTie(t *testing.T) {
	for rounding, want := range map[string][2]string{
		"":               {"", "$385.00"},
		"0.01 half-up":   {"$0.39/bu", "$390.00"},
		"0.01 half-even": {"$0.38/bu", "$380.00"},
	} {
		table := `[[discount]]
label = "Moisture discount"
factor = "moisture"
form = "per-unit"
of = "price"
basis = "net"
untested = "refuse"
base = "15.0 %"
side = "above"
per = "1.0 %"
part = "exact"
discount = "2.0 %"`
		unit := want[0]
		if rounding != "" {
			table += "\nround_unit = \"" + rounding + "\""
		} else {
			unit = "$0.385/bu"
		}
		s := mustSettle(t, corn("56000", "20.5", at("3.50 $/bu")), scene(t, noShrink, table))
		shows(t, s, map[string]string{"discount.moisture.rate": "11 %", "discount.moisture.unit": unit, "discount.moisture": want[1]})
	}
}

// A premium for over-dry grain is a rule on moisture like any other.
func TestOverDryPremium(t *testing.T) {
	e := shipped(t, "corn-metric-2025")
	f := corn("100000", "14.0", at("250 $/t"))
	for moisture, want := range map[string]string{"14.0": "$0.00", "13.6": "$0.00", "13.5": "$18.14", "12.0": "$72.57", "9.0": "$72.57"} {
		f.Moisture = corn("1", moisture).Moisture
		shows(t, mustSettle(t, f, e), map[string]string{"discount.moisture": want}) // 45.359 t
	}
}

func TestYesNoFactors(t *testing.T) {
	yesNo := func(rest string) string {
		return "[[discount]]\nlabel = \"Musty\"\nfactor = \"musty\"\nform = \"yes-no\"\nof = \"money\"\nbasis = \"dry\"\nuntested = \"none\"\n" + rest
	}
	docked := scene(t, yesNo(`discount = "0.10 $/bu"`))
	shows(t, mustSettle(t, corn("56000", "15.0", with("musty", "yes")), docked), map[string]string{"factor.musty": "present", "discount.musty": "$100.00"})
	shows(t, mustSettle(t, corn("56000", "15.0", with("musty", "no")), docked), map[string]string{"factor.musty": "not present", "discount.musty": "$0.00"})
	shows(t, mustSettle(t, corn("56000", "15.0"), docked), map[string]string{"factor.musty": "", "discount.musty": "$0.00"})

	for table, want := range map[string]string{
		"refuse = true": "$0.00",
		"refuse = true\ndiscount = \"0.25 $/bu\"": "$250.00",
	} {
		e := scene(t, yesNo(table))
		problems := refused(t, corn("56000", "15.0", with("musty", "yes")), e, "is present (corn-plain: discount musty, line 46). Refuse the load, or let a manager accept it.")
		if len(problems) == 1 && problems[0].Accept != "musty" {
			t.Errorf("who may accept what: %+v", problems[0])
		}
		shows(t, mustSettle(t, corn("56000", "15.0", with("musty", "yes"), accepting("musty")), e), map[string]string{"discount.musty": want})
	}
}

// Two rules may apply to one factor when each has a name of its own.
func TestTwoRulesOnOneFactor(t *testing.T) {
	e := scene(t, strings.Replace(damage(damageRows), "[[discount]]\n", "[[discount]]\nid = \"handling-of-damage\"\n", 1),
		damage("form = \"per-unit\"\nof = \"weight\"\nbase = \"5.0 %\"\nside = \"above\"\nper = \"1.0 %\"\npart = \"exact\"\ndiscount = \"1 %\""))
	s := mustSettle(t, corn("56000", "15.0", with("damage", "6.0 %")), e)
	shows(t, s, map[string]string{"discount.handling-of-damage": "$20.00", "discount.damage": "560 lb"})
}
