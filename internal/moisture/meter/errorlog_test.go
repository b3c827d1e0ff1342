package meter

import (
	"testing"

	"pgregory.net/rapid"

	"tenthpoint/internal/law"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/worksheet"
)

func checkOn(day, reference, reading string) Check {
	return Check{Day: quantity.MustDate(day), Meter: "bench-1", Calibration: "A-2025", Crop: "corn", Name: "R",
		Reference: pct(reference), Reading: pct(reading), Sample: degC("20"), By: "T"}
}

func canada(t *testing.T) CheckTolerance {
	t.Helper()
	a, ok := CheckToleranceByID(law.First(), "canada")
	if !ok {
		t.Fatal("the rule canada is not known")
	}
	return a
}

// Errors +0.1, -0.3, +0.2 against 0.2: the second is outside. The edge is 0.5,
// so an error of 0.1 is a fifth of it.
func TestErrorLogByHand(t *testing.T) {
	c := NewErrorLog([]Check{checkOn("2026-10-01", "15.0", "15.1"), checkOn("2026-10-05", "15.0", "14.7"), checkOn("2026-10-11", "15.0", "15.2")}, canada(t), Bias{})
	want := []struct {
		share   string
		outside bool
	}{{"0.2", false}, {"-0.6", true}, {"0.4", false}}
	for i, p := range c.Points {
		if got := c.Share(p.Check.Error()); got.String() != want[i].share || p.Outside != want[i].outside || !p.Limited || p.Limit.String() != "0.2 pt" {
			t.Errorf("check %d is %s of the edge: %+v, want %+v", i+1, got, p, want[i])
		}
	}
	if c.Edge.String() != "0.5 pt" {
		t.Errorf("the edge is %s", c.Edge)
	}
}

func TestErrorLogWithoutChecksOrLimits(t *testing.T) {
	if empty := NewErrorLog(nil, canada(t), Bias{}); len(empty.Points) != 0 {
		t.Errorf("no checks make %+v", empty)
	}
	unknown := NewErrorLog([]Check{checkOn("2026-10-01", "15", "17")}, CheckTolerance{}, Bias{})
	if p := unknown.Points[0]; p.Limited || p.Outside || unknown.Share(p.Check.Error()).String() != "1" || unknown.Edge.String() != "2 pt" {
		t.Errorf("without a limit: %+v up to %s", p, unknown.Edge)
	}
}

// Every check, limit and bias lies within the edge, and a check is outside
// exactly when its error is larger than its limit.
func TestErrorLogHoldsEverything(t *testing.T) {
	rule := canada(t)
	rapid.Check(t, func(t *rapid.T) {
		var checks []Check
		day := quantity.MustDate("2026-01-01")
		for range rapid.IntRange(2, 12).Draw(t, "checks") {
			day = day.AddDays(rapid.IntRange(0, 20).Draw(t, "days"))
			c := checkOn(day.String(), "20", "20")
			c.Reading = c.Reading.Add(hundredths(rapid.Int64Range(-300, 300).Draw(t, "error"), quantity.Percent))
			checks = append(checks, c)
		}
		b, err := WorkBias(&worksheet.Sheet{}, checks, 0)
		if err != nil {
			t.Fatal(err)
		}
		c := NewErrorLog(checks, rule, b)
		errors := []quantity.Amount{b.Mean.Value(), b.Low.Value(), b.High.Value()}
		for _, p := range c.Points {
			errors = append(errors, p.Check.Error(), p.Limit)
			if beyond := size(p.Check.Error()).More(p.Limit); beyond != p.Outside {
				t.Fatalf("%+v: beyond its limit %v, outside %v", p, beyond, p.Outside)
			}
		}
		for _, e := range errors {
			if size(e).More(c.Edge) {
				t.Fatalf("%s is beyond the edge: %+v", e, c)
			}
		}
	})
}
