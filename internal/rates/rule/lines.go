package rule

import (
	"strconv"

	"tenthpoint/internal/quantity"
	"tenthpoint/internal/tomlfile"
)

// Line is one thing an edition says, ready to be shown: where it belongs, what
// it is and the words or figure. Lines that an edition leaves out are not there.
type Line struct {
	// Key names the line the same way in every edition, such as
	// "shrink.trigger" or "discount.damage.row over 5.0 % up to 7.0 %".
	Key string
	// Section is the heading it stands under; Label is what it is.
	Section, Label string
	Value          string
	// At is the line of the edition's file that says it, from 1; 0 when the
	// edition has no file. What the file leaves to its [rounding] table stands
	// there.
	At int
}

// Lines gathers what an edition says, heading by heading.
type Lines struct {
	file tomlfile.Places
	// prefix begins the keys of a section; table is where it stands in the
	// file, which is the same but for discounts.
	prefix, table, section string
	list                   []Line
}

// NewLines writes the lines of an edition, with the places they have in its
// file.
func NewLines(file string, text []byte) *Lines {
	return &Lines{file: tomlfile.Locate(file, text)}
}

// All are the lines so far.
func (w *Lines) All() []Line { return w.list }

// Under begins a section whose keys begin with prefix.
func (w *Lines) Under(prefix, section string) {
	w.prefix, w.table, w.section = prefix, prefix, section
}

// Text adds what stands in the file by the key of the line.
func (w *Lines) Text(key, label, value string) { w.TextAt(key, key, label, value) }

// TextAt adds what stands in the file by another key than the line's.
func (w *Lines) TextAt(inFile, key, label, value string) {
	if value != "" {
		w.list = append(w.list, Line{
			Key: w.prefix + "." + key, Section: w.section, Label: label, Value: value, At: w.file.Line(w.table + "." + inFile),
		})
	}
}

// Cell adds a figure, where it is given.
func (w *Lines) Cell(key, label string, c Cell) {
	if c.Given() {
		w.Text(key, label, c.Amount.Written())
	}
}

// Rounding adds a place and rule.
func (w *Lines) Rounding(key, label string, r quantity.Rounding) { w.Text(key, label, r.String()) }

// Rounded adds the rounding of a section, which the file may leave to the
// edition's own.
func (w *Lines) Rounded(r quantity.Rounding, otherwise string) {
	w.Rounding("round", "Rounded to", r)
	if last := &w.list[len(w.list)-1]; last.At == 0 {
		last.At = w.file.Line("rounding." + otherwise)
	}
}

// In moves the section to another table of the file than its keys begin with.
func (w *Lines) In(table string) { w.table = table }

// Row adds a row that is chosen by a factor.
func (w *Lines) Row(list string, i int, b Band, says string) {
	w.TextAt(Nth(list, i), list+" "+b.String(), b.String(), says)
}

// MoistureRow adds a row that is chosen by moisture.
func (w *Lines) MoistureRow(list string, i int, b Band) {
	w.TextAt(Nth(list, i), list+" "+b.String(), "Moisture "+b.String(), b.Cell.Amount.Written())
}

// Nth is the place of an element of a list of tables in the file.
func Nth(list string, i int) string { return list + "." + strconv.Itoa(i) }

// Basis adds the weight that something is taken on.
func (w *Lines) Basis(label string, b Basis) { w.Text("basis", label, b.Words()) }

// Step adds what part of a point counts.
func (w *Lines) Step(s Step) {
	switch {
	case s.Row == "":
	case s.Continuous():
		w.Text("step", "Part of a point", "counts as it is")
	default:
		w.Text("step", "Part of a point", "counts in steps of "+s.Rounding.String())
	}
}

// Untested adds what an untested factor means.
func (w *Lines) Untested(mustTest bool) {
	w.Text("untested", "Not tested", word(mustTest, "the load is not settled", "nothing is taken"))
}
