package chart

import (
	"fmt"
	"os"
	"testing"

	"pgregory.net/rapid"

	"tenthpoint/internal/message"
	"tenthpoint/internal/message/errortest"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/worksheet"
)

func dial(text string) quantity.Amount { return quantity.Of(text, quantity.Dial) }
func degF(text string) quantity.Amount { return quantity.Of(text, quantity.Fahrenheit) }
func degC(text string) quantity.Amount { return quantity.Of(text, quantity.Celsius) }
func pct(text string) quantity.Amount  { return quantity.Of(text, quantity.Percent) }
func pt(text string) quantity.Amount   { return quantity.Of(text, quantity.Point) }
func gram(text string) quantity.Amount { return quantity.Of(text, quantity.Gram) }

func hundredths(n int64, unit quantity.Unit) quantity.Amount {
	return quantity.Int(n, unit).Div(quantity.Int(100, quantity.Plain))
}

// lookUp converts on a sheet of its own.
func lookUp(c *Chart, d, temperature quantity.Amount, testWeight ...quantity.Amount) (quantity.Amount, *worksheet.Sheet, error) {
	s := &worksheet.Sheet{}
	var weight *worksheet.Step
	if len(testWeight) > 0 {
		weight = s.Given("t.test-weight", message.Words("Test weight"), testWeight[0], quantity.Unrounded, worksheet.Unsourced)
	}
	step, err := c.Convert(s, "t", s.Given("t.dial", message.Words("Dial"), d, quantity.Unrounded, worksheet.Unsourced),
		s.Given("t.temperature", message.Words("Sample temperature"), temperature, quantity.Unrounded, worksheet.Unsourced), weight)
	if err != nil {
		return quantity.Amount{}, s, err
	}
	return step.Value(), s, nil
}

// The cells are 12 11 10 / 16 14 13 / 20 18 17 at 20, 30, 40 dial and 40, 60,
// 80 °F; the answers are worked by hand.
func TestConvertByHand(t *testing.T) {
	c := small(t, `high = "19 %"`, `high = "20 %"`)
	for _, k := range []struct {
		dial, temperature quantity.Amount
		want              quantity.Amount
		how               string
	}{
		{dial("20"), degF("40"), pct("12"), "on the first cell"},
		{dial("30"), degF("60"), pct("14"), "on the middle cell"},
		{dial("40"), degF("80"), pct("17"), "on the last cell"},
		{dial("40"), degF("40"), pct("20"), "on a corner"},
		{dial("25"), degF("50"), pct("13.25"), "(12+16+11+14)/4"},
		{dial("25"), degF("40"), pct("14"), "along an edge, (12+16)/2"},
		{dial("20"), degF("75"), pct("10.25"), "along the top, 11 - 3/4"},
		{dial("27"), degF("47"), pct("14.205"), "14.8 at 40 °F, 13.1 at 60 °F; 14.8 - 0.35 x 1.7"},
		{dial("36.5"), degF("61"), pct("16.55"), "16.6 at 60 °F, 15.6 at 80 °F; 16.6 - 0.05"},
		{dial("25"), degC("10"), pct("13.25"), "10 °C is 50 °F"},
	} {
		got, _, err := lookUp(c, k.dial, k.temperature)
		if err != nil || !got.Equal(k.want) {
			t.Errorf("%s at %s: %s, %v; want %s: %s", k.dial, k.temperature, got, err, k.want, k.how)
		}
	}
}

