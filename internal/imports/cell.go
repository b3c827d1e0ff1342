package imports

import (
	"fmt"
	"slices"
	"strings"

	"tenthpoint/internal/quantity"
)

// reader reads one row cell by cell and notes what is wrong.
type reader struct {
	row     Row
	columns []string
	usual   Defaults
}

func (r *reader) wrong(column, format string, args ...any) {
	r.row.Problems = append(r.row.Problems, Problem{r.row.Line, column, fmt.Sprintf(format, args...)})
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
func (r *reader) needed(column, what string) string {
	text := r.text(column)
	if text == "" {
		r.wrong(column, "empty; write %s", what)
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
	unit := r.usual.Weight
	for _, u := range []quantity.Unit{quantity.Lb, quantity.Kg} {
		if strings.HasSuffix(text, u.String()) {
			unit = u
		}
	}
	return r.figure(column, text, quantity.Field{Unit: unit, Places: 2, Min: quantity.Of("0.01", unit), Max: quantity.Int(9_999_999, unit)})
}

func (r *reader) figure(column, text string, f quantity.Field) (quantity.Amount, bool) {
	f.Name = column
	a, err := f.Parse(text)
	if err != nil {
		r.wrong(column, "%s", err)
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
		r.wrong(column, "%s", err)
		return d, false
	}
	return d, true
}

// part is one owner's share: parts of a whole.
type part struct {
	owner     string
	parts, of quantity.Amount
}

// shares reads "G3=2/3; G2=1/3" or "G3=66.5 %; G2=33.5 %"; they must add to the
// whole.
func (r *reader) shares(column string) []part {
	text := r.text(column)
	if text == "" {
		return nil
	}
	var out []part
	total := quantity.Zero(quantity.Plain)
	for _, one := range strings.Split(text, ";") {
		p, err := partIn(one)
		if err != nil {
			r.wrong(column, "%s", err)
			return nil
		}
		out = append(out, p)
		total = total.Add(p.parts.Div(p.of))
	}
	if !total.Equal(quantity.Int(1, quantity.Plain)) {
		r.wrong(column, "the shares add to %s %%, not to 100 %%; mend them", total.Mul(quantity.Int(100, quantity.Plain)).Figure())
		return nil
	}
	return out
}

func partIn(text string) (part, error) {
	owner, value, ok := strings.Cut(text, "=")
	owner, value = strings.TrimSpace(owner), strings.TrimSpace(value)
	top, bottom, isFraction := strings.Cut(value, "/")
	if percent, isPercent := strings.CutSuffix(value, "%"); isPercent {
		top, bottom, isFraction = percent, "100", true
	}
	if !ok || owner == "" || !isFraction {
		return part{}, fmt.Errorf("%q is no share; write owner and part, like G2=1/3 or G2=33.5%%, with a semicolon between owners", strings.TrimSpace(text))
	}
	count := quantity.Field{Name: "the share of " + owner, Places: 4, Min: quantity.Of("0.0001", quantity.Plain), Max: quantity.Int(1_000_000, quantity.Plain)}
	parts, err := count.Parse(top)
	if err != nil {
		return part{}, err
	}
	of, err := count.Parse(bottom)
	return part{owner, parts, of}, err
}
