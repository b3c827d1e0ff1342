package chart

import (
	"errors"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"tenthpoint/internal/message/errortest"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/tomlfile"
)

// smallLines is the small chart of chartfile_test.go as a spreadsheet saves it.
const smallLines = `chart,id,small
chart,title,A small chart
chart,example,TRUE
chart,crop,corn
chart,meter,Example dial meter A
chart,calibration,A-2025
chart,from,2025-01-01
chart,until,2025-12-31
chart,mass,250 g
chart,max_meter_to_grain,20 °F
moisture,low,10 %
moisture,high,19 %
ambient,low,50 °F
ambient,high,90 °F
origin,issued,2024-12-01
origin,by,nobody
origin,document,made up for a test
dial,40 °F,60 °F,80 °F
20,12,11,10
30,16,14,13
40,20,18,17
`

func smallFromLines(t *testing.T, replace ...string) *Chart {
	t.Helper()
	c, err := Read("small.csv", []byte(strings.NewReplacer(replace...).Replace(smallLines)))
	if err != nil {
		t.Fatal(err)
	}
	return c
}

// expectSame compares what two charts say; their files, texts and hashes may
// differ.
func expectSame(t interface{ Fatalf(string, ...any) }, got, want *Chart) {
	g, w := *got, *want
	for _, c := range []*Chart{&g, &w} {
		c.File, c.Text, c.Hash = "", nil, ""
	}
	if a, b := string(g.Lines()), string(w.Lines()); a != b {
		t.Fatalf("the charts differ; got\n%s\nwant\n%s", a, b)
	}
	for i, row := range w.cells {
		if !slices.EqualFunc(g.cells[i], row, quantity.Amount.Equal) {
			t.Fatalf("row %d is %v, want %v", i+1, g.cells[i], row)
		}
	}
}

func TestLinesAndTOMLSayTheSame(t *testing.T) {
	expectSame(t, smallFromLines(t), small(t))
	withWeights := "[[test_weight]]\nweight = \"44 lb/bu\"\nadd = \"0.2 pt\"\n[[test_weight]]\nweight = \"48 lb/bu\"\nadd = \"-0.1 pt\"\n[[test_weight]]\nweight = \"52 lb/bu\"\nadd = \"-0.2 pt\"\n[origin]"
	toml := small(t, "[origin]", withWeights)
	for name, lines := range map[string]string{
		"units in the heading": "40,20,18,17\ntest weight lb/bu,add pt\n44,0.2\n48,-0.1\n52,-0.2\n",
		"units in the figures": "40 dial,20 %,18 %,17 %\n\nTest Weight,add\n44 lb/bu,0.2 pt\n48 lb/bu,-0.1 pt\n52 lb/bu,-0.2 pt\n",
	} {
		t.Run(name, func(t *testing.T) { expectSame(t, smallFromLines(t, "40,20,18,17\n", lines), toml) })
	}
}

// What spreadsheets add of their own: the mark of UTF-8, carriage returns,
// commas to the width of the widest line, quotes around what needs none.
func TestLinesAsSpreadsheetsSaveThem(t *testing.T) {
	want := small(t)
	for name, text := range map[string]string{
		"mark":         "\ufeff" + smallLines,
		"returns":      strings.ReplaceAll(smallLines, "\n", "\r\n"),
		"filled up":    strings.ReplaceAll(smallLines, "\n", ",,\n"),
		"quoted":       strings.ReplaceAll(smallLines, "chart,id,small", `"chart","id","small"`),
		"remarks":      "# from the printed chart\n\n\"# a remark, with a comma\",,\n" + smallLines,
		"origin first": "origin,by,nobody\n" + strings.ReplaceAll(smallLines, "origin,by,nobody\n", ""),
		"cells first":  smallLines[strings.Index(smallLines, "dial,"):] + smallLines[:strings.Index(smallLines, "dial,")],
		"blanks":       strings.ReplaceAll(smallLines, ",", ", "),
	} {
		c, err := Read("small.csv", []byte(text))
		if err != nil {
			t.Errorf("%s: %v", name, err)
			continue
		}
		expectSame(t, c, want)
		// The book keeps a chart's text under its id, without the file's name.
		kept, err := Read("small", []byte(text))
		if err != nil {
			t.Errorf("%s, as the book keeps it: %v", name, err)
			continue
		}
		expectSame(t, kept, want)
	}
}

