package tariff_test

import (
	"errors"
	"fmt"
	"math/big"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/tariff"
	"tenthpoint/internal/title"
	"tenthpoint/internal/tomlfile"
	"tenthpoint/internal/worksheet"
)

var label = message.Name("test")

// edition is a tariff of corn with the tables given after its head.
func edition(rest string) string {
	return `[tariff]
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
` + rest
}

func read(t *testing.T, text string) *tariff.Edition {
	t.Helper()
	e, err := tariff.Read("test.toml", []byte(text))
	if err != nil {
		t.Fatal(err)
	}
	return e
}

// Every mistake of a file is told at its line.
func TestMistakesAreToldAtTheirLines(t *testing.T) {
	storage := "[[storage]]\nlabel = \"Storage\"\nunder = [\"stored\"]\nfirst_day = \"after\"\nlast_day = \"counts\"\nclock = \"load\"\n"
	band := "[[storage.band]]\nlabel = \"Band\"\n"
	for _, c := range []struct {
		name, rest, key string
		line            int // after the head
	}{
		{"no title", "[[storage]]\nlabel = \"Storage\"\nfirst_day = \"after\"\nlast_day = \"counts\"\nclock = \"load\"\n" + band + "flat = \"1 $/bu\"", "storage.0.under", 1},
		{"a word that is none", strings.Replace(storage, "stored", "lent", 1) + band + "flat = \"1 $/bu\"", "storage.0.under", 3},
		{"storage of the house's own grain", strings.Replace(storage, "stored", "delayed", 1) + band + "flat = \"1 $/bu\"", "storage.0.under", 3},
		{"service on a depositor's grain", strings.ReplaceAll(storage+band+"flat = \"1 $/bu\"", "[storage", "[service"), "service.0.under", 3},
		{"one title twice", storage + band + "flat = \"1 $/bu\"\n" + storage + band + "flat = \"2 $/bu\"", "storage.1.under", 12},
		{"no band", storage, "storage.0.band", 1},
		{"a band without an end before another", storage + band + "flat = \"1 $/bu\"\n" + band + "flat = \"2 $/bu\"", "storage.0.band.0.upto", 7},
		{"two charges in a band", storage + band + "flat = \"1 $/bu\"\nmonthly = \"1 $/bu\"\npart = \"begun\"", "storage.0.band.0", 7},
		{"a band that ends before the one before it", storage + band + "upto = \"60 days\"\nflat = \"1 $/bu\"\n" + band + "upto = \"30 days\"\nflat = \"2 $/bu\"", "storage.0.band.1", 11},
		{"a band that ends in the free time", "[[storage]]\nfree = \"60 days\"\n" + strings.TrimPrefix(storage, "[[storage]]\n") + band + "upto = \"30 days\"\nflat = \"2 $/bu\"", "storage.0.band.0", 8},
		{"free by days and by date", storage + "free = \"10 days\"\nfree_until = \"2026-12-01\"\n" + band + "flat = \"2 $/bu\"", "storage.0.free_until", 8},
		{"a time in weeks", storage + "free = \"2 weeks\"\n" + band + "flat = \"2 $/bu\"", "storage.0.free", 7},
		{"a charge in another unit", storage + band + "daily = \"0.04/30 $/t\"", "storage.0.band.0.daily", 9},
		{"a charge for no days", storage + band + "daily = \"0.04/0 $/bu\"", "storage.0.band.0.daily", 9},
		{"a charge below zero", storage + band + "daily = \"-0.04/30 $/bu\"", "storage.0.band.0.daily", 9},
		{"months without their part", storage + band + "monthly = \"0.04 $/bu\"", "storage.0.band.0.part", 7},
		{"a least charge without its time", storage + "least = \"5.00 $\"\n" + band + "flat = \"2 $/bu\"", "storage.0.least_per", 1},
		{"an unknown key", "[elevation]\nup = \"0.05 $/bu\"", "elevation.up", 2},
		{"elevation as one sum", "[elevation]\nin = \"5 $\"", "elevation.in", 2},
		{"interest a month", "[interest]\nrate = \"9 %\"\nby = \"weeks\"", "interest.by", 3},
		{"interest of the whole", "[interest]\nrate = \"100 %\"\nby = \"days-365\"", "interest.rate", 2},
	} {
		head := strings.Count(edition(""), "\n")
		_, err := tariff.Read("test.toml", []byte(edition(c.rest)))
		var problems tomlfile.Problems
		if !errors.As(err, &problems) || len(problems) != 1 || problems[0].Key != c.key || problems[0].Line != head+c.line {
			t.Errorf("%s: %+v (the head has %d lines)", c.name, err, head)
		}
	}
}

