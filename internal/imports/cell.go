package imports

import (
	"slices"
	"strings"

	"tenthpoint/internal/entry"
	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
)

// reader reads one row cell by cell and collects mistakes.
type reader struct {
	row     Row
	columns []string
	usual   Defaults
}

func (r *reader) wrong(column string, reason message.Text) {
	r.row.Problems = append(r.row.Problems, Problem{r.row.Line, column, reason})
}

// text is a cell; empty for a column that is not there.
func (r *reader) text(column string) string {
	i := slices.Index(r.columns, column)
	if i < 0 {
		return ""
	}
	return strings.TrimSpace(r.row.Cells[i])
}

// needed is a cell that must not be empty.
func (r *reader) needed(column string, what message.Text) string {
	text := r.text(column)
	if text == "" {
		r.wrong(column, message.New("empty; write %s", what))
	}
	return text
}

// weight reads a weight in lb or kg; without a unit it is in the usual one. ok
// is false for an empty cell and for one that could not be read.
func (r *reader) weight(column string) (a quantity.Amount, ok bool) {
	text := r.text(column)
	if text == "" {
		return a, false
	}
	a, err := entry.ParseWeight(column, text, r.usual.House.Profile().WeightUnit())
	if err != nil {
		r.wrong(column, message.Of(err))
		return a, false
	}
	return a, true
}

// date reads a day; ok is false for an empty cell and for one that could not be
// read.
func (r *reader) date(column string) (d quantity.Date, ok bool) {
	text := r.text(column)
	if text == "" {
		return d, false
	}
	d, err := quantity.ParseDate(text)
	if err != nil {
		r.wrong(column, message.Of(err))
		return d, false
	}
	return d, true
}

// shares reads "G3=2/3; G2=1/3" or "G3=66.5 %; G2=33.5 %"; they must add to the
// whole.
func (r *reader) shares(column string) []entry.Share {
	text := r.text(column)
	if text == "" {
		return nil
	}
	all, err := entry.ParseShares(text)
	if err != nil {
		r.wrong(column, inList(err))
	}
	return all
}

func shareForm(text string) message.Text {
	return message.New("%q is no share; write owner and part, like G2=1/3 or G2=33.5%%, with a semicolon between owners", text)
}