// One mistake at a time, each with its line and the words it must
// be answered with.
func TestReadLinesRefuses(t *testing.T) {
	for _, c := range []struct {
		name, old, new string
		want           errortest.Want
	}{
		{"unknown key", "chart,crop,corn", "chart,crop,corn\nchart,colour,red", errortest.Invalid("small.csv:5", "chart.colour")},
		{"unknown table", "chart,crop,corn", "chart,crop,corn\nnotes,a,b", errortest.Invalid("notes")},
		{"missing id", "chart,id,small\n", "", errortest.Invalid("chart.id", "chart,title,A small chart", "chart,id,…")},
		{"missing table", "ambient,low,50 °F\nambient,high,90 °F\n", "", errortest.Invalid("ambient")},
		{"example left out", "chart,example,TRUE\n", "", errortest.Invalid("chart,example,true", "chart,example,false")},
		{"example in other words", "chart,example,TRUE", "chart,example,yes", errortest.Invalid("small.csv:3", "chart.example")},
		{"unknown crop", "chart,crop,corn", "chart,crop,maise", errortest.Invalid("small.csv:4", "maise")},
		{"mass without unit", "chart,mass,250 g", "chart,mass,250", errortest.Invalid("small.csv:9", "chart.mass", "\"250\"")},
		{"said twice", "chart,crop,corn", "chart,crop,corn\nchart,crop,oats", errortest.Invalid("small.csv:5", "chart.crop", "4")},
		{"comma in a text", "A small chart", "A small, neat, chart", errortest.Invalid("small.csv:2", "5")},
		{"table alone", "chart,crop,corn", "chart", errortest.Invalid("small.csv:4", "chart")},
		{"open quote", "A small chart", `"A small chart`, errortest.Invalid()},
		{"cell in dial", "30,16,14,13", "30,16,14 dial,13", errortest.Invalid("small.csv:20", "cells", "2", "14 dial")},
		{"decimal comma", "30,16,14,13", `30,16,"14,0",13`, errortest.Invalid("small.csv:20", "cells", "2")},
		{"empty cell", "30,16,14,13", "30,16,,13", errortest.Invalid("small.csv:20", "cells", "2")},
		{"no dial", "30,16,14,13", ",16,14,13", errortest.Invalid("small.csv:20", "row.1.dial")},
		{"cell too few", "30,16,14,13", "30,16,14", errortest.Invalid("small.csv:20", "2", "3")},
		{"cell too many", "30,16,14,13", "30,16,14,13,12", errortest.Invalid("small.csv:20", "4", "3")},
		{"digits swapped", "30,16,14,13", "30,16,14,31", errortest.Invalid("small.csv:20", "80 °F", "31 %", "14 %", "60 °F")},
		{"falls along the dial", "30,16,14,13", "30,16,10,9", errortest.Invalid("small.csv:20", "60 °F", "10 %", "11 %", "20 dial")},
		{"dial gap", "40,20,18,17", "50,20,18,17", errortest.Invalid()},
		{"two headings", "30,16,14,13", "dial,40 °F,60 °F,80 °F\n30,16,14,13", errortest.Invalid("small.csv:20")},
		{"no heading", "dial,40 °F,60 °F,80 °F\n", "", errortest.Invalid("small.csv:18")},
		{"temperatures without unit", "dial,40 °F,60 °F,80 °F", "dial,40,60,80", errortest.Invalid("small.csv:18", "temperatures", "1", "\"40\"")},
		{"one temperature", "dial,40 °F,60 °F,80 °F", "dial,40 °F", errortest.Invalid()},
		{"one row", "30,16,14,13\n40,20,18,17\n", "", errortest.Invalid("1")},
		{"row as a table of keys", "chart,crop,corn", "chart,crop,corn\nrow,dial,20", errortest.Invalid("small.csv:5", "row")},
		{"range beyond cells", "moisture,high,19 %", "moisture,high,21 %", errortest.Invalid("small.csv:11", "10 % to 21 %", "10 %", "20 %")},
		{"test weight, one line", "40,20,18,17\n", "40,20,18,17\ntest weight lb/bu,add pt\n44,0.2\n", errortest.Invalid("1")},
		{"test weight, three figures", "40,20,18,17\n", "40,20,18,17\ntest weight lb/bu,add pt\n44,0.2,0.3\n48,0\n", errortest.Invalid("small.csv:23", "3")},
		{"test weight without unit", "40,20,18,17\n", "40,20,18,17\ntest weight,add\n44,0.2\n48,0\n", errortest.Invalid("test_weight.0.weight", "\"44\"")},
		{"semicolons", smallLines, strings.ReplaceAll(smallLines, ",", ";"), errortest.Invalid("small.csv:1")},
		{"another alphabet", "°", "\xb0", errortest.Invalid("small.csv")},
		{"nothing", smallLines, "", errortest.Invalid("chart")},
	} {
		if !strings.Contains(smallLines, c.old) {
			t.Fatalf("%s: the chart has no %q", c.name, c.old)
		}
		chart, err := Read("small.csv", []byte(strings.ReplaceAll(smallLines, c.old, c.new)))
		var problems tomlfile.Problems
		if chart != nil || !errors.As(err, &problems) {
			t.Errorf("%s: was taken: %v, %v", c.name, chart, err)
			continue
		}
		if !c.want.Met(err) {
			t.Errorf("%s: %q is not in\n%v", c.name, c.want, err)
		}
		if strings.Contains(err.Error(), "[") {
			t.Errorf("%s: the remedy is one for TOML:\n%v", c.name, err)
		}
	}
}