func TestConvertWritesTheWay(t *testing.T) {
	_, s, err := lookUp(small(t), dial("27"), degF("47"))
	if err != nil {
		t.Fatal(err)
	}
	want := map[string]string{
		"t.cool.low":         "12 %",
		"t.cool.high":        "16 %",
		"t.warm.low":         "11 %",
		"t.warm.high":        "14 %",
		"t.dial-part":        "0.7",
		"t.temperature-part": "0.35",
		"t.cool":             "14.8 %",
		"t.warm":             "13.1 %",
		"t.chart":            "14.205 %",
	}
	for id, figure := range want {
		step, ok := s.Step(id)
		if !ok || step.Value().String() != figure {
			t.Errorf("step %s is %v, want %s", id, step, figure)
		}
	}
	if len(s.Steps()) != len(want)+2 {
		t.Errorf("%d steps:\n%s", len(s.Steps()), s.Text(80))
	}
	for id, figures := range map[string]string{
		"t.dial-part": "(27 dial − 20 dial) ÷ 10 dial",
		"t.cool":      "12 % + 0.7 × (16 % − 12 %)",
		"t.chart":     "14.8 % + 0.35 × (13.1 % − 14.8 %)",
	} {
		if step, _ := s.Step(id); step.Figures() != figures {
			t.Errorf("%s is worked as %q, want %q", id, step.Figures(), figures)
		}
	}
	cell, _ := s.Step("t.warm.high")
	if cell.Kind() != worksheet.Rate || cell.Source().String() != "small: 30 dial, 60 °F" {
		t.Errorf("cell is %s from %q", cell.Kind(), cell.Source())
	}
}

func TestConvertKeepsFractionsWithoutEnd(t *testing.T) {
	// 10/3 of the way is no decimal: 50 °F is 10 °C, a third of 30.
	c := small(t, `["40 °F", "60 °F", "80 °F"]`, `["0 °C", "30 °C", "60 °C"]`)
	got, _, err := lookUp(c, dial("30"), degF("50"))
	if want := pct("16").Sub(pct("2").Div(quantity.Int(3, quantity.Plain))); err != nil || !got.Equal(want) {
		t.Errorf("16 - 2/3 came out as %s, %v", got, err)
	}
}

func TestConvertRefusesOutside(t *testing.T) {
	c := small(t)
	for _, k := range []struct {
		dial, temperature quantity.Amount
		want              []errortest.Want
	}{
		{dial("19.9"), degF("60"), []errortest.Want{errortest.Invalid("19.9 dial", "small"), errortest.Invalid("20 dial", "40 dial")}},
		{dial("40.1"), degF("60"), []errortest.Want{errortest.Invalid("20 dial", "40 dial"), errortest.Invalid()}},
		{dial("30"), degF("39.9"), []errortest.Want{errortest.Invalid("39.9 °F", "small"), errortest.Invalid("40 °F", "80 °F")}},
		{dial("30"), degF("80.1"), []errortest.Want{errortest.Invalid("40 °F", "80 °F")}},
		{dial("30"), degC("4.4"), []errortest.Want{errortest.Invalid("4.4 °C"), errortest.Invalid("40 °F", "80 °F")}}, // 39.92 °F
		{dial("40"), degF("40"), []errortest.Want{errortest.Invalid("20 %"), errortest.Invalid("10 % to 19 %"), errortest.Invalid("250 g")}},
		{pct("30"), degF("60"), []errortest.Want{errortest.Invalid()}},
		{dial("30"), pct("60"), []errortest.Want{errortest.Invalid()}},
	} {
		got, _, err := lookUp(c, k.dial, k.temperature)
		if err == nil {
			t.Errorf("%s at %s gave %s", k.dial, k.temperature, got)
			continue
		}
		for _, want := range k.want {
			if !want.Met(err) {
				t.Errorf("%q is not in %q", want, err)
			}
		}
	}
}

