package levy_test

import (
	"encoding/csv"
	"errors"
	"os"
	"strings"
	"testing"

	"tenthpoint/internal/levy"
	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/tomlfile"
	"tenthpoint/internal/worksheet"
)

const text = `[levy]
id = "ours"
title = "Ours"
jurisdiction = "Here"
commodity = "corn"
event = "sale"
base = "quantity"
rate = "0.005 $/bu"
payer = "producer"
refundable = false
from = "2020-01-01"
source = "a rule"
`

func with(base, rate string) string {
	return strings.Replace(strings.Replace(text, `"quantity"`, `"`+base+`"`, 1), "0.005 $/bu", rate, 1)
}

// A levy without a base, with a rate that does not fit it, or half confirmed does not load.
func TestMistakes(t *testing.T) {
	for name, c := range map[string]struct{ text, key string }{
		"no base":              {strings.Replace(text, "base = \"quantity\"\n", "", 1), "levy.base"},
		"a percent of bushels": {with("quantity", "0.5 %"), "levy.rate"},
		"money of money":       {with("net", "0.005 $/bu"), "levy.rate"},
		"an unknown payer":     {strings.Replace(text, `"producer"`, `"landlord"`, 1), "levy.payer"},
		"half confirmed":       {text + "confirmed_by = \"Mae Orton\"\n", "levy.confirmed_on"},
		"no such grain":        {strings.Replace(text, `"corn"`, `"gravel"`, 1), "levy.commodity"},
		"an unknown key":       {text + "floor = \"1 $\"\n", "levy.floor"},
	} {
		_, err := levy.Read("test.toml", []byte(c.text))
		var problems tomlfile.Problems
		if !errors.As(err, &problems) || len(problems) != 1 || problems[0].Key != c.key {
			t.Errorf("%s: %v", name, err)
		}
	}
}

// The amounts that published rules come to, by the rows they were read in.
func TestPublishedLevies(t *testing.T) {
	file, err := os.Open("../../testdata/published/after-the-ticket/money.csv")
	if err != nil {
		t.Fatal(err)
	}
	defer file.Close()
	lines, err := csv.NewReader(file).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	read := map[string]bool{}
	for _, l := range lines {
		read[l[0]] = l[9] == "read"
	}
	unit := func(grain string) quantity.Unit {
		if grain == "t" {
			return quantity.Tonne
		}
		if grain == "cwt" {
			return quantity.Cwt
		}
		return quantity.Bushel
	}
	for _, c := range []struct{ id, per, q, gross, net, base, rate, cap, want string }{
		{"MON013", "bu", "1000", "10000", "10000", "net", "0.5 %", "", "50.00"},
		{"MON014", "bu", "1000", "13000", "13000", "net", "0.5 %", "", "65.00"},
		{"MON016", "bu", "3333.33", "33299.97", "33299.97", "net", "0.5 %", "", "166.50"},
		{"MON019", "bu", "1000", "4000", "4000", "quantity", "0.005 $/bu", "", "5.00"},
		{"MON020", "bu", "812.44", "4000", "4000", "quantity", "0.005 $/bu", "", "4.06"},
		{"MON023", "bu", "1000", "4000", "4000", "quantity", "0.005 $/bu", "", "5.00"},
		{"MON025", "bu", "1000", "4000", "4000", "quantity", "0.0075 $/bu", "", "7.50"},
		{"MON026", "cwt", "1000", "4000", "4000", "quantity", "0.04 $/cwt", "", "40.00"},
		{"MON028", "t", "37.654", "4000", "4000", "quantity", "2.36 $/t", "", "88.86"},
		{"MON029", "t", "37.654", "4000", "4000", "quantity", "1.06 $/t", "", "39.91"},
		{"MON076", "bu", "1000", "62000", "62000", "net", "0.5 %", "", "310.00"},
		{"MON077", "bu", "1000", "4000", "4000", "quantity", "0.01 $/bu", "", "10.00"},
		{"MON079", "bu", "1000", "4000", "4000", "quantity", "0.0135 $/bu", "", "13.50"},
		{"MON080", "bu", "1000", "10000", "10000", "net", "0.25 %", "", "25.00"},
		{"MON082", "bu", "1000", "10000", "9000", "gross", "0.2 %", "", "20.00"},
		{"MON083", "bu", "1000", "4000", "4000", "quantity", "0.05 $/bu", "25.00 $", "25.00"},
	} {
		if !read[c.id] {
			t.Errorf("%s is not of what was read, and decides nothing", c.id)
		}
		file := with(c.base, c.rate)
		if c.cap != "" {
			file += "cap = \"" + c.cap + "\"\n"
		}
		l, err := levy.Read("test.toml", []byte(file))
		if err != nil {
			t.Fatal(err)
		}
		s := &worksheet.Sheet{}
		given := func(id, figure string, u quantity.Unit) *worksheet.Step {
			return s.Given(id, message.Name(id), quantity.Of(figure, u), quantity.Unrounded, message.Name("test"))
		}
		taken, err := l.Take(s, "levy", levy.Bases{Quantity: given("q", c.q, unit(c.per)), Gross: given("gross", c.gross, quantity.Dollar), Net: given("net", c.net, quantity.Dollar)})
		if err != nil || !taken.Value().Equal(quantity.Of(c.want, quantity.Dollar)) {
			t.Errorf("%s: %v, %v; want %s", c.id, taken.Value(), err, c.want)
		}
	}
}

// A levy by the bushel is not taken of tonnes.
func TestAnotherUnit(t *testing.T) {
	l, err := levy.Read("test.toml", []byte(text))
	if err != nil {
		t.Fatal(err)
	}
	s := &worksheet.Sheet{}
	q := s.Given("q", message.Name("q"), quantity.Of("10", quantity.Tonne), quantity.Unrounded, message.Name("test"))
	if _, err := l.Take(s, "levy", levy.Bases{Quantity: q, Gross: q, Net: q}); !errors.Is(err, message.Invalid) {
		t.Errorf("tonnes: %v", err)
	}
}
