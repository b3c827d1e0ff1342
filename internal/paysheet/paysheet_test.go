package paysheet_test

import (
	"errors"
	"fmt"
	"math/big"
	"math/rand/v2"
	"os"
	"strconv"
	"testing"

	"pgregory.net/rapid"

	"tenthpoint/internal/levy"
	"tenthpoint/internal/message"
	"tenthpoint/internal/paysheet"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/tariff"
	"tenthpoint/internal/title"
)

const tariffText = `[tariff]
id = "corn-test"
title = "Corn, a test"
schedule = "main"
commodity = "corn"
status = "house"
from = "2020-01-01"
[origin]
issued = "2019-12-01"
by = "The house"
document = "a notice"
[units]
settle = "bu"
currency = "USD"
[rounding]
money = "0.01 half-up"
[[storage]]
label = "Storage"
under = ["stored"]
first_day = "after"
last_day = "counts"
clock = "load"
[[storage.band]]
label = "Each day"
daily = "0.04/30 $/bu"
[interest]
rate = "9 %"
by = "days-365"
`

func levyText(id, base, rate, more string) string {
	return fmt.Sprintf("[levy]\nid = %q\ntitle = %q\njurisdiction = \"Here\"\ncommodity = \"corn\"\nevent = \"sale\"\nbase = %q\nrate = %q\n%srefundable = false\nfrom = \"2020-01-01\"\nsource = \"a rule\"\n", id, id, base, rate, more)
}

func rules(t testing.TB) paysheet.Rules {
	t.Helper()
	e, err := tariff.Read("test.toml", []byte(tariffText))
	if err != nil {
		t.Fatal(err)
	}
	by := paysheet.Rules{Tariff: e}
	for _, text := range []string{
		levyText("net", "net", "0.5 %", "payer = \"producer\"\n"), levyText("bushel", "quantity", "0.005 $/bu", "payer = \"producer\"\ncap = \"20.00 $\"\n"),
		levyText("gross", "gross", "0.2 %", "payer = \"producer\"\n"), levyText("buyer", "quantity", "0.0135 $/bu", "payer = \"buyer\"\n"),
	} {
		l, err := levy.Read("test.toml", []byte(text))
		if err != nil {
			t.Fatal(err)
		}
		by.Levies = append(by.Levies, l)
	}
	return by
}

// drawn is a settlement drawn by chance: hundredths of bushels, hundredths of a cent, cents.
type drawn struct {
	sheet paysheet.Sheet
	parts []paysheet.Part
}

func hundredths(n int64) string { return fmt.Sprintf("%d.%02d", n/100, n%100) }

func draw(r *rand.Rand) drawn {
	d := drawn{sheet: paysheet.Sheet{Number: 1, Day: quantity.MustDate("2027-01-15"), Grower: "1", By: "Mae Orton"}}
	for i := range 1 + r.IntN(6) {
		whole := 1 + r.Int64N(200_000)
		from := r.Int64N(whole)
		if r.IntN(2) == 0 {
			from = 0
		}
		take := 1 + r.Int64N(whole-from)
		if r.IntN(3) == 0 {
			take = whole - from
		}
		under := title.CashSale
		if r.IntN(2) == 0 {
			under = title.OpenStorage
		}
		d.sheet.Lines = append(d.sheet.Lines, paysheet.Line{
			Ticket: int64(i + 1), Whole: quantity.Of(hundredths(whole), quantity.Bushel), From: quantity.Of(hundredths(from), quantity.Bushel), Quantity: quantity.Of(hundredths(take), quantity.Bushel),
			Price: quantity.Of(fmt.Sprintf("%d.%04d", 1+r.IntN(14), r.IntN(10_000)), quantity.DollarsPerBu), Source: "drawn", Under: under, Delivered: d.sheet.Day.AddDays(-r.IntN(500)),
		})
		money := func(most int64) quantity.Amount { return quantity.Of(hundredths(r.Int64N(most)), quantity.Dollar) }
		line := &d.sheet.Lines[i]
		line.Owner = r.IntN(3)
		value := cents(new(big.Rat).Mul(line.Whole.Rat(), line.Price.Rat()))
		if line.Owner > 0 { // a cent that shares could not part
			value.Add(value, big.NewRat(r.Int64N(2), 100))
		}
		d.parts = append(d.parts, paysheet.Part{Value: quantity.Of(value.FloatString(2), quantity.Dollar), Discounts: money(30_000), Premiums: money(5_000), Services: money(40_000)})
	}
	for range r.IntN(3) {
		d.sheet.Advances = append(d.sheet.Advances, paysheet.Advance{Day: d.sheet.Day.AddDays(-r.IntN(300)), Amount: quantity.Of(hundredths(1+r.Int64N(500_000)), quantity.Dollar)})
	}
	return d
}