func TestSecondTableByTestWeight(t *testing.T) {
	c := small(t, "[origin]", `[[test_weight]]
weight = "52 lb/bu"
add = "0.3 pt"
[[test_weight]]
weight = "56 lb/bu"
add = "0 pt"
[[test_weight]]
weight = "60 lb/bu"
add = "-0.2 pt"
[origin]`)
	lb := func(text string) quantity.Amount { return quantity.Of(text, quantity.LbPerBushel) }
	for weight, want := range map[string]string{"52": "14.3", "53": "14.225", "56": "14", "58.5": "13.875", "60": "13.8"} {
		got, s, err := lookUp(c, dial("30"), degF("60"), lb(weight))
		if err != nil || !got.Equal(pct(want)) {
			t.Errorf("%s lb/bu: %s, %v; want %s %%\n%s", weight, got, err, want, s.Text(80))
		}
	}
	if _, _, err := lookUp(c, dial("30"), degF("60"), lb("51.9")); !errortest.Invalid("52 lb/bu", "60 lb/bu").Met(err) {
		t.Errorf("a light sample: %v", err)
	}
	if _, _, err := lookUp(c, dial("30"), degF("60")); !errortest.Invalid("lb/bu").Met(err) {
		t.Errorf("no test weight: %v", err)
	}
	if _, _, err := lookUp(c, dial("30"), degF("60"), quantity.Int(70, quantity.KgPerHL)); !errortest.Invalid("lb/bu").Met(err) {
		t.Errorf("test weight in kg/hL: %v", err)
	}
}

// anyChart draws a chart that rises along the dial and falls or is level along
// the temperature.
func anyChart(t *rapid.T) *Chart {
	rows, columns := rapid.IntRange(2, 5).Draw(t, "rows"), rapid.IntRange(2, 5).Draw(t, "columns")
	c := &Chart{ID: "drawn", Mass: gram("250")}
	cell := func(hundredths int64) quantity.Amount {
		return quantity.Of("0.01", quantity.Percent).Mul(quantity.Int(hundredths, quantity.Plain))
	}
	for j := range columns {
		c.temperatures = append(c.temperatures, quantity.Int(int64(40+7*j), quantity.Fahrenheit))
	}
	floor := int64(4000)
	rise := make([]int64, columns)
	for i := range rows {
		c.dials = append(c.dials, quantity.Int(int64(20+3*i), quantity.Dial))
		row := make([]quantity.Amount, columns)
		step := rapid.Int64Range(10, 300).Draw(t, "step")
		for j := range columns {
			rise[j] += step
			step -= rapid.Int64Range(0, step/3).Draw(t, "less") // no more than the cooler column
			row[j] = cell(floor + rise[j] - int64(j)*50)
		}
		c.cells = append(c.cells, row)
	}
	return c
}

// between draws a figure from a low to a high mark, in thousandths of the way.
func between(t *rapid.T, name string, low, high quantity.Amount) quantity.Amount {
	part := quantity.Int(rapid.Int64Range(0, 1000).Draw(t, name), quantity.Plain).Div(quantity.Int(1000, quantity.Plain))
	return low.Add(high.Sub(low).Mul(part))
}

func mustLookUp(t *rapid.T, c *Chart, d, temperature quantity.Amount) quantity.Amount {
	got, _, err := lookUp(c, d, temperature)
	if err != nil {
		t.Fatalf("%s at %s: %v", d, temperature, err)
	}
	return got
}

func TestInsideACellTheResultLiesBetweenItsCorners(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c := anyChart(t)
		d := between(t, "dial", c.dials.first(), c.dials.last())
		temperature := between(t, "temperature", c.temperatures.first(), c.temperatures.last())
		i, j, err := c.Place(d, temperature)
		if err != nil {
			t.Fatal(err)
		}
		low, high := c.cells[i][j+1], c.cells[i+1][j] // warm and dry, cool and wet
		if got := mustLookUp(t, c, d, temperature); got.Less(low) || got.More(high) {
			t.Fatalf("%s at %s is %s, outside its corners %s to %s", d, temperature, got, low, high)
		}
	})
}

