package report

import (
	"time"

	"tenthpoint/internal/message"
)

// Document is a paper, composed.
type Document struct {
	// House are the lines at the head: the elevator's name, street, town.
	House []string
	Title message.Text
	// About is the line under the title: the day, the ticket, the season.
	About message.Text
	// Marks must be seen before anything else is read, on every page: "EXAMPLE
	// - NOT FOR TRADE".
	Marks  []message.Text
	Blocks []Block
	// Footer is printed at the foot of every page.
	Footer message.Text
	// Language is the language of the elevator, in which the paper is rendered; empty is English.
	Language string
	// Made is the date of the paper, from the facts it is about, never the
	// clock.
	Made time.Time
}

// Block is one part of a document: [Heading], [Para], [Pairs], [Table],
// [Bars], [Picture], [Steps], [Signing] or [NewPage].
type Block interface{ isBlock() }

// Heading begins a part.
type Heading struct{ Text message.Text }

// Para is a sentence or more.
type Para struct {
	Text message.Text
	// Strong makes it prominent.
	Strong bool
}

// Pair is a label and its value.
type Pair struct{ Label, Value message.Text }

// Pairs are labels with their values, side by side where there is room.
type Pairs struct{ Pairs []Pair }

// Align is the alignment of a column.
type Align int

// Left is for words, Right for figures, which a spreadsheet can calculate with.
const (
	Left Align = iota
	Right
)

// Column is one column of a table. Its unit, if it has one, follows the title.
type Column struct {
	Title message.Text
	Unit  string
	Align Align
}

// RowKind is the layout of a row.
type RowKind int

// The kinds of row.
const (
	Plain  RowKind = iota
	Total          // the sum of the rows above
	Struck         // what no longer counts, crossed out
)

// Row is one row: for each column words, a name ([message.Name]) or a figure ([Figure]).
type Row struct {
	Cells []message.Text
	Kind  RowKind
}

// Table is rows under columns. Empty is the sentence printed when there are no rows. Name is what
// it is called, also as the sheet of a workbook.
type Table struct {
	Name    message.Text
	Columns []Column
	Rows    []Row
	Empty   message.Text
}

// Bars is a bar chart. Heights are per mille of the tallest the chart may
// show; Values are the words over the bars.
type Bars struct {
	Title   message.Text
	Labels  []message.Text
	Heights []int
	Values  []message.Text
	Empty   message.Text
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
type Signing struct{ Names []message.Text }

// NewPage starts a new page.
type NewPage struct{}

func (Heading) isBlock() {}
func (Para) isBlock()    {}
func (Pairs) isBlock()   {}
func (Table) isBlock()   {}
func (Bars) isBlock()    {}
func (Picture) isBlock() {}
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

// Table finds a table by its name in English.
func (d Document) Table(name string) (Table, bool) {
	for _, t := range d.Tables() {
		if t.Name.String() == name {
			return t, true
		}
	}
	return Table{}, false
}
