package chart

import (
	"bytes"
	"slices"
	"strings"

	"tenthpoint/internal/message"
)

// chartForm is the notation of a kind of chart file, for remedies.
type chartForm struct{ temperatures, uneven, row, testWeight message.Text }

var (
	tomlChart = chartForm{
		temperatures: message.New("Write the heading of every column, like [\"40 °F\", \"50 °F\"]."),
		uneven:       message.New("write uneven_steps = \"why\" under [chart]"),
		row:          message.New("Write a [[row]] with dial and cells for every line of the chart."),
		testWeight:   message.New("Write a [[test_weight]] with weight and add for every line."),
	}
	csvChart = chartForm{
		temperatures: message.New("Head the table with a line like dial,40 °F,50 °F."),
		uneven:       message.New("add a line chart,uneven_steps,why"),
		row:          message.New("Write every line of the chart under the heading: dial, then its cells."),
		testWeight:   message.New("Write every line under the heading: test weight, then the points to add."),
	}
)

// isLines recognizes comma-separated values: by the name, else by the first line, since a chart
// kept in the book has only its text.
func isLines(name string, text []byte) bool {
	switch {
	case strings.HasSuffix(strings.ToLower(name), ".csv"):
		return true
	case strings.HasSuffix(strings.ToLower(name), ".toml"):
		return false
	}
	for line := range strings.Lines(string(withoutMark(text))) {
		line = strings.Trim(withoutQuotes.Replace(line), ",\r\n")
		if line != "" && !strings.HasPrefix(line, "#") {
			return slices.ContainsFunc(lineBeginnings, func(b string) bool { return strings.HasPrefix(strings.ToLower(line), b) })
		}
	}
	return false
}

// lineBeginnings are the possible beginnings of a chart's lines; no line of TOML has them.
var lineBeginnings = []string{"chart,", "moisture,", "ambient,", "origin,", "dial,", "testweight"}

// withoutQuotes strips a line for recognizing its form.
var withoutQuotes = strings.NewReplacer(`"`, "", " ", "", "\t", "")

// withoutMark takes off the mark that spreadsheets put before UTF-8.
func withoutMark(text []byte) []byte { return bytes.TrimPrefix(text, []byte("\ufeff")) }
