package discount

import (
	"slices"

	"tenthpoint/internal/message"
	"tenthpoint/internal/rates/rule"
	"tenthpoint/internal/tomlfile"
	"tenthpoint/internal/worksheet"
)

// Table reads the figure from ranges.
var Table = &Form{
	ID:   "table",
	Said: "a table by the factor",
	Read: func(t *tomlfile.Table, h *rule.Head, r *Rule) {
		if r.isMeasured(t) {
			r.readRows(t, h)
			r.readLimits(t)
		}
	},
	Lines: func(w *rule.Lines, r Rule) {
		for i, b := range r.Rows {
			w.Row("row", i, b, r.brings(b.Refuse, b.Cell, b.Direction))
		}
	},
	Work:      workTable,
	Ticket:    rule.Figures[Rule],
	Explained: "a printed table. The row that holds the result brings its discount or premium, brings nothing, or turns the load away.",
}

func (r *Rule) readRows(t *tomlfile.Table, h *rule.Head) {
	rows := t.Tables("row")
	for i, row := range rows {
		row.SetTitle(message.New("place|discount %v row %d", r.ID, i+1))
		b := rule.ReadBand(row, r.factorUnits()...)
		b.Refuse, b.Cell, b.Direction = readAnswer(row, h, r.Of)
		r.Rows = append(r.Rows, b)
	}
	rule.CheckBands(t, "row", rows, r.Rows)
}

func workTable(w Working, r *Rule, found *worksheet.Step) {
	band, ok := rule.Find(r.Rows, found.Value())
	if !ok {
		w.OffTable(string(r.Factor.ID), r.Factor.Name, found, r.Source, r.Rows)
		return
	}
	where := message.New("%s is in the row %s", found.Said(), band)
	if band.Refuse {
		if w.TurnedAway(message.New("is %s, in the row %s that is rejected", found.Said(), band)) {
			return
		}
		where = Accepted(where)
		if last := w.Accepted(band); !last.Same(band) {
			band = last
			where = message.New("%s, at the figure of the row %s", where, band)
		}
	}
	if band.Cell.Amount.IsZero() {
		w.None(message.New("%s, which brings none", where))
		return
	}
	rate := w.Rate(RateLine(r.ID), r.Labels.rate, band.Cell)
	w.Sheet().Note(rate, where)
	w.Apply(band.Direction, rate)
}

// LastRow is the row next to one that turns loads away, on the side of the grain that is taken as a
// matter of course; between two, the upper one where it takes more of the grower.
func (r *Rule) LastRow(refused rule.Band) (rule.Band, bool) {
	at := slices.IndexFunc(r.Rows, refused.Same)
	taken := func(b rule.Band) bool { return !b.Refuse }
	below, above := slices.Clone(r.Rows[:at]), r.Rows[at+1:]
	slices.Reverse(below)
	b, a := slices.IndexFunc(below, taken), slices.IndexFunc(above, taken)
	switch {
	case b < 0 && a < 0:
		return rule.Band{}, false
	case b < 0 || a >= 0 && above[a].TakesMore(below[b]):
		return above[a], true
	}
	return below[b], true
}
