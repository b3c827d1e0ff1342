package chart

import (
	"bytes"
	"encoding/csv"
	"errors"
	"fmt"
	"io"
	"strings"
	"unicode/utf8"

	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/tomlfile"
)

// A chart may also be written in a spreadsheet and saved as comma-separated
// values. The lines before the table are table, key, value; then the printed
// chart follows as it is printed:
//
//	chart,id,example-corn-250g
//	chart,title,"Corn under 20 %, 250 g"
//	chart,mass,250 g
//	moisture,low,8 %
//	origin,by,who issued it
//	dial,40 °F,50 °F,60 °F
//	20,8.28,8.04,7.80
//	25,9.21,8.96,8.71
//	test weight lb/bu,add pt
//	44,0.2
//	48,0
//
// Tables and keys are those of the TOML form. Under the two headings the unit
// may be left out: the first column is the dial, the cells are percent. Lines
// that are empty or begin with # say nothing.

// mostBytes bounds a file; the largest honest chart is a few hundred lines.
const mostBytes = 1 << 20

// chartLines takes a file of lines apart.
type chartLines struct {
	values map[string]any
	at     map[string]int
	table  string        // the table that bare figures belong to: "row", "test_weight" or none yet
	units  [2]string     // of its first column and of the others
	wrong  []wrongInLine // found while taking apart
}

type wrongInLine struct {
	line         int
	what, remedy message.Text
}

// linesFile reads a chart's lines into the tables that TOML would have given.
func linesFile(name string, text []byte) *tomlfile.File {
	l := &chartLines{values: map[string]any{}, at: map[string]int{}}
	plain := withoutMark(text)
	if l.readable(plain) {
		l.read(plain)
	}
	file := tomlfile.Lines(name, plain, l.values, l.at)
	for _, w := range l.wrong {
		file.AddProblem(w.line, w.what, w.remedy)
	}
	return file
}

func (l *chartLines) refuse(line int, what, remedy message.Text) {
	l.wrong = append(l.wrong, wrongInLine{line, what, remedy})
}

// readable refuses files that a spreadsheet saved some other way.
func (l *chartLines) readable(text []byte) bool {
	switch {
	case len(text) > mostBytes:
		l.refuse(0, message.New("the file has %d bytes; a chart has at most %d", len(text), mostBytes), message.New("Check that this is the right file."))
	case !utf8.Valid(text):
		l.refuse(0, message.New("the file is not in UTF-8"), message.New("Save it as CSV UTF-8, so that ° survives."))
	case bytes.HasPrefix(text, []byte("chart;")):
		l.refuse(1, message.New("the fields are parted by semicolons"), message.New("Save it with commas between the fields and points in the figures."))
	default:
		return true
	}
	return false
}

func (l *chartLines) read(text []byte) {
	r := csv.NewReader(bytes.NewReader(text))
	r.FieldsPerRecord = -1
	for {
		fields, err := r.Read()
		if errors.Is(err, io.EOF) {
			return
		}
		var parse *csv.ParseError
		if errors.As(err, &parse) {
			l.refuse(parse.Line, message.New("this is not a line of comma-separated values: %v", parse.Err), message.New("Mend the quotes: a field with a comma stands in one pair of them."))
			return
		}
		line, _ := r.FieldPos(0)
		l.record(line, trimmed(fields))
	}
}

// trimmed takes off blanks, and the empty fields a spreadsheet fills lines up
// with.
func trimmed(fields []string) []string {
	for i := range fields {
		fields[i] = strings.TrimSpace(fields[i])
	}
	for len(fields) > 0 && fields[len(fields)-1] == "" {
		fields = fields[:len(fields)-1]
	}
	return fields
}

const testWeightHeading = "test weight"

func (l *chartLines) record(line int, fields []string) {
	if len(fields) == 0 || strings.HasPrefix(fields[0], "#") {
		return
	}
	first := strings.ToLower(fields[0])
	switch {
	case first == "dial":
		l.temperatures(line, fields[1:])
	case strings.HasPrefix(first, testWeightHeading):
		l.testWeights(line, fields)
	case isFigure(first), first == "" && l.table != "":
		l.row(line, fields)
	default:
		l.key(line, fields)
	}
}

