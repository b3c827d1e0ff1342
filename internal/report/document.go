package report

import (
	"strings"
	"time"
)

// Document is a paper, composed.
type Document struct {
	// House are the lines at the head: the elevator's name, street, town.
	House []string
	Title string
	// About is the line under the title: the day, the ticket, the season.
	About string
	// Marks must be seen before anything else is read, on every page: "EXAMPLE
	// - NOT FOR TRADE".
	Marks  []string
	Blocks []Block
	// Footer is printed at the foot of every page.
	Footer string
	// Language is the language of the elevator, in which the paper is rendered; empty is English,
	// in which it is composed.
	Language string
	// Made is the date of the paper, from the facts it is about, never the
	// clock.
	Made time.Time
}

// Block is one part of a document: [Heading], [Para], [Pairs], [Table],
// [Bars], [Steps], [Signing] or [NewPage].
type Block interface{ isBlock() }

// Heading begins a part.
type Heading struct{ Text string }

// Para is a sentence or more.
type Para struct {
	Text string
	// Strong makes it prominent.
	Strong bool
}

// Pair is a name and its value. A value that is Own is a person's own words or a name, the same in
// every language.
type Pair struct {
	Label, Value string
	Own          bool
}

// Pairs are names with their values, side by side where there is room.
type Pairs struct{ Pairs []Pair }

// Align is the alignment of a column.
type Align int

// Left is for words, Right for figures, which a spreadsheet can calculate with.
const (
	Left Align = iota
	Right
)

// Column is one column of a table. Except for totals, the cells of a column that is Own are names
// and people's own words, the same in every language.
type Column struct {
	Title string
	Align Align
	Own   bool
}

// RowKind is the layout of a row.
type RowKind int

// The kinds of row.
const (
	Plain  RowKind = iota
	Total          // the sum of the rows above
	Struck         // what no longer counts, crossed out
)

// Row is one row of ready strings, a cell for each column.
type Row struct {
	Cells []string
	Kind  RowKind
}

// Table is rows under columns. Empty is the sentence printed when there are no rows. Name is the
// table's name as a file; its Parts are words by themselves, and make the name of its sheet in a
// workbook.
type Table struct {
	Name    string
	Parts   []string
	Columns []Column
	Rows    []Row
	Empty   string
}

// Bars is a bar chart. Heights are per mille of the tallest the chart may
// show; Values are the words over the bars.
type Bars struct {
	Title   string
	Labels  []string
	Heights []int
	Values  []string
	Empty   string
}

// Step is one step of a working: label, figure, and calculation.
type Step struct {
	Label, Figure string
	Explain       []string
	Skipped       bool // a rule that was considered and changed nothing
	// Part makes the step a heading over those that follow; only its label is
	// set.
	Part bool
}

// Steps is a working in the order it was done.
//
// Its composer translates its steps: a formula is made of labels and figures, and only its parts
// can be translated.
type Steps struct{ Steps []Step }

// Signing is lines to sign on.
type Signing struct{ Names []string }

// NewPage starts a new page.
type NewPage struct{}

func (Heading) isBlock() {}
func (Para) isBlock()    {}
func (Pairs) isBlock()   {}
func (Table) isBlock()   {}
func (Bars) isBlock()    {}
func (Steps) isBlock()   {}
func (Signing) isBlock() {}
func (NewPage) isBlock() {}

// Tables lists the tables of the document in order.
func (d Document) Tables() []Table {
	var out []Table
	for _, b := range d.Blocks {
		if t, ok := b.(Table); ok {
			out = append(out, t)
		}
	}
	return out
}

// Table finds a table by its name.
func (d Document) Table(name string) (Table, bool) {
	for _, t := range d.Tables() {
		if t.Name == name {
			return t, true
		}
	}
	return Table{}, false
}

// sheet returns the name of the table's sheet in a workbook.
func (t Table) sheet() string {
	if len(t.Parts) == 0 {
		return t.Name
	}
	return strings.Join(t.Parts, " ")
}

// titles are the words over the columns.
func (t Table) titles() []string {
	out := make([]string, len(t.Columns))
	for i, c := range t.Columns {
		out[i] = c.Title
	}
	return out
}
