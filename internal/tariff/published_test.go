package tariff_test

import (
	"encoding/csv"
	"os"
	"slices"
	"testing"

	"tenthpoint/internal/quantity"
	"tenthpoint/internal/tariff"
	"tenthpoint/internal/title"
	"tenthpoint/internal/worksheet"
)

// published are the rows of what was read of the time after the ticket, by id.
func published(t *testing.T) map[string]map[string]string {
	t.Helper()
	file, err := os.Open("../../testdata/published/after-the-ticket/money.csv")
	if err != nil {
		t.Fatal(err)
	}
	defer file.Close()
	lines, err := csv.NewReader(file).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	rows := map[string]map[string]string{}
	for _, line := range lines[1:] {
		row := map[string]string{}
		for i, cell := range line {
			row[lines[0][i]] = cell
		}
		rows[row["id"]] = row
	}
	return rows
}

// A posted case, as a tariff and a lot. What is compared is dollars for so many bushels.
type postedCase struct {
	id, storage string
	bushels     string
	from, to    string
	under       title.Under
	want        string // dollars for the bushels
}

// The ladders and daily charges that sources print come out as printed.
func TestPublishedCharges(t *testing.T) {
	rows := published(t)
	for _, c := range []postedCase{
		// 12 c the first three months and 2 c a month after; seven months are 0.20 a bushel.
		{"MON037", months + ladder("upto = \"3 months\"\nflat = \"0.12 $/bu\"", "monthly = \"0.02 $/bu\"\npart = \"begun\""), "1000", "2026-10-01", "2027-05-01", title.OpenStorage, "200.00"},
		// 0.001667 a day for 30 days is 0.05001 a bushel.
		{"MON038", days + ladder("daily = \"0.001667 $/bu\""), "100000", "2026-10-01", "2026-10-31", title.OpenStorage, "5001.00"},
		// 16 c to day 60, then 0.001333 a day; 100 days of 1,000 bushels.
		{"MON040", days + ladder("upto = \"60 days\"\nflat = \"0.16 $/bu\"", "daily = \"0.001333 $/bu\""), "1000", "2026-10-01", "2027-01-09", title.OpenStorage, "213.32"},
		// The same with the charge as posted, 0.04 for 30 days.
		{"MON040", days + ladder("upto = \"60 days\"\nflat = \"0.16 $/bu\"", "daily = \"0.04/30 $/bu\""), "1000", "2026-10-01", "2027-01-09", title.OpenStorage, "213.33"},
		// 5 c a month for four months off 6.25 leaves 6.05.
		{"MON041", months + ladder("monthly = \"0.05 $/bu\"\npart = \"complete\""), "1000", "2026-10-01", "2027-02-01", title.OpenStorage, "200.00"},
		// Ten days after delivery the grain bank charges: 20 October is the first day.
		{"MON065", "free = \"10 days\"\nfirst_day = \"delivery\"\nlast_day = \"counts\"\nclock = \"load\"\n" + ladder("daily = \"0.001 $/bu\""), "1000", "2024-10-10", "2024-10-20", title.OpenStorage, "1.00"},
		{"MON065", "free = \"10 days\"\nfirst_day = \"delivery\"\nlast_day = \"counts\"\nclock = \"load\"\n" + ladder("daily = \"0.001 $/bu\""), "1000", "2024-10-10", "2024-10-19", title.OpenStorage, "0"},
	} {
		if rows[c.id]["read_or_memory"] != "read" {
			t.Errorf("%s is not of what was read, and decides nothing", c.id)
		}
		e := read(t, edition("[[storage]]\nlabel = \"Storage\"\nunder = [\"stored\"]\n"+c.storage))
		charge, err := keep(e, c.bushels, c.under, c.from, c.to)
		if err != nil || !charge.Value().Equal(quantity.Of(c.want, quantity.Dollar)) {
			t.Errorf("%s (%s; %s): %v, %v", c.id, rows[c.id]["inputs"], rows[c.id]["computed"], charge.Value(), err)
		}
	}
}

const (
	days   = "first_day = \"after\"\nlast_day = \"counts\"\nclock = \"load\"\n"
	months = "first_day = \"delivery\"\nlast_day = \"free\"\nclock = \"load\"\n"
)

func ladder(bands ...string) string {
	text := ""
	for _, b := range bands {
		text += "\n[[storage.band]]\nlabel = \"Band\"\n" + b + "\n"
	}
	return text
}

// The cost of waiting: simple interest by twelfths of a year, alone and beside a charge a month.
func TestPublishedInterest(t *testing.T) {
	rows := published(t)
	for _, c := range []struct {
		id, principal, rate string
		months              int
		beside              string // other costs of a bushel
		want                string // computed, of 10,000 bushels
	}{
		{"MON032", "47500", "4.5 %", 9, "0", "1603.13"}, // 0.1603 printed as 0.16
		{"MON034", "31100", "5 %", 6, "2440", "3217.50"},
		{"MON035", "31100", "5 %", 6, "600", "1377.50"},
	} {
		e := read(t, edition("[interest]\nrate = \""+c.rate+"\"\nby = \"months-complete\"\n"))
		s := &worksheet.Sheet{}
		principal := s.Given("principal", label, quantity.Of(c.principal, quantity.Dollar), quantity.Unrounded, label)
		from := quantity.MustDate("2026-10-01")
		interest := e.Interest.Charge(e, s, "interest", principal, from, from.AddMonths(c.months))
		if all := interest.Value().Add(quantity.Of(c.beside, quantity.Dollar)); !all.Equal(quantity.Of(c.want, quantity.Dollar)) {
			t.Errorf("%s: %s, computed %s", c.id, all, rows[c.id]["computed"])
		}
	}
}

// Every row of the table about keeping grain or interest is held by a test of this package.
func TestEveryPublishedChargeIsHeld(t *testing.T) {
	held := []string{"MON032", "MON034", "MON035", "MON037", "MON038", "MON040", "MON041", "MON065"}
	topics := []string{"storage ladder", "storage per day", "interest on stored grain", "delayed price", "grain bank storage"}
	for id, row := range published(t) {
		if slices.Contains(topics, row["topic"]) != slices.Contains(held, id) {
			t.Errorf("%s (%s) is held: %v", id, row["topic"], slices.Contains(held, id))
		}
	}
}

func keep(e *tariff.Edition, bushels string, under title.Under, from, to string) (*worksheet.Step, error) {
	s := &worksheet.Sheet{}
	q := s.Given("quantity", label, quantity.Of(bushels, e.Settle), quantity.Unrounded, label)
	return e.Keep(s, "keep", tariff.Lot{Quantity: q, Under: under, Delivered: quantity.MustDate(from), To: quantity.MustDate(to)})
}
