package bench

import (
	"testing"

	"pgregory.net/rapid"

	"tenthpoint/internal/quantity"
	"tenthpoint/internal/working"
)

func checkOn(day, reference, reading string) Check {
	return Check{Day: quantity.MustDate(day), Meter: "bench-1", Calibration: "A-2025", Crop: "corn", Name: "R",
		Reference: pct(reference), Reading: pct(reading), Sample: degC("20"), By: "T"}
}

func canada(t *testing.T) Authority {
	t.Helper()
	a, ok := AuthorityByID("canada")
	if !ok {
		t.Fatal("the rule canada is not known")
	}
	return a
}

// Ten days, the middle check on the fourth: errors +0.1, -0.3, +0.2 against
// 0.2. The edge is 0.5, so a tenth is 100 thousandths.
func TestErrorChartByHand(t *testing.T) {
	c := NewErrorChart([]Check{checkOn("2026-10-01", "15.0", "15.1"), checkOn("2026-10-05", "15.0", "14.7"), checkOn("2026-10-11", "15.0", "15.2")}, canada(t), Bias{})
	want := []ErrorPoint{{X: 0, Y: 600}, {X: 400, Y: 200, Outside: true}, {X: 1000, Y: 700}}
	for i, p := range c.Points {
		if p.X != want[i].X || p.Y != want[i].Y || p.Outside != want[i].Outside || p.Lower != 300 || p.Upper != 700 || !p.Limited {
			t.Errorf("check %d is %+v, want %+v between 300 and 700", i+1, p, want[i])
		}
	}
	if c.Points[1].Label != "2026-10-05, corn R: -0.3 pt" || c.Points[0].Label != "2026-10-01, corn R: +0.1 pt" {
		t.Errorf("labels %q, %q", c.Points[0].Label, c.Points[1].Label)
	}
	if c.Mean != nil || c.Low != nil || c.High != nil {
		t.Errorf("a bias nobody worked is drawn: %+v", c)
	}
}

func TestErrorChartOfOneDay(t *testing.T) {
	c := NewErrorChart([]Check{checkOn("2026-10-01", "15", "15.1"), checkOn("2026-10-01", "16", "15.9"), checkOn("2026-10-01", "17", "17")}, canada(t), Bias{})
	for i, want := range []int{250, 500, 750} {
		if c.Points[i].X != want {
			t.Errorf("check %d stands at %d, want %d", i+1, c.Points[i].X, want)
		}
	}
	if empty := NewErrorChart(nil, canada(t), Bias{}); len(empty.Points) != 0 {
		t.Errorf("no checks make %+v", empty)
	}
	unknown := NewErrorChart([]Check{checkOn("2026-10-01", "15", "17")}, Authority{}, Bias{})
	if p := unknown.Points[0]; p.Limited || p.Outside || p.Y != 1000 || unknown.Edge.String() != "2 pt" {
		t.Errorf("without a limit: %+v up to %s", p, unknown.Edge)
	}
}

// Every check, limit and bias lies on the chart, and a check is outside exactly
// when it lies beyond its lines.
func TestErrorChartHoldsEverything(t *testing.T) {
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
		b, err := WorkBias(&working.Sheet{}, checks, 0)
		if err != nil {
			t.Fatal(err)
		}
		c := NewErrorChart(checks, rule, b)
		places := []int{*c.Mean, *c.Low, *c.High}
		if !(*c.Low <= *c.Mean && *c.Mean <= *c.High) {
			t.Fatalf("the mean %d is not between %d and %d", *c.Mean, *c.Low, *c.High)
		}
		for _, p := range c.Points {
			places = append(places, p.X, p.Y, p.Lower, p.Upper)
			if beyond := p.Y < p.Lower || p.Y > p.Upper; beyond && !p.Outside {
				t.Fatalf("%+v lies beyond its lines and is not outside", p)
			}
		}
		for _, at := range places {
			if at < 0 || at > 1000 {
				t.Fatalf("%d is off the chart: %+v", at, c)
			}
		}
	})
}
