package imports

import (
	"bytes"
	"encoding/csv"
	"errors"
	"io"
	"slices"
	"strings"

	"tenthpoint/internal/elevator"
	"tenthpoint/internal/entry"
	"tenthpoint/internal/message"
	"tenthpoint/internal/opening"
)

// Kind is the type of a list's rows.
type Kind string

// The lists that can be taken over.
const (
	Growers Kind = "growers"
	Trucks  Kind = "trucks"
	Loads   Kind = "loads"
	// Temperatures are readings of the cables in bins.
	Temperatures Kind = "temperatures"
	// Openings is what lies in the bins and whose it is, on the evening the books are opened.
	Openings Kind = "opening"
)

// Problem is one mistake in a list: its line, its column if it has one, and the reason with a
// remedy.
type Problem struct {
	Line   int
	Column string
	Reason message.Text
}

// String is the problem in English: "line 12, tare: ...".
func (p Problem) String() string { return p.Message().String() }

// Message returns the problem with its place.
func (p Problem) Message() message.Text {
	if p.Column == "" {
		return message.New("line %d: %s", p.Line, p.Reason)
	}
	return message.New("line %d, %v: %s", p.Line, p.Column, p.Reason)
}

// Row is one row as read. Exactly one of Grower, Truck, Past, Cable and Opening is set when it
// has no problems.
type Row struct {
	Line     int
	Cells    []string
	Grower   *elevator.Grower
	Truck    *elevator.Truck
	Past     *Past
	Cable    *Cable
	Opening  *opening.Entry
	Problems []Problem
	// Remarks are warnings about a past load. It can be imported anyway: it was ticketed long ago.
	Remarks []Problem
}

// List is a file as read.
type List struct {
	Kind    Kind
	Columns []string
	Rows    []Row
}

// Defaults are the values a list leaves out: its elevator, and its own name.
type Defaults struct {
	House entry.House
	Name  string
}

// A list that somebody kept has some thousand rows. Longer ones are taken in parts, and a file that
// is something else is refused before it fills the memory.
const (
	MostBytes = 32 << 20
	MostRows  = 200_000
)

// Read reads a list. The problems are those of the file as a whole, such as an unknown column; with
// any of them no row is read. The mistakes of a row are in the row.
func Read(kind Kind, text []byte, usual Defaults) (List, []Problem) {
	list := List{Kind: kind}
	if _, known := columns[kind]; !known {
		return list, []Problem{{Line: 1, Reason: message.New("%q is no kind of list; choose growers, trucks, loads or temperatures", kind)}}
	}
	if len(text) > MostBytes || bytes.Count(text, []byte("\n")) > MostRows {
		return list, []Problem{{Line: 1, Reason: message.New("the file is longer than %d rows or %d MiB; part it, and take the parts over one after the other", MostRows, MostBytes>>20)}}
	}
	in := csv.NewReader(bytes.NewReader(bytes.TrimPrefix(text, []byte("\ufeff"))))
	in.FieldsPerRecord, in.TrimLeadingSpace = -1, true
	head, err := in.Read()
	if err != nil {
		return list, []Problem{{Line: 1, Reason: message.New("the file has no heading row; name the columns in it: %s", known(kind))}}
	}
	for _, name := range head {
		list.Columns = append(list.Columns, strings.ToLower(strings.TrimSpace(name)))
	}
	if problems := checkColumns(kind, list.Columns); len(problems) > 0 {
		return list, problems
	}
	for {
		cells, err := in.Read()
		if errors.Is(err, io.EOF) {
			break
		}
		list.Rows = append(list.Rows, list.row(in, cells, err, usual))
	}
	list.repeated()
	return list, nil
}

// quotesDiffer is the mistake of a row that belongs to no cell.
var quotesDiffer = message.New("the quotation marks do not match; write \"\" for one inside a cell")

// row reads one row; err is the error of the CSV reader.
func (l List) row(in *csv.Reader, cells []string, err error, usual Defaults) Row {
	if len(cells) == 0 {
		line := 0
		var broken *csv.ParseError
		if errors.As(err, &broken) {
			line = broken.StartLine
		}
		return Row{Line: line, Problems: []Problem{{Line: line, Reason: quotesDiffer}}}
	}
	line, _ := in.FieldPos(0)
	r := reader{row: Row{Line: line, Cells: cells}, columns: l.Columns, usual: usual}
	if err != nil {
		r.wrong("", quotesDiffer)
		return r.row
	}
	if len(cells) != len(l.Columns) {
		r.wrong("", message.New("there are %d cells for %d columns; a comma inside a cell needs quotation marks round the cell", len(cells), len(l.Columns)))
		return r.row
	}
	switch l.Kind {
	case Growers:
		r.grower()
	case Trucks:
		r.truck()
	case Loads:
		r.past()
	case Temperatures:
		r.cable()
	case Openings:
		r.opening()
	}
	return r.row
}

// repeated finds codes that are in the list twice: which of the two would
// count is not for a program to choose.
func (l List) repeated() {
	first := map[string]int{}
	for i := range l.Rows {
		row := &l.Rows[i]
		key, column := row.key()
		if key == "" {
			continue
		}
		if line, taken := first[key]; taken {
			row.Problems = append(row.Problems, Problem{row.Line, column, message.New("%q stands on line %d already; keep one of the two", key, line)})
		} else {
			first[key] = row.Line
		}
	}
}

// key is the value that must be unique in a list, and its column.
func (r Row) key() (key, column string) {
	switch {
	case r.Grower != nil:
		return r.Grower.ID, "code"
	case r.Truck != nil:
		return r.Truck.ID, "number"
	case r.Past != nil:
		return r.Past.OldTicket(), "old_ticket"
	case r.Cable != nil:
		return r.Cable.Bin + " " + r.Cable.Day + " " + r.Cable.Readings, "readings"
	}
	return "", ""
}

// Good counts the rows without a problem.
func (l List) Good() int {
	n := 0
	for _, r := range l.Rows {
		if len(r.Problems) == 0 {
			n++
		}
	}
	return n
}

// Problems are all that is wrong with the rows, in the order of the file.
func (l List) Problems() []Problem {
	var out []Problem
	for _, r := range l.Rows {
		out = append(out, r.Problems...)
	}
	return out
}

// checkColumns names columns that are not known, missing or there twice.
func checkColumns(kind Kind, have []string) []Problem {
	var problems []Problem
	wrong := func(reason message.Text) { problems = append(problems, Problem{Line: 1, Reason: reason}) }
	for i, name := range have {
		if slices.Contains(have[:i], name) {
			wrong(message.New("the column %q is there twice; keep one", name))
		} else if !isKnown(kind, name) {
			wrong(message.New("the column %q is not known in a list of %s; known are %s. Rename it or take it out", name, string(kind), known(kind)))
		}
	}
	for _, c := range columns[kind] {
		if c.needed && !slices.Contains(have, c.name) {
			wrong(message.New("the column %q is missing; every row needs it", c.name))
		}
	}
	return problems
}
