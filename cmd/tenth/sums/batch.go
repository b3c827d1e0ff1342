package sums

import (
	"cmp"
	"encoding/csv"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"slices"
	"strings"

	"tenthpoint/cmd/tenth/terminal"
	"tenthpoint/internal/atomicfile"
	"tenthpoint/internal/entry"
	"tenthpoint/internal/grain"
	"tenthpoint/internal/message"
	"tenthpoint/internal/report"
	"tenthpoint/internal/settle"
	"tenthpoint/internal/worksheet"
)

// The columns of a batch, beside one for each factor.
var batchColumns = []string{"load", "commodity", "schedule", "day", "gross", "tare", "net", "moisture", "price", "accept"}

const factorColumn = "factor."

// settledColumns are the columns of the output. Figures are plain, without unit or commas, as a
// spreadsheet expects; the units have columns of their own.
var settledColumns = []string{
	"load", "weight_unit", "net", "moisture", "dockage", "shrink", "handling", "dry",
	"quantity_unit", "quantity", "bushels", "currency", "drying", "discounts", "charges", "adjustments", "value", "payable",
	"edition", "edition_sha256",
}

// batch settles every row of a file.
type batch struct {
	reader
	usual   map[string]string // cells of columns the file does not have
	in      *batchRows
	columns []string
	out     *csv.Writer
	rows    int
	bad     int
	fault   func(error)
}

func (c Settle) batch(t *terminal.Terminal, loads reader) error {
	if err := c.notForBatch(); err != nil {
		return err
	}
	in, err := openTable(c.Batch)
	if err != nil {
		return err
	}
	defer in.Close()
	return written(t, c.Out, in, func(w io.Writer) error {
		b := &batch{
			reader: loads, in: newBatchRows(in), out: csv.NewWriter(w),
			usual: map[string]string{"commodity": c.Commodity, "schedule": c.Schedule, "day": c.Day, "price": c.Price, "accept": strings.Join(c.Accept, " ")},
			fault: func(err error) { terminal.Complain(t.Stderr, t.Printer, err) },
		}
		return b.run(t, c.Batch)
	})
}

// notForBatch refuses flags of one load beside a file of many: none is dropped
// in silence.
func (c Settle) notForBatch() error {
	given := ""
	for _, flag := range []struct {
		name  string
		given bool
	}{
		{"gross", c.Gross != ""}, {"tare", c.Tare != ""}, {"net", c.Net != ""}, {"moisture", c.Moisture != ""},
		{"factor", len(c.Factor) > 0}, {"share", len(c.Share) > 0}, {"json", c.JSON}, {"width", c.Width != 0 && c.Width != usualWidth},
	} {
		if flag.given {
			given += " --" + flag.name
		}
	}
	if given == "" {
		return nil
	}
	return terminal.Refusal("Leave it out, or put it into a column of the file", "with --batch this does nothing:%s", given)
}

// openTable opens a file that rows are read from.
func openTable(path string) (*os.File, error) {
	in, err := os.Open(path)
	if err != nil {
		return nil, terminal.Refusal("Check the path", "the file %s cannot be read: %v", path, errors.Unwrap(err))
	}
	if about, err := in.Stat(); err == nil && about.IsDir() {
		return nil, errors.Join(terminal.Refusal("Name a file in it", "no rows can be read from the folder %s", path), in.Close())
	}
	return in, nil
}

// written passes a writer to a file, which appears whole or not at all, or to standard output. Rows
// that could not be settled do not affect the others. The input file is never overwritten.
func written(t *terminal.Terminal, path string, read *os.File, write func(io.Writer) error) error {
	if path == "" {
		return write(t.Stdout)
	}
	if err := terminal.MayReplace(path, read); err != nil {
		return err
	}
	var wrong error
	err := atomicfile.Replace(path, func(w io.Writer) error {
		wrong = write(w)
		var rows badRows
		if errors.As(wrong, &rows) {
			return nil
		}
		return wrong
	})
	var place *fs.PathError
	if errors.As(err, &place) && place.Path == path {
		return terminal.Refusal("Check the folder, or name another file with --out", "%s cannot be written: %v", path, place.Err)
	}
	return cmp.Or(err, wrong)
}

// badRows is an error with the number of rows that could not be settled, of all rows.
type badRows struct{ bad, rows int }

// Error returns the message in English.
func (b badRows) Error() string { return b.Message().String() }

// Message returns the message.
func (b badRows) Message() message.Text {
	return message.New("%d of %d rows were not settled; mend the rows named above and settle them again", b.bad, b.rows)
}

func (b *batch) run(t *terminal.Terminal, name string) error {
	if err := b.head(name); err != nil {
		return err
	}
	if err := b.out.Write(settledColumns); err != nil {
		return err
	}
	for t.Err() == nil {
		row, err := b.in.next()
		if errors.Is(err, io.EOF) {
			break
		}
		if err != nil && !errors.As(err, new(spoiled)) {
			return err
		}
		b.rows++
		if err == nil {
			err = b.row(row)
		}
		if err != nil {
			b.bad++
			b.fault(atRow(name, b.in.line, err))
		}
	}
	b.out.Flush()
	if err := errors.Join(t.Err(), b.out.Error()); err != nil {
		return err
	}
	if b.bad > 0 {
		return badRows{b.bad, b.rows}
	}
	return nil
}

