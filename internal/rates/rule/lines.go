package rule

import (
	"strconv"

	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/tomlfile"
)

// Line is one rule of an edition as posted: section, label and value. Rules an edition leaves out
// have no line.
type Line struct {
	// Key names the line the same way in every edition, such as
	// "shrink.trigger" or "discount.damage.row over 5.0 % up to 7.0 %".
	Key string
	// Section is the heading of the line; Label is its name.
	Section, Label, Value message.Text
	// At is the line of the edition's file, from 1; 0 when the edition has no file. For what the
	// file leaves to its [rounding] table it is the line there.
	At int
}

// Lines collects the lines of an edition, heading by heading.
type Lines struct {
	file tomlfile.Places
	// prefix begins the keys of a section; table is its name in the file, which is the same except
	// for discounts.
	prefix, table string
	section       message.Text
	list          []Line
}

// NewLines writes the lines of an edition, with the places they have in its
// file.
func NewLines(file string, text []byte) *Lines {
	return &Lines{file: tomlfile.Locate(file, text)}
}

// All are the lines so far.
func (w *Lines) All() []Line { return w.list }

// Under begins a section whose keys begin with prefix.
func (w *Lines) Under(prefix string, section message.Text) {
	w.prefix, w.table, w.section = prefix, prefix, section
}

// Name adds a name or a person's own words, by the key of the line.
func (w *Lines) Name(key string, label message.Text, own string) {
	if own != "" {
		w.Text(key, label, message.New("%v", own))
	}
}

// Text adds a text that the file has under the same key as the line.
func (w *Lines) Text(key string, label, value message.Text) { w.TextAt(key, key, label, value) }

// TextAt adds a text that the file has under another key than the line's.
func (w *Lines) TextAt(inFile, key string, label, value message.Text) {
	if !value.IsZero() {
		w.list = append(w.list, Line{
			Key: w.prefix + "." + key, Section: w.section, Label: label, Value: value, At: w.file.Line(w.table + "." + inFile),
		})
	}
}

// Cell adds a figure, if there is one.
func (w *Lines) Cell(key string, label message.Text, c Cell) {
	if c.Given() {
		w.Text(key, label, message.New("%s", c.Amount.Written()))
	}
}

// Rounding adds a place and rule.
func (w *Lines) Rounding(key string, label message.Text, r quantity.Rounding) {
	w.Text(key, label, r.Message())
}

// Rounded adds the rounding of a section, which the file may leave to the
// edition's own.
func (w *Lines) Rounded(r quantity.Rounding, otherwise string) {
	w.Rounding("round", message.New("Rounded to"), r)
	if last := &w.list[len(w.list)-1]; last.At == 0 {
		last.At = w.file.Line("rounding." + otherwise)
	}
}

// In moves the section to another table of the file than its keys begin with.
func (w *Lines) In(table string) { w.table = table }

// Row adds a row that is chosen by a factor.
func (w *Lines) Row(list string, i int, b Band, says message.Text) {
	w.TextAt(Nth(list, i), list+" "+b.String(), b.Message(), says)
}

// MoistureRow adds a row that is chosen by moisture.
func (w *Lines) MoistureRow(list string, i int, b Band) {
	w.TextAt(Nth(list, i), list+" "+b.String(), message.New("Moisture %s", b), message.New("%s", b.Cell.Amount.Written()))
}

// Nth is the place of an element of a list of tables in the file.
func Nth(list string, i int) string { return list + "." + strconv.Itoa(i) }

// Basis adds the weight that something is taken on.
func (w *Lines) Basis(label message.Text, b Basis) { w.Text("basis", label, b.Message()) }

// Step adds what part of a point counts.
func (w *Lines) Step(s Step) {
	switch {
	case s.Source.IsZero():
	case s.Continuous():
		w.Text("step", message.New("Part of a point"), message.New("counts as it is"))
	default:
		w.Text("step", message.New("Part of a point"), message.New("counts in steps of %s", s.Rounding))
	}
}

// Untested adds the effect of an untested factor.
func (w *Lines) Untested(mustTest bool) {
	without := message.New("nothing is taken")
	if mustTest {
		without = message.New("the load is not settled")
	}
	w.Text("untested", message.New("Not tested"), without)
}