func TestMoreOnTheDialIsNeverDrier(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c := anyChart(t)
		first, last := c.dials.first(), c.dials.last()
		a, b := between(t, "one", first, last), between(t, "other", first, last)
		warm, cool := between(t, "warm", c.temperatures.first(), c.temperatures.last()), between(t, "cool", c.temperatures.first(), c.temperatures.last())
		a, b = quantity.Min(a, b), quantity.Max(a, b)
		warm, cool = quantity.Max(warm, cool), quantity.Min(warm, cool)
		if lower, higher := mustLookUp(t, c, a, cool), mustLookUp(t, c, b, cool); lower.More(higher) {
			t.Fatalf("at %s, %s gives %s and %s gives %s", cool, a, lower, b, higher)
		}
		if wet, dry := mustLookUp(t, c, a, cool), mustLookUp(t, c, a, warm); wet.Less(dry) {
			t.Fatalf("%s gives %s at %s and %s at %s", a, wet, cool, dry, warm)
		}
	})
}

// Coming to an edge from the cells on both its sides gives the figure on the
// edge: a step of one part in a million moves the result by no more than one
// part in a million of the chart's whole height.
func TestNoJumpAcrossTheEdgesOfCells(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c := anyChart(t)
		i := rapid.IntRange(0, len(c.dials)-1).Draw(t, "row")
		j := rapid.IntRange(0, len(c.temperatures)-1).Draw(t, "column")
		sliver := quantity.Of("0.000003", quantity.Plain)
		height := c.cells[len(c.cells)-1][0].Sub(c.cells[0][len(c.temperatures)-1])
		bound := height.Mul(quantity.Of("0.000002", quantity.Plain))
		at := c.dials[i]
		temperature := between(t, "temperature", c.temperatures.first(), c.temperatures.last())
		for _, side := range []int64{-1, 1} {
			near := at.Add(sliver.Mul(quantity.Int(side, quantity.Dial)))
			if c.dials.holds(near) {
				expectClose(t, mustLookUp(t, c, at, temperature), mustLookUp(t, c, near, temperature), bound)
			}
			d := between(t, "dial", c.dials.first(), c.dials.last())
			warm := c.temperatures[j].Add(sliver.Mul(quantity.Int(side, quantity.Fahrenheit)))
			if c.temperatures.holds(warm) {
				expectClose(t, mustLookUp(t, c, d, c.temperatures[j]), mustLookUp(t, c, d, warm), bound)
			}
		}
	})
}

func expectClose(t *rapid.T, a, b, bound quantity.Amount) {
	if difference := a.Sub(b); difference.More(bound) || difference.Less(bound.Neg()) {
		t.Fatalf("a jump from %s to %s, more than %s", a, b, bound)
	}
}

func BenchmarkConvert(b *testing.B) {
	c, err := Read("small.toml", []byte(smallChart))
	if err != nil {
		b.Fatal(err)
	}
	for b.Loop() {
		if _, _, err := lookUp(c, dial("27"), degF("47")); err != nil {
			b.Fatal(err)
		}
	}
}

// Example of the whole path as a grower may ask for it.
func ExampleChart() {
	c, _ := Read("small.toml", []byte(smallChart))
	_, s, _ := lookUp(c, dial("27"), degF("47"))
	step, _ := s.Step("t.chart")
	fmt.Println(step.Figures(), "=", step.Printed())
	// Output: 14.8 % + 0.35 × (13.1 % − 14.8 %) = 14.205 %
}

func shippedChart(t *testing.T, id string) *Chart {
	t.Helper()
	text, err := os.ReadFile("../../../schedules/charts/" + id + ".toml")
	if err != nil {
		t.Fatal(err)
	}
	c, err := Read(id+".toml", text)
	if err != nil {
		t.Fatal(err)
	}
	return c
}

func TestNeedsTestWeight(t *testing.T) {
	if unit, needed := small(t).NeedsTestWeight(); needed {
		t.Errorf("the small chart asks for test weight in %s", unit)
	}
	if unit, needed := shippedChart(t, "example-barley-225g").NeedsTestWeight(); !needed || unit.String() != "lb/bu" {
		t.Errorf("the barley chart asks for test weight: %v, in %s", needed, unit)
	}
}