// oracle works a settlement out in exact fractions, written apart from the package.
func oracle(d drawn) map[string]*big.Rat {
	out := map[string]*big.Rat{}
	for _, name := range []string{"quantity", "gross", "quality", "services", "keeping", "advances", "interest"} {
		out[name] = new(big.Rat)
	}
	add := func(name string, r *big.Rat) { out[name].Add(out[name], r) }
	mul := func(a, b *big.Rat) *big.Rat { return new(big.Rat).Mul(a, b) }
	for i, l := range d.sheet.Lines {
		q, whole, from := l.Quantity.Rat(), l.Whole.Rat(), l.From.Rat()
		add("quantity", q)
		part := func(r *big.Rat) *big.Rat {
			end := cents(new(big.Rat).Quo(mul(r, new(big.Rat).Add(from, q)), whole))
			return end.Sub(end, cents(new(big.Rat).Quo(mul(r, from), whole)))
		}
		if l.Owner == 0 && q.Cmp(whole) == 0 {
			add("gross", cents(mul(q, l.Price.Rat())))
		} else {
			add("gross", part(d.parts[i].Value.Rat()))
		}
		quality := new(big.Rat).Sub(d.parts[i].Premiums.Rat(), d.parts[i].Discounts.Rat())
		add("quality", part(quality))
		add("services", part(d.parts[i].Services.Rat()))
		if days := int64(l.Delivered.DaysUntil(d.sheet.Day)); l.Under == title.OpenStorage && days > 0 {
			add("keeping", cents(mul(q, big.NewRat(4*days, 3000))))
		}
	}
	for _, a := range d.sheet.Advances {
		add("advances", a.Amount.Rat())
		add("interest", cents(mul(a.Amount.Rat(), big.NewRat(9*int64(a.Day.DaysUntil(d.sheet.Day)), 36500))))
	}
	out["net"] = new(big.Rat).Add(out["gross"], out["quality"])
	bushel := cents(mul(out["quantity"], big.NewRat(5, 1000)))
	if most := big.NewRat(20, 1); bushel.Cmp(most) > 0 {
		bushel = most
	}
	levies := cents(mul(out["net"], big.NewRat(5, 1000)))
	levies.Add(levies, bushel)
	out["levies"] = levies.Add(levies, cents(mul(out["gross"], big.NewRat(2, 1000))))
	out["deducted"] = new(big.Rat)
	for _, name := range []string{"services", "keeping", "levies", "advances", "interest"} {
		add("deducted", out[name])
	}
	out["payable"] = new(big.Rat).Sub(out["net"], out["deducted"])
	return out
}

// cents rounds to the cent, ties away from zero.
func cents(r *big.Rat) *big.Rat {
	half := big.NewRat(1, 2)
	if r.Sign() < 0 {
		half.Neg(half)
	}
	scaled := new(big.Rat).Add(new(big.Rat).Mul(r, big.NewRat(100, 1)), half)
	return new(big.Rat).SetFrac(new(big.Int).Quo(scaled.Num(), scaled.Denom()), big.NewInt(100))
}

