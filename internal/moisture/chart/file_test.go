package chart

import (
	_ "embed"
	"errors"
	"strings"
	"testing"

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
	for _, c := range []struct{ name, old, new, want string }{
		{"unknown key", `title = "A small chart"`, "title = \"A\"\ncolour = \"red\"", "small.toml:4: chart.colour is not a key of this file"},
		{"unknown key in a row", `dial = "30 dial"`, "dial = \"30 dial\"\nmoisture = \"3 %\"", "small.toml:33: row.1.moisture is not a key"},
		{"unknown table", "[origin]", "[notes]\na = \"b\"\n[origin]", "notes is not a key of this file"},
		{"missing id", `id = "small"`, "", "chart.id is missing"},
		{"missing table", "[ambient]\nlow = \"50 °F\"\nhigh = \"90 °F\"", "", "the table [ambient] is missing"},
		{"missing range", "[moisture]\nlow = \"10 %\"\nhigh = \"19 %\"", "", "the table [moisture] is missing"},
		{"example left out", "example = true\n", "", "chart.example is not true or false"},
		{"unknown crop", `crop = "corn"`, `crop = "maise"`, "small.toml:5: chart.crop: \"maise\" is not a commodity here"},
		{"bare mass", `mass = "250 g"`, "mass = 250", "small.toml:10: chart.mass is a bare number"},
		{"mass without unit", `mass = "250 g"`, `mass = "250"`, `"250" has no unit`},
		{"mass in pounds", `mass = "250 g"`, `mass = "1 lb"`, "chart.mass is in lb"},
		{"no mass", `mass = "250 g"`, `mass = "0 g"`, "chart.mass is 0 g, which is not above zero"},
		{"bare cell", `["16 %", "14 %", "13 %"]`, `["16 %", 14, "13 %"]`, "small.toml:33: row.1.cells holds a bare number"},
		{"cell without unit", `["16 %", "14 %", "13 %"]`, `["16 %", "14", "13 %"]`, `small.toml:33: cells, number 2: "14" has no unit`},
		{"cell in dial", `["16 %", "14 %", "13 %"]`, `["16 %", "14 dial", "13 %"]`, "small.toml:33: cells, number 2, is 14 dial"},
		{"empty cell", `["16 %", "14 %", "13 %"]`, `["16 %", "", "13 %"]`, "small.toml:33: cells, number 2"},
		{"cell too few", `["16 %", "14 %", "13 %"]`, `["16 %", "13 %"]`, "small.toml:33: this row has 2 cells for 3 temperatures"},
		{"cell of 100 %", `["20 %", "18 %", "17 %"]`, `["100 %", "18 %", "17 %"]`, "cell 1 is 100 %; a moisture lies above 0 % and below 100 %"},
		{"no cells", `cells = ["16 %", "14 %", "13 %"]`, "", "this row has 0 cells for 3 temperatures"},
		{"digits swapped", `["16 %", "14 %", "13 %"]`, `["16 %", "14 %", "31 %"]`, "small.toml:33: going across the temperatures, the cell at 80 °F is 31 % after 14 % at 60 °F"},
		{"falls along the dial", `["16 %", "14 %", "13 %"]`, `["16 %", "10 %", "9 %"]`, "small.toml:33: going down the dial, the cell at 60 °F is 10 % after 11 % at 20 dial"},
		{"stands still along the dial", `["16 %", "14 %", "13 %"]`, `["12 %", "11.5 %", "11 %"]`, "the cell at 40 °F is 12 % after 12 % at 20 dial"},
		{"dial not rising", `dial = "30 dial"`, `dial = "20 dial"`, "small.toml:32: the dial readings do not rise: 20 dial comes after 20 dial"},
		{"dial gap", `dial = "40 dial"`, `dial = "50 dial"`, "small.toml:36: the dial readings have a gap: from 30 dial to 50 dial is a step of 20 dial, but the chart begins in steps of 10 dial"},
		{"dial without unit", `dial = "40 dial"`, `dial = "40"`, `"40" has no unit`},
		{"temperature gap", `["40 °F", "60 °F", "80 °F"]`, `["40 °F", "60 °F", "100 °F"]`, "small.toml:12: the temperatures have a gap"},
		{"temperatures falling", `["40 °F", "60 °F", "80 °F"]`, `["80 °F", "60 °F", "40 °F"]`, "small.toml:12: the temperatures do not rise: 60 °F comes after 80 °F"},
		{"two scales", `["40 °F", "60 °F", "80 °F"]`, `["40 °F", "60 °F", "80 °C"]`, "chart.temperatures holds both 40 °F and 80 °C"},
		{"temperatures in percent", `["40 °F", "60 °F", "80 °F"]`, `["40 %", "60 °F", "80 °F"]`, "temperatures, number 1, is 40 %"},
		{"one temperature", `["40 °F", "60 °F", "80 °F"]`, `["40 °F"]`, "names fewer than two temperatures"},
		{"range beyond cells", `high = "19 %"`, `high = "21 %"`, "small.toml:14: the chart answers for 10 % to 21 % but its cells reach only from 10 % to 20 %"},
		{"range below cells", `low = "10 %"`, `low = "9.9 %"`, "its cells reach only from 10 % to 20 %"},
		{"range upside down", `high = "19 %"`, `high = "9 %"`, "moisture.high 9 % is not above moisture.low 10 %"},
		{"ambient of two scales", `high = "90 °F"`, `high = "32 °C"`, "ambient.low is in °F and ambient.high in °C"},
		{"ends before it begins", `until = "2025-12-31"`, `until = "2024-12-31"`, "small.toml:9: the chart ends on 2024-12-31, before it begins on 2025-01-01"},
		{"no such day", `from = "2025-01-01"`, `from = "2025-02-29"`, "there is no day 29 in 2025-02"},
		{"not TOML", "[origin]", "[origin", "this is not TOML"},
		{"test weight, one row", "[origin]", "[[test_weight]]\nweight = \"44 lb/bu\"\nadd = \"0.2 pt\"\n[origin]", "the table by test weight has 1 rows"},
		{"test weights of two units", "[origin]", "[[test_weight]]\nweight = \"44 lb/bu\"\nadd = \"0.2 pt\"\n[[test_weight]]\nweight = \"62 kg/hL\"\nadd = \"0.2 pt\"\n[origin]", "this test weight is in kg/hL, the first in lb/bu"},
		{"test weights not rising", "[origin]", "[[test_weight]]\nweight = \"44 lb/bu\"\nadd = \"0.2 pt\"\n[[test_weight]]\nweight = \"44 lb/bu\"\nadd = \"0.2 pt\"\n[origin]", "the test weights do not rise"},
		{"correction in percent", "[origin]", "[[test_weight]]\nweight = \"44 lb/bu\"\nadd = \"0.2 %\"\n[[test_weight]]\nweight = \"48 lb/bu\"\nadd = \"0.2 pt\"\n[origin]", "test_weight.0.add is in %"},
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
		if !strings.Contains(err.Error(), c.want) {
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
