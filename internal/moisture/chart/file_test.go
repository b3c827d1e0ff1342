package chart

import (
	_ "embed"
	"errors"
	"strings"
	"testing"

	"tenthpoint/internal/message/errortest"
	"tenthpoint/internal/tomlfile"
)

// smallChart is a chart of three rows and three columns, wide enough apart
// that everything on it can be worked out in the head.
//
//go:embed testdata/small.toml
var smallChart string

func small(t *testing.T, replace ...string) *Chart {
	t.Helper()
	c, err := Read("small.toml", []byte(strings.NewReplacer(replace...).Replace(smallChart)))
	if err != nil {
		t.Fatal(err)
	}
	return c
}

func TestReadChartKeepsWhatTheFileSays(t *testing.T) {
	c := small(t)
	for _, c := range []struct{ got, want string }{
		{c.Name(), "corn, 250 g on Example dial meter A, calibration A-2025"},
		{c.Moisture.String(), "10 % to 19 %"},
		{c.Ambient.String(), "50 °F to 90 °F"},
		{c.MaxDifference.String(), "20 °F"},
		{c.Until.String(), "2025-12-31"},
		{c.Origin.Document, "made up for a test"},
		{c.Cell(1, 2).String(), "13 %"},
		{string(c.Text), smallChart},
	} {
		if c.got != c.want {
			t.Errorf("got %q, want %q", c.got, c.want)
		}
	}
	// sha256sum of nothing in particular, but of exactly these bytes.
	if len(c.Hash) != 64 || small(t, "nobody", "somebody").Hash == c.Hash {
		t.Errorf("hash %q does not follow the text", c.Hash)
	}
}