// TestAgainstAnOracle works random settlements both ways: 3,000 in check, as many as SETTLEMENTS says
// in a chore.
func TestAgainstAnOracle(t *testing.T) {
	count := 3000
	if asked, err := strconv.Atoi(os.Getenv("SETTLEMENTS")); err == nil {
		count = asked
	}
	by := rules(t)
	for seed := range count {
		d := draw(rand.New(rand.NewPCG(uint64(seed), 16)))
		w, err := paysheet.Work(d.sheet, d.parts, by)
		if err != nil {
			t.Fatalf("seed %d: %v", seed, err)
		}
		figures, want := w.Figures(), oracle(d)
		if len(figures) != len(want) {
			t.Fatalf("%d figures, the oracle has %d", len(figures), len(want))
		}
		for name, right := range want {
			if figures[name].Rat().Cmp(right) != 0 {
				t.Fatalf("seed %d: %s is %s, the oracle has %s", seed, name, figures[name], right.FloatString(2))
			}
		}
	}
}

// However a ticket is parted, the parts of its quality and services add up to the ticket, to the cent.
func TestPartsAddUpToTheTicket(t *testing.T) {
	by := rules(t)
	r := rand.New(rand.NewPCG(7, 16))
	for range 300 {
		d := draw(r)
		line, part := d.sheet.Lines[0], d.parts[0]
		whole, marks := line.Whole.Rat(), []int64{0}
		total := new(big.Rat).Mul(whole, big.NewRat(100, 1)).Num().Int64()
		for last := int64(0); last < total; {
			last += 1 + r.Int64N(total-last)
			marks = append(marks, last)
		}
		sum := quantity.Zero(quantity.Dollar)
		services, value := quantity.Zero(quantity.Dollar), quantity.Zero(quantity.Dollar)
		for i := range marks[1:] {
			one := line
			one.From, one.Quantity = quantity.Of(hundredths(marks[i]), quantity.Bushel), quantity.Of(hundredths(marks[i+1]-marks[i]), quantity.Bushel)
			w, err := paysheet.Work(paysheet.Sheet{Day: d.sheet.Day, Lines: []paysheet.Line{one}}, []paysheet.Part{part}, by)
			if err != nil {
				t.Fatal(err)
			}
			sum, services, value = sum.Add(w.Quality.Value()), services.Add(w.Services.Value()), value.Add(w.Gross.Value())
		}
		if !sum.Equal(part.Premiums.Sub(part.Discounts)) || !services.Equal(part.Services) || !value.Equal(part.Value) {
			t.Fatalf("%d parts have %s of quality, %s of services and are worth %s, the ticket %+v", len(marks)-1, sum, services, value, part)
		}
	}
}

// Two sheets that together take more than was delivered are refused, as is a price that is none.
func TestWhatIsNoSheet(t *testing.T) {
	good := draw(rand.New(rand.NewPCG(1, 1))).sheet
	if err := good.Check(); err != nil {
		t.Fatal(err)
	}
	for name, spoil := range map[string]struct {
		how  func(*paysheet.Sheet)
		kind error
	}{
		"nothing":      {func(s *paysheet.Sheet) { s.Lines = nil }, message.Invalid},
		"nobody":       {func(s *paysheet.Sheet) { s.Grower = "" }, message.Invalid},
		"too much":     {func(s *paysheet.Sheet) { s.Lines[0].From = s.Lines[0].Whole }, message.Refused},
		"none of it":   {func(s *paysheet.Sheet) { s.Lines[0].Quantity = quantity.Zero(quantity.Bushel) }, message.Invalid},
		"no price":     {func(s *paysheet.Sheet) { s.Lines[0].Price = quantity.Amount{} }, message.Invalid},
		"another unit": {func(s *paysheet.Sheet) { s.Lines[0].Price = quantity.Of("4", quantity.DollarsPerT) }, message.Invalid},
	} {
		s := good
		s.Lines = append([]paysheet.Line(nil), good.Lines...)
		spoil.how(&s)
		if err := s.Check(); !errors.Is(err, spoil.kind) {
			t.Errorf("%s: %v", name, err)
		}
	}
}

