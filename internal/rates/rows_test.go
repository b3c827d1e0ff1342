package rates_test

import (
	"testing"

	"pgregory.net/rapid"

	"tenthpoint/internal/quantity"
	"tenthpoint/internal/rates/rule"
)

// Rows that the reader has let pass leave no value in two of them, and none
// between their ends in none.
func TestRowsHoldEveryValueOnce(t *testing.T) {
	tables := map[string][]rule.Band{}
	for _, name := range fixtureFiles(t, "../../schedules/editions/*.toml", 15) {
		e, err := readFixture(t, name)
		if err != nil {
			t.Fatal(err)
		}
		tables[e.ID+" shrink"], tables[e.ID+" drying"] = e.Shrink.Rows, e.Drying.Bands
		for _, d := range e.Discounts {
			tables[e.ID+" "+d.ID] = d.Rows
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