// One mistake at a time, each with its line and the words it must
// be answered with.
func TestReadChartRefuses(t *testing.T) {
	for _, c := range []struct {
		name, old, new string
		want           errortest.Want
	}{
		{"unknown key", `title = "A small chart"`, "title = \"A\"\ncolour = \"red\"", errortest.Invalid("small.toml:4", "chart.colour")},
		{"unknown key in a row", `dial = "30 dial"`, "dial = \"30 dial\"\nmoisture = \"3 %\"", errortest.Invalid("small.toml:33", "row.1.moisture")},
		{"unknown table", "[origin]", "[notes]\na = \"b\"\n[origin]", errortest.Invalid("notes")},
		{"missing id", `id = "small"`, "", errortest.Invalid("chart.id")},
		{"missing table", "[ambient]\nlow = \"50 °F\"\nhigh = \"90 °F\"", "", errortest.Invalid("ambient")},
		{"missing range", "[moisture]\nlow = \"10 %\"\nhigh = \"19 %\"", "", errortest.Invalid("moisture")},
		{"example left out", "example = true\n", "", errortest.Invalid("chart.example")},
		{"unknown crop", `crop = "corn"`, `crop = "maise"`, errortest.Invalid("small.toml:5", "maise")},
		{"bare mass", `mass = "250 g"`, "mass = 250", errortest.Invalid("small.toml:10", "chart.mass")},
		{"mass without unit", `mass = "250 g"`, `mass = "250"`, errortest.Invalid("\"250\"")},
		{"mass in pounds", `mass = "250 g"`, `mass = "1 lb"`, errortest.Invalid("chart.mass", "lb")},
		{"no mass", `mass = "250 g"`, `mass = "0 g"`, errortest.Invalid("chart", "0 g")},
		{"bare cell", `["16 %", "14 %", "13 %"]`, `["16 %", 14, "13 %"]`, errortest.Invalid("small.toml:33", "row.1.cells")},
		{"cell without unit", `["16 %", "14 %", "13 %"]`, `["16 %", "14", "13 %"]`, errortest.Invalid("small.toml:33", "cells", "2", "\"14\"")},
		{"cell in dial", `["16 %", "14 %", "13 %"]`, `["16 %", "14 dial", "13 %"]`, errortest.Invalid("small.toml:33", "cells", "2", "14 dial")},
		{"empty cell", `["16 %", "14 %", "13 %"]`, `["16 %", "", "13 %"]`, errortest.Invalid("small.toml:33", "cells", "2")},
		{"cell too few", `["16 %", "14 %", "13 %"]`, `["16 %", "13 %"]`, errortest.Invalid("small.toml:33", "2", "3")},
		{"cell of 100 %", `["20 %", "18 %", "17 %"]`, `["100 %", "18 %", "17 %"]`, errortest.Invalid("1", "100 %")},
		{"no cells", `cells = ["16 %", "14 %", "13 %"]`, "", errortest.Invalid("0", "3")},
		{"digits swapped", `["16 %", "14 %", "13 %"]`, `["16 %", "14 %", "31 %"]`, errortest.Invalid("small.toml:33", "80 °F", "31 %", "14 %", "60 °F")},
		{"falls along the dial", `["16 %", "14 %", "13 %"]`, `["16 %", "10 %", "9 %"]`, errortest.Invalid("small.toml:33", "60 °F", "10 %", "11 %", "20 dial")},
		{"stands still along the dial", `["16 %", "14 %", "13 %"]`, `["12 %", "11.5 %", "11 %"]`, errortest.Invalid("40 °F", "12 %", "20 dial")},
		{"dial not rising", `dial = "30 dial"`, `dial = "20 dial"`, errortest.Invalid("small.toml:32", "20 dial")},
		{"dial gap", `dial = "40 dial"`, `dial = "50 dial"`, errortest.Invalid("small.toml:36", "30 dial", "50 dial", "20 dial", "10 dial")},
		{"dial without unit", `dial = "40 dial"`, `dial = "40"`, errortest.Invalid("\"40\"")},
		{"temperature gap", `["40 °F", "60 °F", "80 °F"]`, `["40 °F", "60 °F", "100 °F"]`, errortest.Invalid("small.toml:12")},
		{"temperatures falling", `["40 °F", "60 °F", "80 °F"]`, `["80 °F", "60 °F", "40 °F"]`, errortest.Invalid("small.toml:12", "60 °F", "80 °F")},
		{"two scales", `["40 °F", "60 °F", "80 °F"]`, `["40 °F", "60 °F", "80 °C"]`, errortest.Invalid("40 °F", "80 °C")},
		{"temperatures in percent", `["40 °F", "60 °F", "80 °F"]`, `["40 %", "60 °F", "80 °F"]`, errortest.Invalid("temperatures", "1", "40 %")},
		{"one temperature", `["40 °F", "60 °F", "80 °F"]`, `["40 °F"]`, errortest.Invalid()},
		{"range beyond cells", `high = "19 %"`, `high = "21 %"`, errortest.Invalid("small.toml:14", "10 % to 21 %", "10 %", "20 %")},
		{"range below cells", `low = "10 %"`, `low = "9.9 %"`, errortest.Invalid("10 %", "20 %")},
		{"range upside down", `high = "19 %"`, `high = "9 %"`, errortest.Invalid("moisture", "9 %", "10 %")},
		{"ambient of two scales", `high = "90 °F"`, `high = "32 °C"`, errortest.Invalid("ambient", "°F", "°C")},
		{"ends before it begins", `until = "2025-12-31"`, `until = "2024-12-31"`, errortest.Invalid("small.toml:9", "2024-12-31", "2025-01-01")},
		{"no such day", `from = "2025-01-01"`, `from = "2025-02-29"`, errortest.Invalid("29", "2025")},
		{"not TOML", "[origin]", "[origin", errortest.Invalid()},
		{"test weight, one row", "[origin]", "[[test_weight]]\nweight = \"44 lb/bu\"\nadd = \"0.2 pt\"\n[origin]", errortest.Invalid("1")},
		{"test weights of two units", "[origin]", "[[test_weight]]\nweight = \"44 lb/bu\"\nadd = \"0.2 pt\"\n[[test_weight]]\nweight = \"62 kg/hL\"\nadd = \"0.2 pt\"\n[origin]", errortest.Invalid("kg/hL", "lb/bu")},
		{"test weights not rising", "[origin]", "[[test_weight]]\nweight = \"44 lb/bu\"\nadd = \"0.2 pt\"\n[[test_weight]]\nweight = \"44 lb/bu\"\nadd = \"0.2 pt\"\n[origin]", errortest.Invalid()},
		{"correction in percent", "[origin]", "[[test_weight]]\nweight = \"44 lb/bu\"\nadd = \"0.2 %\"\n[[test_weight]]\nweight = \"48 lb/bu\"\nadd = \"0.2 pt\"\n[origin]", errortest.Invalid("test_weight.0.add", "%")},
	} {
		if !strings.Contains(smallChart, c.old) {
			t.Fatalf("%s: the chart has no %q", c.name, c.old)
		}
		chart, err := Read("small.toml", []byte(strings.Replace(smallChart, c.old, c.new, 1)))
		var problems tomlfile.Problems
		if chart != nil || !errors.As(err, &problems) {
			t.Errorf("%s: was taken: %v, %v", c.name, chart, err)
			continue
		}
		if !c.want.Met(err) {
			t.Errorf("%s: %q is not in\n%v", c.name, c.want, err)
		}
		if len(problems) > 2 {
			t.Errorf("%s: one mistake gave %d problems:\n%v", c.name, len(problems), err)
		}
	}
}

