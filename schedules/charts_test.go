package schedules

import (
	"fmt"
	"math/big"
	"strings"
	"testing"
	"testing/fstest"

	"tenthpoint/internal/message"
	"tenthpoint/internal/message/errortest"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/worksheet"
)

// formula is the invented rule behind an example chart, as its file states it:
// a + b d + c d² - k (T - t0) (1 + d/100).
type formula struct{ a, b, c, k, t0 string }

var formulas = map[string]formula{
	"example-corn-250g":           {"4.40", "0.16", "0.0005", "0.02", "60"},
	"example-corn-175g":           {"15.00", "0.20", "0.0008", "0.02", "60"},
	"example-soybeans-250g":       {"3.00", "0.15", "0.0004", "0.015", "60"},
	"example-wheat-hrw-250g":      {"5.00", "0.12", "0.0004", "0.02", "60"},
	"example-wheat-hrw-250g-2026": {"6.50", "0.16", "0.0004", "0.02", "60"},
	"example-sorghum-250g":        {"4.80", "0.14", "0.0005", "0.02", "60"},
	"example-barley-225g":         {"5.20", "0.13", "0.0004", "0.035", "15"},
}

func (f formula) String() string {
	return fmt.Sprintf("%s + %s d + %s d² - %s (T - %s) (1 + d/100)", f.a, f.b, f.c, f.k, f.t0)
}

// at is the formula's exact value, by rational numbers and nothing of ours.
func (f formula) at(d, temperature *big.Rat) *big.Rat {
	sum := rat(f.a)
	sum.Add(sum, mul(rat(f.b), d))
	sum.Add(sum, mul(rat(f.c), d, d))
	heat := mul(rat(f.k), new(big.Rat).Sub(temperature, rat(f.t0)), new(big.Rat).Add(rat("1"), mul(d, rat("1/100"))))
	return sum.Sub(sum, heat)
}

func rat(text string) *big.Rat {
	r, ok := new(big.Rat).SetString(text)
	if !ok {
		panic(text)
	}
	return r
}

func mul(first *big.Rat, rest ...*big.Rat) *big.Rat {
	out := new(big.Rat).Set(first)
	for _, r := range rest {
		out.Mul(out, r)
	}
	return out
}

// Every cell of every shipped chart is worked out again from the formula that
// stands at the top of its file.
func TestExampleChartsCellByCell(t *testing.T) {
	shelf, err := Charts()
	if err != nil {
		t.Fatal(err)
	}
	if len(shelf.All()) != len(formulas) {
		t.Errorf("%d charts are shipped, %d formulas are known here", len(shelf.All()), len(formulas))
	}
	for _, c := range shelf.All() {
		f, known := formulas[c.ID]
		if !known || !strings.Contains(string(c.Text), f.String()) {
			t.Errorf("%s does not state the formula %q", c.File, f)
			continue
		}
		for i, d := range c.Dials() {
			for j, temperature := range c.Temperatures() {
				// FloatString rounds half away from zero, from the exact value.
				want := quantity.Of(f.at(d.Rat(), temperature.Rat()).FloatString(2), quantity.Percent)
				if got := c.Cell(i, j); !got.Equal(want) {
					t.Errorf("%s at %s, %s: %s, the formula gives %s", c.ID, d, temperature, got, want)
				}
			}
		}
	}
}

func TestExampleChartsSayWhatTheyAre(t *testing.T) {
	shelf, err := Charts()
	if err != nil {
		t.Fatal(err)
	}
	masses := map[string]string{}
	for _, c := range shelf.All() {
		if !c.Example || !strings.Contains(c.Origin.Note, "example - not for trade") || !strings.Contains(string(c.Text[:200]), "Example - not for trade") {
			t.Errorf("%s does not say that it is an example", c.File)
		}
		if !strings.HasPrefix(c.Meter, "Example ") {
			t.Errorf("%s names the meter %q; examples belong to an invented one", c.File, c.Meter)
		}
		if c.File != "charts/"+c.ID+".toml" && c.File != "charts/"+c.ID+".csv" {
			t.Errorf("%s holds chart %s", c.File, c.ID)
		}
		masses[c.Crop+" "+c.Moisture.String()] = c.Mass.String()
	}
	// Wheat 250 g: practice. Wet corn 250 g under 20 %, 175 g from 20 to 35 %:
	// Canadian grading guide, chapter 2.
	for use, want := range map[string]string{
		"wheat-hrw 8 % to 20 %": "250 g", "corn 8 % to 20 %": "250 g", "corn 20 % to 35 %": "175 g",
	} {
		if masses[use] != want {
			t.Errorf("%s: sample mass %q, want %q", use, masses[use], want)
		}
	}
}