// Two tariffs of one line may not share a day, and a correction counts in the place of what it corrects.
func TestTariffsFollowEachOther(t *testing.T) {
	a := read(t, edition(""))
	other := func(id, from, more string) *tariff.Edition {
		text := strings.Replace(edition(""), "corn-test", id, 1)
		return read(t, strings.Replace(text, "from = \"2020-01-01\"", "from = \""+from+"\"\n"+more, 1))
	}
	if _, problems := tariff.NewSet(a, other("corn-next", "2021-01-01", "")); len(problems) != 1 || problems[0].Key != "tariff.from" {
		t.Errorf("two in force at once: %v", problems)
	}
	set, problems := tariff.NewSet(a, other("corn-better", "2020-06-01", "corrects = \"corn-test\""))
	if len(problems) > 0 {
		t.Fatal(problems)
	}
	for day, want := range map[string]string{"2020-05-31": "corn-test", "2020-06-01": "corn-better"} {
		if e, err := tariff.On(set, "main", "corn", quantity.MustDate(day)); err != nil || e.ID != want {
			t.Errorf("on %s: %v, %v", day, e, err)
		}
	}
	if _, err := tariff.On(set, "main", "corn", quantity.MustDate("2019-12-31")); !errors.Is(err, message.NotFound) {
		t.Errorf("before the first: %v", err)
	}
}

// A lot that cannot be charged is refused: another unit, a day before it came.
func TestWhatCannotBeCharged(t *testing.T) {
	e := read(t, edition("[[storage]]\nlabel = \"Storage\"\nunder = [\"stored\"]\n"+days+ladder("flat = \"0.10 $/bu\"")))
	if _, err := keep(e, "10", title.OpenStorage, "2026-10-02", "2026-10-01"); !errors.Is(err, message.Invalid) {
		t.Errorf("reckoned to a day before: %v", err)
	}
	s := &worksheet.Sheet{}
	tonnes := s.Given("quantity", label, quantity.Of("10", quantity.Tonne), quantity.Unrounded, label)
	if _, err := e.Keep(s, "keep", tariff.Lot{Quantity: tonnes, Under: title.OpenStorage, Delivered: quantity.MustDate("2026-10-01"), To: quantity.MustDate("2026-10-09")}); !errors.Is(err, message.Invalid) {
		t.Errorf("tonnes: %v", err)
	}
	if charge, err := keep(e, "10", title.CashSale, "2026-10-01", "2027-10-01"); err != nil || charge.Kind() != worksheet.NotApplied {
		t.Errorf("sold grain: %v, %v", charge, err)
	}
}

// A field's clock begins with its last load, and a free time until a date is the same day for all.
func TestFreeTime(t *testing.T) {
	field := read(t, edition("[[storage]]\nlabel = \"Storage\"\nunder = [\"stored\"]\nfree_until = \"2026-12-15\"\n"+strings.Replace(days, "load", "field", 1)+ladder("daily = \"0.01 $/bu\"")))
	s := &worksheet.Sheet{}
	q := s.Given("quantity", label, quantity.Of("1000", quantity.Bushel), quantity.Unrounded, label)
	charge, err := field.Keep(s, "keep", tariff.Lot{Quantity: q, Under: title.OpenStorage, Delivered: quantity.MustDate("2026-10-01"), FieldDone: quantity.MustDate("2026-12-20"), To: quantity.MustDate("2026-12-25")})
	if err != nil || !charge.Value().Equal(quantity.Of("50", quantity.Dollar)) {
		t.Errorf("five days after the field: %v, %v", charge.Value(), err)
	}
	if charge, _ := keep(field, "1000", title.OpenStorage, "2026-10-01", "2026-12-15"); !charge.Value().IsZero() {
		t.Errorf("up to the free day: %s", charge.Value())
	}
	if charge, _ := keep(field, "1000", title.OpenStorage, "2026-10-01", "2026-12-17"); !charge.Value().Equal(quantity.Of("20", quantity.Dollar)) {
		t.Errorf("two days after the free day: %s", charge.Value())
	}
}

