package imports

import (
	"errors"
	"fmt"
	"slices"
	"strings"

	"tenthpoint/internal/entry"
	"tenthpoint/internal/load"
	"tenthpoint/internal/message"
	"tenthpoint/internal/settle"
)

// Past is a load from before the book: its weights and its sample. It is settled again under the
// rates of its day.
type Past struct {
	Facts entry.Facts
}

// OldTicket is its number in the old books.
func (p *Past) OldTicket() string { return p.Facts.Details.OldTicket }

// pastCell is a cell of a past load: the field its text is typed into, and what to
// write where it must not be empty.
type pastCell struct {
	column, field string
	needed        message.Text
}

// pastCells are the cells in the order of their problems.
var pastCells = []pastCell{
	{"grower", "grower", message.New("the grower's code")}, {"truck", "truck", message.New("its number or plate")},
	{"driver", "driver", message.Text{}}, {"bin", "bin", message.Text{}}, {"contract", "contract", message.Text{}}, {"crop_year", "crop", message.Text{}}, {"farm", "farm", message.Text{}}, {"farm_number", "farm-number", message.Text{}}, {"field", "field", message.Text{}}, {"lot", "lot", message.Text{}}, {"old_ticket", "old-ticket", message.Text{}}, {"remark", "remark", message.Text{}},
	{"day", "day", message.New("the day it was delivered, like 2026-09-14")}, {"disposition", "terms", message.Text{}}, {"whose", "whose", message.Text{}}, {"shares", "shares", message.Text{}},
	{"gross", "gross", message.New("the weight of the loaded truck")}, {"tare", "tare", message.New("the weight of the empty truck")},
	{"commodity", "commodity", message.New("the grain, such as corn")}, {"moisture", "moisture", message.New("the moisture in percent")},
}

// past reads a row of the list of loads: its cells are texts of a load's form. A
// row without a problem is settled, to see whether it can be.
func (r *reader) past() {
	place := fmt.Sprintf("%s:%d", r.usual.Name, r.row.Line) // the same in every language
	form := entry.New(r.usual.House, entry.Start{
		Past: true, Direction: load.Inbound,
		Origin: entry.Origin{Moisture: message.New("from the old books").String(), Price: place},
		Reason: func(string) string { return place },
	})
	cells := r.pastCells()
	for _, c := range cells {
		if text := r.text(c.column); text != "" {
			form.Set(c.field, text)
		}
	}
	r.refused(form, cells)
	if len(r.row.Problems) == 0 {
		r.settles(form, cells)
	}
	if len(r.row.Problems) == 0 {
		r.row.Past = &Past{Facts: form.Opening()}
	}
}

// pastCells are the cells of this list: with its factors, and the price and what owners have agreed on last.
func (r *reader) pastCells() []pastCell {
	cells := slices.Clone(pastCells)
	for _, column := range r.columns {
		if id, isFactor := strings.CutPrefix(column, factorColumn); isFactor {
			cells = append(cells, pastCell{column, id, message.Text{}})
		}
	}
	return append(cells, pastCell{"price", "price", message.Text{}}, pastCell{"owner_terms", "owner-terms", message.Text{}})
}

// refused reports required cells that are empty, and invalid cells. Without a grain its results and
// its price cannot be checked.
func (r *reader) refused(form *entry.Form, cells []pastCell) {
	refused := form.Refused()
	for _, c := range cells {
		if text := r.text(c.column); text == "" && !c.needed.IsZero() {
			r.wrong(c.column, message.New("empty; write %s", c.needed))
		} else if err := refused[c.field]; err != nil {
			r.wrong(c.column, inList(err))
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

// inList converts an error to a mistake in a list, with a remedy.
func inList(err error) message.Text {
	var unknown entry.Unknown
	var notTested entry.NotTested
	var notShare entry.NotShare
	switch {
	case errors.As(err, &notTested):
		return message.New("%s is not tested for this; leave the cell empty", notTested.Commodity)
	case errors.As(err, &notShare):
		return shareForm(notShare.Text)
	case errors.As(err, &unknown) && unknown.List == entry.GrowerList:
		return noGrower(unknown.Text)
	case errors.As(err, &unknown) && unknown.List == entry.CommodityList:
		c, err := entry.Commodity(unknown.Text)
		if err != nil {
			return message.Of(err)
		}
		return message.New("%v is not taken here; add it in the set-up with its schedule of rates", c.ID)
	case errors.As(err, &unknown) && unknown.List == entry.BinList:
		return message.New("there is no pit or bin %q here; add it first, or write one of %s", unknown.Text, message.Names(", ", unknown.Known))
	}
	if said := message.Of(err); said.Key() != "%s: %w" {
		return said
	}
	return message.Of(errors.Unwrap(err)) // the column is named already
}

func noGrower(text string) message.Text {
	return message.New("there is no grower %q; take the list of growers over first, or write the code as it is there", text)
}

// agree compares gross and tare.
func (r *reader) agree(weighed []load.Weighing) {
	if len(weighed) != 2 {
		return
	}
	gross, tare := weighed[0].Weight, weighed[1].Weight
	switch {
	case gross.Unit() != tare.Unit():
		r.wrong("tare", message.New("gross is %s and tare is %s; write both in one unit", gross, tare))
	case !gross.More(tare):
		r.wrong("tare", message.New("net would be %s (gross %s - tare %s); were the two swapped?", gross.Sub(tare), gross.Figure(), tare.Figure()))
	}
}

// settles reports why the load could not be settled.
func (r *reader) settles(form *entry.Form, cells []pastCell) {
	tried := form.Tried()
	if whole := tried.Messages[entry.WholeLoad]; whole.Err != nil {
		r.wrong("", message.Of(whole.Err))
		return
	}
	for _, f := range tried.Found {
		column := r.columnOf(settle.Problem{Field: f.Field}, cells)
		r.row.Remarks = append(r.row.Remarks, Problem{Line: r.row.Line, Column: column, Reason: f.Said})
	}
	for _, p := range tried.Problems {
		r.wrong(r.columnOf(p, cells), p.Sentence)
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