// head reads the first row and checks its column names.
func (b *batch) head(name string) error {
	first, err := b.in.header(name)
	if err != nil {
		return err
	}
	var wrong []error
	for i, column := range first {
		column = strings.TrimSpace(column)
		if !isBatchColumn(column) {
			wrong = append(wrong, terminal.Refusal("Columns are "+strings.Join(batchColumns, ", ")+", and factor.ID such as factor.test-weight", "%s has a column %q, which is not known", name, column))
		}
		if slices.Contains(first[:i], column) {
			wrong = append(wrong, terminal.Refusal("Keep one of them", "%s has the column %q twice", name, column))
		}
		b.columns = append(b.columns, column)
	}
	for _, needed := range b.needed() {
		if !slices.Contains(b.columns, needed) && b.usual[needed] == "" {
			wrong = append(wrong, terminal.Refusal("Add the column", "%s has no column %q", name, needed))
		}
	}
	return errors.Join(wrong...)
}

// needed returns the columns a file must have: a net replaces gross and tare.
func (b *batch) needed() []string {
	if slices.Contains(b.columns, "net") {
		return []string{"commodity", "moisture"}
	}
	return []string{"commodity", "gross", "tare", "moisture"}
}

func isBatchColumn(name string) bool {
	id, isFactor := strings.CutPrefix(name, factorColumn)
	if !isFactor {
		return slices.Contains(batchColumns, name)
	}
	for _, c := range grain.All() {
		if f, ok := c.FactorCalled(id); ok && f.ID != grain.Moisture {
			return true
		}
	}
	return false
}

// row settles one row and writes it.
func (b *batch) row(row []string) error {
	if len(row) != len(b.columns) {
		return terminal.Refusal("Put a comma for every column, also for one that is empty", "the row has %d cells, the first row names %d columns", len(row), len(b.columns))
	}
	cells := make(terminal.Texts, len(b.columns)+3)
	for name, value := range b.usual {
		cells[name] = value
	}
	for i, name := range b.columns {
		if value := strings.TrimSpace(row[i]); value != "" {
			cells[name] = value
		}
	}
	given, err := b.read(cells)
	if err != nil {
		return err
	}
	if given.facts.Accepted, err = terminal.Accepted(given.edition, strings.Fields(cells["accept"])); err != nil {
		return entry.Fault{Field: "accept", Err: err}
	}
	s, err := settle.Settle(given.facts, given.edition)
	if err != nil {
		return err
	}
	return b.out.Write(settledRow(cells["load"], s))
}

func settledRow(name string, s *settle.Settlement) []string {
	units := s.Edition.Units
	words := map[string]string{
		"load": name, "weight_unit": units.Weight.String(), "quantity_unit": units.Settle.String(), "currency": units.Currency,
		"discounts": discounts(s), "edition": s.Edition.ID, "edition_sha256": s.Edition.Hash,
	}
	for column, step := range terminal.HeadFigures(s) {
		if column != "discounts" { // which names each of them
			words[column] = plainFigure(step)
		}
	}
	row := make([]string, len(settledColumns))
	for i, column := range settledColumns {
		row[i] = report.SpreadsheetCell(words[column])
	}
	return row
}

var bare = strings.NewReplacer(",", "", "$", "")

func plainFigure(step *worksheet.Step) string {
	if settle.AwaitsPrice(step) {
		return step.Note().String()
	}
	figure, _, _ := strings.Cut(bare.Replace(step.Printed()), " ")
	return figure
}

// discounts are the rules that took or paid something, each with its figure.
func discounts(s *settle.Settlement) string {
	var out []string
	for _, d := range s.Deductions {
		if !d.Step.Value().IsZero() {
			out = append(out, fmt.Sprintf("%s %s %s", d.Rule.ID, d.Direction, d.Step.Printed()))
		}
	}
	return strings.Join(out, "; ")
}

// atRow names the row and, where it is known, the column of a fault. Rows are counted as in a
// spreadsheet, the first being the names.
func atRow(file string, line int, err error) error {
	var out []error
	for _, c := range terminal.Complaints(err) {
		where := message.New("%v row %d", file, line)
		if column := columnOf(err); column != "" {
			where = message.New("%s, column %v", where, column)
		}
		out = append(out, c.At(where))
	}
	return errors.Join(out...)
}

func columnOf(err error) string {
	var cell entry.Fault
	if errors.As(err, &cell) {
		return batchColumn(cell.Field)
	}
	var problems settle.Problems
	if errors.As(err, &problems) && len(problems) == 1 {
		return batchColumn(problems[0].Field)
	}
	return ""
}

// batchColumn is the column of a field; empty where there is none.
func batchColumn(field string) string {
	if slices.Contains(batchColumns, field) {
		return field
	}
	if isBatchColumn(factorColumn + field) {
		return factorColumn + field
	}
	return ""
}