// A void sheet takes nothing of its tickets, and nothing rests on it.
func TestVoidSheetsTakeNothing(t *testing.T) {
	s := draw(rand.New(rand.NewPCG(1, 1))).sheet
	line := s.Lines[0]
	if got := paysheet.SettledOf([]paysheet.Sheet{s}, line.Ticket, "1", quantity.Bushel); !got.Equal(line.Quantity) {
		t.Errorf("taken: %s of %s", got, line.Quantity)
	}
	if got := paysheet.RestingOn([]paysheet.Sheet{s}, line.Ticket); len(got) != 1 {
		t.Errorf("resting: %v", got)
	}
	s.Voided = &paysheet.Voided{}
	if got := paysheet.SettledOf([]paysheet.Sheet{s}, line.Ticket, "1", quantity.Bushel); !got.IsZero() {
		t.Errorf("taken by a void sheet: %s", got)
	}
	if got := paysheet.RestingOn([]paysheet.Sheet{s}, line.Ticket); len(got) != 0 {
		t.Errorf("resting on a void sheet: %v", got)
	}
}

// The weights that the parts of a ticket take add up to the settled weight, in any number of parts.
func TestWeightsOfPartsAddUp(t *testing.T) {
	rapid.Check(t, func(r *rapid.T) {
		whole := rapid.Int64Range(1, 900_00).Draw(r, "whole")
		bushels := func(n int64) quantity.Amount {
			return quantity.Int(n, quantity.Bushel).Div(quantity.Int(100, quantity.Plain))
		}
		settled := quantity.Int(rapid.Int64Range(0, 90_000).Draw(r, "settled"), quantity.Lb)
		sum := quantity.Zero(quantity.Lb)
		for from := int64(0); from < whole; {
			part := rapid.Int64Range(1, whole-from).Draw(r, "part")
			taken := paysheet.Line{Whole: bushels(whole), From: bushels(from), Quantity: bushels(part)}.Takes(settled)
			if taken.Sign() < 0 {
				r.Fatalf("a part takes %s", taken)
			}
			sum, from = sum.Add(taken), from+part
		}
		if !sum.Equal(settled) {
			r.Fatalf("the parts come to %s of %s", sum, settled)
		}
	})
}

// What was paid too much on a sheet and taken back by a later one stays with the last sheet in its
// place, also where that one is void: nothing is taken twice.
func TestTakenBackFollowsTheSheetInItsPlace(t *testing.T) {
	money := func(text string) quantity.Amount { return quantity.Of(text, quantity.Dollar) }
	sheet := func(number, corrects int64, payable string, void bool, taken ...paysheet.Advance) paysheet.Sheet {
		s := paysheet.Sheet{Number: number, Corrects: corrects, Grower: "1", Advances: taken, Figures: map[string]quantity.Amount{"payable": money(payable)}}
		if void {
			s.Voided = &paysheet.Voided{Ticket: 1}
		}
		return s
	}
	sheets := []paysheet.Sheet{sheet(4, 2, "50.00", true), sheet(2, 0, "80.00", true), sheet(3, 0, "10.00", false, paysheet.Advance{Amount: money("20.00"), Sheet: 2})}
	payments := []paysheet.Payment{{Number: 1, Sheet: 4, Before: 2, Amount: money("100.00")}}
	owed := paysheet.OverpaidSheets(sheets, payments)
	if len(owed) != 1 || owed[0].Number != 4 || !owed[0].Back.Equal(money("80.00")) {
		t.Errorf("owed: %+v", owed)
	}
	if open := paysheet.OpenSheets(sheets, payments); len(open) != 1 || !open[0].Left.Equal(money("10.00")) {
		t.Errorf("open: %+v", open)
	}
}
