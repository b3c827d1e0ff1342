package rates_test

import (
	"testing"

	"pgregory.net/rapid"

	"tenthpoint/internal/quantity"
	"tenthpoint/internal/rates"
)

func percent(text string) quantity.Amount { return quantity.Of(text, quantity.Percent) }

// Just below, on and just above both ends of a row, for each of the four words
// an end can be written with.
func TestBandBreakpoints(t *testing.T) {
	low, high := percent("15.0"), percent("20.0")
	for _, c := range []struct {
		band                 rates.Band
		words                string
		onLow, inside, onTop bool
	}{
		{rates.Band{Low: low, HasLow: true, LowIn: true, High: high, HasHigh: true, HighIn: true}, "from 15.0 % up to 20.0 %", true, true, true},
		{rates.Band{Low: low, HasLow: true, LowIn: true, High: high, HasHigh: true}, "from 15.0 % under 20.0 %", true, true, false},
		{rates.Band{Low: low, HasLow: true, High: high, HasHigh: true, HighIn: true}, "over 15.0 % up to 20.0 %", false, true, true},
		{rates.Band{Low: low, HasLow: true, High: high, HasHigh: true}, "over 15.0 % under 20.0 %", false, true, false},
	} {
		if got := c.band.String(); got != c.words {
			t.Errorf("band reads %q, want %q", got, c.words)
		}
		for text, want := range map[string]bool{
			"14.9": false, "15.0": c.onLow, "15.1": c.inside, "19.9": c.inside, "20.0": c.onTop, "20.1": false,
		} {
			if got := c.band.Contains(percent(text)); got != want {
				t.Errorf("%s holds %s: %v, want %v", c.band, text, got, want)
			}
		}
	}
}

func TestOpenBands(t *testing.T) {
	if b := (rates.Band{}); !b.Contains(percent("0")) || b.String() != "any value" {
		t.Errorf("a band without ends is %s", b)
	}
	under := rates.Band{High: percent("15"), HasHigh: true}
	over := rates.Band{Low: percent("15"), HasLow: true, LowIn: true}
	if !under.Contains(percent("0")) || under.Contains(percent("15")) || !over.Contains(percent("99")) || over.Contains(percent("14.9")) {
		t.Errorf("%s and %s", under, over)
	}
}

// Rows that the reader has let pass leave no value in two of them, and none
// between their ends in none.
func TestRowsHoldEveryValueOnce(t *testing.T) {
	tables := map[string][]rates.Band{}
	for _, name := range fixtureFiles(t, "../../schedules/editions/*.toml", 15) {
		e, err := readFixture(t, name)
		if err != nil {
			t.Fatal(err)
		}
		tables[e.ID+" shrink"], tables[e.ID+" drying"] = e.Shrink.Table, e.Drying.Bands
		for _, d := range e.Discounts {
			tables[e.ID+" "+d.ID] = d.Table
		}
	}
	rapid.Check(t, func(rt *rapid.T) {
		figure := rapid.Int64Range(0, 100_00).Draw(rt, "hundredths")
		for name, rows := range tables {
			if len(rows) == 0 {
				continue
			}
			unit := rows[0].High.Unit()
			if !rows[0].HasHigh {
				unit = rows[0].Low.Unit()
			}
			at := quantity.Int(figure, unit).Mul(quantity.Of("0.01", quantity.Plain))
			held := 0
			for _, b := range rows {
				if b.Contains(at) {
					held++
				}
			}
			last := rows[len(rows)-1]
			inside := !last.HasHigh || !at.More(last.High)
			if held > 1 || inside && held == 0 && !rows[0].HasLow {
				rt.Fatalf("%s: %s lies in %d rows", name, at, held)
			}
		}
	})
}