// isFigure reports whether a text begins as a figure does.
func isFigure(text string) bool { return strings.IndexAny(text, "0123456789.+-") == 0 }

func (l *chartLines) temperatures(line int, headings []string) {
	if l.at["chart.temperatures"] > 0 {
		l.refuse(line, message.New("the chart has a second heading of temperatures"), message.New("Leave one of them."))
		return
	}
	l.set(line, "chart", "temperatures", texts(headings))
	l.table, l.units = "row", [2]string{quantity.Dial.String(), quantity.Percent.String()}
}

// testWeights begins the second table; its heading may carry the units.
func (l *chartLines) testWeights(line int, fields []string) {
	l.table = "test_weight"
	l.units = [2]string{strings.TrimSpace(fields[0][len(testWeightHeading):]), quantity.Point.String()}
	if len(fields) > 1 {
		_, unit, found := strings.Cut(fields[1], " ")
		if found {
			l.units[1] = unit
		}
	}
	if _, begun := l.values[l.table]; !begun {
		l.values[l.table], l.at[l.table] = []map[string]any{}, line
	}
}

// row is one line of figures under a heading.
func (l *chartLines) row(line int, fields []string) {
	if l.table == "" {
		l.refuse(line, message.New("figures stand here before any heading"), csvChart.temperatures)
		return
	}
	row := map[string]any{}
	if l.table == "row" {
		cells := make([]string, len(fields)-1)
		for i, cell := range fields[1:] {
			cells[i] = withUnit(cell, l.units[1])
		}
		row["dial"], row["cells"] = withUnit(fields[0], l.units[0]), texts(cells)
	} else {
		row["weight"] = withUnit(fields[0], l.units[0])
		if len(fields) > 1 {
			row["add"] = withUnit(fields[1], l.units[1])
		}
		if len(fields) > 2 {
			l.refuse(line, message.New("this line has %d figures; a test weight has one to add", len(fields)), csvChart.testWeight)
		}
	}
	rows, _ := l.values[l.table].([]map[string]any)
	l.at[fmt.Sprintf("%s.%d", l.table, len(rows))] = line
	l.values[l.table] = append(rows, row)
}

// withUnit adds the unit of its heading to a bare figure.
func withUnit(figure, unit string) string {
	if figure == "" || unit == "" || strings.Trim(figure, "0123456789.,+-") != "" {
		return figure
	}
	return figure + " " + unit
}

// texts converts a list to the type TOML uses.
func texts(fields []string) []any {
	out := make([]any, len(fields))
	for i, f := range fields {
		out[i] = f
	}
	return out
}

// key is a line of table, key and value.
func (l *chartLines) key(line int, fields []string) {
	var remedy = message.New("Write table, key and value, like chart,mass,250 g; a text with a comma stands in quotes.")
	if len(fields) > 3 {
		l.refuse(line, message.New("this line has %d fields where three belong", len(fields)), remedy)
		return
	}
	if len(fields) < 2 {
		l.refuse(line, message.New("%q alone says nothing", fields[0]), remedy)
		return
	}
	value := ""
	if len(fields) == 3 {
		value = fields[2]
	}
	l.set(line, fields[0], fields[1], flagOrText(value))
}

// flagOrText parses true and false, also as spreadsheets capitalise them.
func flagOrText(text string) any {
	switch strings.ToLower(text) {
	case "true":
		return true
	case "false":
		return false
	}
	return text
}

func (l *chartLines) set(line int, table, key string, value any) {
	path := table + "." + key
	if before := l.at[path]; before > 0 {
		l.refuse(line, message.New("%v stands here and on line %d", path, before), message.New("Leave one of them."))
		return
	}
	if table == "row" || table == "test_weight" {
		l.refuse(line, message.New("%v is no table of keys", table), csvChart.row)
		return
	}
	values, ok := l.values[table].(map[string]any)
	if !ok {
		values = map[string]any{}
		l.values[table], l.at[table] = values, line
	}
	values[key], l.at[path] = value, line
}
