package rates

import (
	"fmt"
	"strings"

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

// Lines is the whole edition in the order of its file, for a manager to read
// and for [Diff] to compare.
func (e *Edition) Lines() []Line {
	w := &lineWriter{file: tomlfile.Locate(e.File, e.Text)}
	w.head(e)
	w.origin(e.Origin)
	w.units(e)
	w.rounding(e.Rounding)
	w.dockage(e.Dockage)
	w.shrink(e.Shrink)
	w.handling(e.Handling)
	w.drying(e.Drying)
	for i, d := range e.Discounts {
		w.discount(i, d)
	}
	w.under("shares", "Shares")
	w.text("remainder", "What rounding leaves goes to the owner", e.Shares.Remainder)
	return w.lines
}

// lineWriter gathers lines under a heading.
type lineWriter struct {
	file tomlfile.Places
	// prefix begins the keys of a section; table is where it stands in the
	// file, which is the same but for discounts.
	prefix, table, section string
	lines                  []Line
}

func (w *lineWriter) under(prefix, section string) {
	w.prefix, w.table, w.section = prefix, prefix, section
}

// text adds what stands in the file by the key of the line.
func (w *lineWriter) text(key, label, value string) { w.textAt(key, key, label, value) }

// textAt adds what stands in the file by another key than the line's.
func (w *lineWriter) textAt(inFile, key, label, value string) {
	if value != "" {
		w.lines = append(w.lines, Line{
			Key: w.prefix + "." + key, Section: w.section, Label: label, Value: value, At: w.file.Line(w.table + "." + inFile),
		})
	}
}

func (w *lineWriter) cell(key, label string, c Cell) {
	if c.Given() {
		w.text(key, label, c.Amount.Written())
	}
}

func (w *lineWriter) place(key, label string, r quantity.Rounding) { w.text(key, label, r.String()) }

// round adds the rounding of a section, which the file may leave to the
// edition's own.
func (w *lineWriter) round(r quantity.Rounding, otherwise string) {
	w.place("round", "Rounded to", r)
	if last := &w.lines[len(w.lines)-1]; last.At == 0 {
		last.At = w.file.Line("rounding." + otherwise)
	}
}

func (w *lineWriter) head(e *Edition) {
	w.under("edition", "Edition")
	w.text("id", "Id", e.ID)
	w.text("title", "Title", e.Title)
	w.text("schedule", "Schedule", e.Schedule)
	w.text("commodity", "Commodity", e.Commodity.Name)
	w.text("status", "Status", e.Status.Words())
	w.textAt("from", "period", "In force", e.Period())
	w.text("corrects", "Corrects", e.Corrects)
	w.text("order", "Order of deductions", strings.Join(e.Order, ", "))
}

func (w *lineWriter) origin(o Origin) {
	w.under("origin", "Where it comes from")
	w.text("issued", "Issued", o.Issued.String())
	w.text("by", "By", o.By)
	w.text("document", "Document", o.Document)
	w.text("note", "Note", o.Note)
}

func (w *lineWriter) units(e *Edition) {
	w.under("units", "Units")
	w.text("weight", "Weights are in", e.Units.Weight.String())
	w.text("settle", "Settled by", e.Units.Settle.String())
	w.text("currency", "Money", e.Units.Currency)
	if e.Units.HasBushels() {
		w.text("bushel", "Bushel weight", fmt.Sprintf("%s (%s)", e.Units.Bushel.Written(), e.Units.BushelSource))
	}
}

func (w *lineWriter) rounding(p Places) {
	w.under("rounding", "Rounding")
	w.place("moisture", "Moisture", p.Moisture)
	w.place("weight", "Weights", p.Weight)
	w.place("quantity", "Bushels, hundredweight, tonnes", p.Quantity)
	w.place("money", "Money", p.Money)
}

// ExampleMark stands wherever an example edition shows.
const ExampleMark = "example - not for trade"

// Words is the status for people.
func (s Status) Words() string {
	switch s {
	case Example:
		return ExampleMark
	case House:
		return "posted house rates"
	}
	return "restates a published rule"
}