// The least charge is for the whole, or for each month begun.
func TestLeastCharge(t *testing.T) {
	for per, want := range map[string]string{"charge": "5.00", "month": "10.00"} {
		e := read(t, edition("[[storage]]\nlabel = \"Storage\"\nunder = [\"stored\"]\nleast = \"5.00 $\"\nleast_per = \""+per+"\"\n"+days+ladder("daily = \"0.0001 $/bu\"")))
		if charge, err := keep(e, "100", title.OpenStorage, "2026-10-01", "2026-11-15"); err != nil || !charge.Value().Equal(quantity.Of(want, quantity.Dollar)) {
			t.Errorf("least for each %s: %v, %v", per, charge.Value(), err)
		}
	}
}

// oracleBand is a band as the oracle has it; up is the last day number, 0 for none.
type oracleBand struct {
	up      int
	how     string
	rate    *big.Rat
	divisor int64
}

// TestKeepingAgainstAnOracle charges random ladders day by day in exact fractions, written apart from
// the package, and compares every cent.
func TestKeepingAgainstAnOracle(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		free := rapid.IntRange(0, 40).Draw(t, "free")
		text := "[[storage]]\nlabel = \"Storage\"\nunder = [\"stored\"]\n" + days
		if free > 0 {
			text += fmt.Sprintf("free = \"%d days\"\n", free)
		}
		var bands []oracleBand
		count := rapid.IntRange(1, 4).Draw(t, "bands")
		up := free
		for i := range count {
			b := oracleBand{how: rapid.SampledFrom([]string{"flat", "daily"}).Draw(t, "how"), divisor: 1}
			cents := rapid.IntRange(0, 3000).Draw(t, "rate")
			b.rate = big.NewRat(int64(cents), 10000)
			body := fmt.Sprintf("%s = \"%d.%04d $/bu\"", b.how, cents/10000, cents%10000)
			if b.how == "daily" {
				b.divisor = int64(rapid.SampledFrom([]int{1, 30, 31, 365}).Draw(t, "over"))
				if b.divisor > 1 {
					body = fmt.Sprintf("daily = \"%d.%04d/%d $/bu\"", cents/10000, cents%10000, b.divisor)
				}
			}
			if i < count-1 {
				up += rapid.IntRange(1, 120).Draw(t, "length")
				b.up = up
				body = fmt.Sprintf("upto = \"%d days\"\n%s", up, body)
			}
			text += ladder(body)
			bands = append(bands, b)
		}
		e, err := tariff.Read("drawn.toml", []byte(edition(text)))
		if err != nil {
			t.Fatal(err)
		}
		hundredths := rapid.IntRange(1, 9_999_999).Draw(t, "bushels")
		kept := rapid.IntRange(0, 700).Draw(t, "days")
		from := quantity.MustDate("2026-10-01")
		charge, err := keep(e, fmt.Sprintf("%d.%02d", hundredths/100, hundredths%100), title.OpenStorage, from.String(), from.AddDays(kept).String())
		if err != nil {
			t.Fatal(err)
		}
		if want := oracle(bands, free, kept, big.NewRat(int64(hundredths), 100)); charge.Value().Rat().Cmp(want) != 0 {
			t.Fatalf("%s, the oracle has %s:\n%s", charge.Value(), want.FloatString(2), text)
		}
	})
}

// oracle walks the days one by one.
func oracle(bands []oracleBand, free, kept int, bushels *big.Rat) *big.Rat {
	counts := make([]int64, len(bands))
	for day := free + 1; day <= kept; day++ {
		for i, b := range bands {
			if b.up == 0 || day <= b.up {
				counts[i]++
				break
			}
		}
	}
	total := new(big.Rat)
	for i, b := range bands {
		times := new(big.Rat)
		switch {
		case counts[i] == 0:
		case b.how == "flat":
			times.SetInt64(1)
		default:
			times.SetFrac64(counts[i], b.divisor)
		}
		line := new(big.Rat).Mul(bushels, b.rate)
		total.Add(total, cents(line.Mul(line, times)))
	}
	return total
}

// cents rounds a figure of zero or more to the cent, half up.
func cents(r *big.Rat) *big.Rat {
	scaled := new(big.Rat).Mul(r, big.NewRat(100, 1))
	scaled.Add(scaled, big.NewRat(1, 2))
	whole := new(big.Int).Quo(scaled.Num(), scaled.Denom())
	return new(big.Rat).SetFrac(whole, big.NewInt(100))
}