func TestReadLinesReportsEverythingAtOnce(t *testing.T) {
	broken := strings.NewReplacer("chart,crop,corn", "chart,crop,maise", "chart,mass,250 g", "chart,mass,250",
		"30,16,14,13", "30,16,1x,", "40,20,18,17", "50,20,18,17").Replace(smallLines)
	_, err := Read("small.csv", []byte(broken))
	var problems tomlfile.Problems
	errors.As(err, &problems)
	lines := map[int]int{}
	for _, p := range problems {
		lines[p.Line]++
	}
	for line, want := range map[int]int{4: 1, 9: 1, 20: 1, 21: 1} {
		if lines[line] != want {
			t.Errorf("line %d has %d problems, want %d; all are\n%v", line, lines[line], want, err)
		}
	}
}

// Any chart written out as lines and read again says the same.
func TestLinesComeBack(t *testing.T) {
	head := *small(t)
	rapid.Check(t, func(t *rapid.T) {
		drawn, c := anyChart(t), head
		c.dials, c.temperatures, c.cells = drawn.dials, drawn.temperatures, drawn.cells
		c.Moisture = quantity.Span{Low: c.cells[0][len(c.temperatures)-1], High: c.cells[len(c.dials)-1][0]}
		back, err := Read("again.csv", c.Lines())
		if err != nil {
			t.Fatalf("%v\nin\n%s", err, c.Lines())
		}
		expectSame(t, back, &c)
	})
	uneven := small(t, `dial = "40 dial"`, `dial = "1000 dial"`, `mass =`, "uneven_steps = \"the last line of the printed chart\"\nmass =")
	back, err := Read("again.csv", uneven.Lines())
	if err != nil {
		t.Fatal(err)
	}
	expectSame(t, back, uneven)
}

func FuzzReadLines(f *testing.F) {
	f.Add(smallLines)
	f.Add(strings.ReplaceAll(smallLines, "30,16", "30,,16"))
	f.Add("chart,a,b\nrow,1\n1,2\ndial,1\n1\ntest weight,\n,\n")
	f.Add("chart,\x00,\"\n\"")
	f.Add("dial\n1\nchart,temperatures,3\ntest weight\n1,2,3\ntest_weight,a,b")
	f.Fuzz(func(t *testing.T, text string) {
		c, err := Read("fuzz.csv", []byte(text))
		if (c == nil) == (err == nil) {
			t.Fatalf("chart %v with error %v", c, err)
		}
		if c == nil {
			return
		}
		back, err := Read("fuzz.csv", c.Lines())
		if err != nil {
			t.Fatalf("a chart that was taken does not come back: %v\n%s", err, c.Lines())
		}
		expectSame(t, back, c)
	})
}
