package imports

import (
	"errors"
	"fmt"
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"

	"tenthpoint/internal/entry"
	"tenthpoint/internal/load"
	"tenthpoint/internal/settle"
)

// Past is a load of the time before the book: what was weighed and what was
// found. What comes of it is settled again under the rates of its day.
type Past struct {
	OldTicket string // its number in the old books
	Facts     entry.Facts
}

// pastCell is a cell of a past load: the field its text is typed into, and what to
// write where it must not be empty.
type pastCell struct{ column, field, needed string }

// pastCells are the cells in the order their problems are told.
var pastCells = []pastCell{
	{"grower", "grower", "the grower's code"}, {"truck", "truck", "its number or plate"},
	{"driver", "driver", ""}, {"bin", "bin", ""}, {"contract", "contract", ""}, {"crop_year", "crop", ""}, {"remark", "remark", ""},
	{"day", "day", "the day it was delivered, like 2026-09-14"}, {"disposition", "terms", ""}, {"shares", "shares", ""},
	{"gross", "gross", "the weight of the loaded truck"}, {"tare", "tare", "the weight of the empty truck"},
	{"commodity", "commodity", "the grain, such as corn"}, {"moisture", "moisture", "the moisture in percent"},
}

// past reads a row of the list of loads: its cells are texts of a load's form. A
// row without a problem is settled, to see whether it can be.
func (r *reader) past() {
	form := entry.New(r.usual.House, entry.Start{
		Past: true, Direction: load.Inbound,
		Origin: entry.Origin{Moisture: "from the old books", Price: fmt.Sprintf("old books, line %d", r.row.Line)},
		Reason: func(string) string { return fmt.Sprintf("past load, from line %d of %s", r.row.Line, r.usual.Name) },
	})
	cells := r.pastCells()
	for _, c := range cells {
		if text := r.text(c.column); text != "" {
			form.Set(c.field, text)
		}
	}
	old := r.text("old_ticket")
	if old != "" {
		form.Set("remark", "old ticket "+old+". "+r.text("remark"))
	}
	r.refused(form, cells)
	if len(r.row.Problems) == 0 {
		r.settles(form, cells)
	}
	if len(r.row.Problems) == 0 {
		r.row.Past = &Past{OldTicket: old, Facts: form.Opening()}
	}
}

// pastCells are the cells of this list: with its factors, and the price last.
func (r *reader) pastCells() []pastCell {
	cells := slices.Clone(pastCells)
	for _, column := range r.columns {
		if id, isFactor := strings.CutPrefix(column, factorColumn); isFactor {
			cells = append(cells, pastCell{column, id, ""})
		}
	}
	return append(cells, pastCell{"price", "price", ""})
}

// refused tells what is empty and must not be, and what cannot stand. Without a
// grain there is no telling what its results and its price should be.
func (r *reader) refused(form *entry.Form, cells []pastCell) {
	refused := form.Refused()
	for _, c := range cells {
		if text := r.text(c.column); text == "" && c.needed != "" {
			r.wrong(c.column, "empty; write %s", c.needed)
		} else if err := refused[c.field]; err != nil {
			r.wrong(c.column, "%s", inList(err))
		}
		switch c.column {
		case "tare":
			r.agree(form.Facts().Weighed)
		case "commodity":
			if form.Commodity() == "" {
				return
			}
		}
	}
}

// inList says what is wrong with a cell, and what to do about it in a list.
func inList(err error) string {
	var unknown entry.Unknown
	var notTested entry.NotTested
	var notShare entry.NotShare
	switch {
	case errors.As(err, &notTested):
		return fmt.Sprintf("%s is not tested for this; leave the cell empty", notTested.Commodity)
	case errors.As(err, &notShare):
		return shareForm(notShare.Text)
	case errors.As(err, &unknown) && unknown.List == entry.GrowerList:
		return noGrower(unknown.Text)
	case errors.As(err, &unknown) && unknown.List == entry.CommodityList:
		c, err := entry.Commodity(unknown.Text)
		if err != nil {
			return err.Error()
		}
		return c.ID + " is not taken here; add it in the set-up with its schedule of rates"
	case errors.As(err, &unknown) && unknown.List == entry.BinList:
		return fmt.Sprintf("there is no pit or bin %q here; add it first, or write one of %s", unknown.Text, strings.Join(unknown.Known, ", "))
	}
	text := strings.TrimPrefix(err.Error(), "Day: ") // the column is named already
	first, size := utf8.DecodeRuneInString(text)
	return string(unicode.ToLower(first)) + text[size:]
}

func noGrower(text string) string {
	return fmt.Sprintf("there is no grower %q; take the list of growers over first, or write the code as it is there", text)
}

// agree holds gross and tare against each other.
func (r *reader) agree(weighed []load.Weighing) {
	if len(weighed) != 2 {
		return
	}
	gross, tare := weighed[0].Weight, weighed[1].Weight
	switch {
	case gross.Unit() != tare.Unit():
		r.wrong("tare", "gross is %s and tare is %s; write both in one unit", gross, tare)
	case !gross.More(tare):
		r.wrong("tare", "net would be %s (gross %s - tare %s); were the two swapped?", gross.Sub(tare), gross.Figure(), tare.Figure())
	}
}

// settles tells why the load could not be settled.
func (r *reader) settles(form *entry.Form, cells []pastCell) {
	tried := form.Tried()
	if whole := tried.Remarks[entry.WholeLoad]; whole.Err != nil {
		r.wrong("", "%s", whole.Err)
		return
	}
	for _, f := range tried.Found {
		column := r.columnOf(settle.Problem{Field: f.Field}, cells)
		r.row.Remarks = append(r.row.Remarks, Problem{Line: r.row.Line, Column: column, Reason: f.Said.String()})
	}
	for _, p := range tried.Problems {
		r.wrong(r.columnOf(p, cells), "%s", p.Sentence)
	}
}

// columnOf is the column that a problem of settlement is about, if the list has it.
func (r *reader) columnOf(p settle.Problem, cells []pastCell) string {
	for _, c := range cells {
		if c.field == p.Field && slices.Contains(r.columns, c.column) {
			return c.column
		}
	}
	if p.Field == "edition" {
		return "day"
	}
	return ""
}