func TestReadChartReportsEverythingAtOnce(t *testing.T) {
	broken := strings.NewReplacer(`crop = "corn"`, `crop = "maise"`, `mass = "250 g"`, "mass = 250",
		`["16 %", "14 %", "13 %"]`, `["16 %", "14", "13"]`, `dial = "40 dial"`, `dial = "50 dial"`).Replace(smallChart)
	_, err := Read("small.toml", []byte(broken))
	var problems tomlfile.Problems
	errors.As(err, &problems)
	lines := map[int]int{}
	for _, p := range problems {
		lines[p.Line]++
		if p.Excerpt == "" {
			t.Errorf("no excerpt with %q", p.What)
		}
	}
	for line, want := range map[int]int{5: 1, 10: 1, 33: 2, 36: 1} {
		if lines[line] != want {
			t.Errorf("line %d has %d problems, want %d; all are\n%v", line, lines[line], want, err)
		}
	}
}

func TestUnevenStepsNeedAReason(t *testing.T) {
	c := small(t, `dial = "40 dial"`, `dial = "50 dial"`, `mass =`, "uneven_steps = \"the printed chart goes by 20 above 30\"\nmass =")
	if got := c.Dials()[2].String(); got != "50 dial" {
		t.Errorf("last row is %s", got)
	}
}

// A chart may fall along the dial, and stay level along the temperature.
func TestOtherDirectionsAreCharts(t *testing.T) {
	small(t, `["12 %", "11 %", "10 %"]`, `["20 %", "18 %", "17 %"]`, `["20 %", "18 %", "17 %"]`, `["12 %", "11 %", "10 %"]`)
	level := small(t, `["12 %", "11 %", "10 %"]`, `["10 %", "10 %", "10 %"]`, `["16 %", "14 %", "13 %"]`, `["13 %", "13 %", "13 %"]`)
	if level.Cell(1, 0).String() != "13 %" {
		t.Errorf("cell is %s", level.Cell(1, 0))
	}
}

func FuzzReadChart(f *testing.F) {
	f.Add(smallChart)
	f.Add(strings.Replace(smallChart, `"14 %"`, `14`, 1))
	f.Add(strings.Replace(smallChart, `[[row]]`, `[[test_weight]]`, 1))
	f.Add("[chart]\nid = \"\x00\"")
	f.Add("[[row]]\n[[row]]\n[chart]\ntemperatures = [\"1e9 °F\", \"2 °F\"]")
	f.Fuzz(func(t *testing.T, text string) {
		c, err := Read("fuzz.toml", []byte(text))
		if (c == nil) == (err == nil) {
			t.Fatalf("chart %v with error %v", c, err)
		}
		if c == nil {
			return
		}
		// What was taken must work at each of its own cells.
		for i, dial := range c.Dials() {
			for j, temperature := range c.Temperatures() {
				if row, column, err := c.Place(dial, temperature); err != nil || row > i || column > j {
					t.Fatalf("cell %d, %d of a chart that was taken lies at %d, %d: %v", i, j, row, column, err)
				}
			}
		}
	})
}