func TestReadChartsNamesEveryBrokenFile(t *testing.T) {
	corn, err := Files.ReadFile("charts/example-corn-250g.toml")
	if err != nil {
		t.Fatal(err)
	}
	_, err = ReadCharts(fstest.MapFS{
		"charts/a.toml": {Data: []byte("x = 1\n")},
		"charts/b.toml": {Data: []byte("= no\n")},
		"charts/c.toml": {Data: corn},
		"charts/d.toml": {Data: corn},
		"charts/e.txt":  {Data: []byte("not a chart")},
		"charts/f.csv":  {Data: []byte("x,y,z\n")},
	})
	if err == nil {
		t.Fatal("broken files were taken")
	}
	for _, want := range []errortest.Want{errortest.Invalid("charts/a.toml", "charts/a.toml:1", "x"), errortest.Invalid("charts/b.toml:1"), errortest.Invalid("charts/f.csv", "charts/f.csv:1", "x"), errortest.Invalid("charts/d.toml", "example-corn-250g", "charts/c.toml")} {
		if !want.Met(err) {
			t.Errorf("%q is not in:\n%v", want, err)
		}
	}
	if strings.Contains(err.Error(), "e.txt") {
		t.Errorf("a file that is no chart was read: %v", err)
	}
}

// A chart written out as lines for a spreadsheet and put back into the folder
// is the same chart.
func TestReadChartsTakesLines(t *testing.T) {
	shelf, err := Charts()
	if err != nil {
		t.Fatal(err)
	}
	files := fstest.MapFS{}
	for _, c := range shelf.All() {
		files["charts/"+c.ID+".csv"] = &fstest.MapFile{Data: c.Lines()}
	}
	again, err := ReadCharts(files)
	if err != nil {
		t.Fatal(err)
	}
	if len(again.All()) != len(shelf.All()) {
		t.Fatalf("%d charts came back of %d", len(again.All()), len(shelf.All()))
	}
	for _, c := range shelf.All() {
		back, err := again.ByID(c.ID)
		if err != nil {
			t.Error(err)
		} else if got, want := string(back.Lines()), string(c.Lines()); got != want {
			t.Errorf("%s came back as\n%s\nwant\n%s", c.ID, got, want)
		}
	}
}

// Common practice with a dial meter, used as a check value: wheat, 250 g, 45
// divisions at 22 °C is 14.2 %, straight grade and dry enough to store and sell.
func TestWheatDialCheckValue(t *testing.T) {
	shelf, err := Charts()
	if err != nil {
		t.Fatal(err)
	}
	day := quantity.MustDate("2026-11-30")
	inForce := shelf.For("wheat-hrw", "Example dial meter A", "A-2025", day)
	if len(inForce) != 1 {
		t.Fatalf("%d wheat charts are in force on %s, want one", len(inForce), day)
	}
	s := &worksheet.Sheet{}
	dial := s.Given("dial", message.Words("Dial"), quantity.Int(45, quantity.Dial), quantity.Unrounded, worksheet.Unsourced)
	temperature := s.Given("temperature", message.Words("Temperature"), quantity.Int(22, quantity.Celsius), quantity.Unrounded, worksheet.Unsourced)
	step, err := inForce[0].Convert(s, "m", dial, temperature, nil)
	if err != nil {
		t.Fatal(err)
	}
	if got := quantity.To("0.1", quantity.HalfUp).Apply(step.Value()); got.String() != "14.2 %" {
		t.Errorf("45 divisions at 22 °C are %s, want 14.2 %%", got)
	}
	// Tickets tested before keep the chart of their day.
	if old := shelf.For("wheat-hrw", "Example dial meter A", "A-2025", quantity.MustDate("2025-11-30")); len(old) != 1 || old[0].ID != "example-wheat-hrw-250g" {
		t.Errorf("the wheat chart of 2025 is %v", old)
	}
}
