package shrink

import (
	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/rates/rule"
	"tenthpoint/internal/tomlfile"
	"tenthpoint/internal/worksheet"
)

// Table reads the percent from a table by moisture.
var Table = &Method{
	ID:   "table",
	Said: "a table by moisture",
	Read: func(t *tomlfile.Table, _ *rule.Head, r *Rule) { r.Rows = readRows(t, r.Trigger) },
	Lines: func(w *rule.Lines, r Rule) {
		for i, b := range r.Rows {
			w.MoistureRow("row", i, b)
		}
	},
	Work: func(w rule.Working, r Rule, wet *worksheet.Step) (worksheet.Expr, bool) {
		moisture := w.Moisture()
		band, ok := rule.Find(r.Rows, moisture.Value())
		if !ok {
			w.OffTable("moisture", "Moisture", moisture, r.Source, r.Rows)
			return worksheet.Expr{}, false
		}
		percent := w.Rate("shrink.percent", message.Words("Shrink percent"), band.Cell)
		w.Sheet().Note(percent, message.New("moisture %s is in the row %s", moisture.Printed(), band))
		return r.takePercent(w, percent, wet)
	},
	Ticket:    func(Rule) message.Text { return message.New("by table") },
	Explained: "a printed table. The row that holds the moisture gives the percent of the weight that comes off; rows rise and leave no moisture out. A moisture beyond the last row settles no load until a manager says which rate applies.",
}

func readRows(t *tomlfile.Table, trigger rule.Cell) []rule.Band {
	rows := t.Tables("row")
	bands := make([]rule.Band, 0, len(rows))
	for i, row := range rows {
		row.SetTitle(message.New("place|shrink row %d", i+1))
		b := rule.ReadBand(row, quantity.Percent)
		b.Cell = rule.ReadPercent(row, "shrink")
		if i > 0 && rule.Less(b.Cell, bands[i-1].Cell) {
			row.AddProblem("shrink", message.New("shrink falls from %s to %s while the moisture rises", bands[i-1].Cell.Amount.Written(), b.Cell.Amount.Written()), message.New("Wetter grain has no less water in it: mend one of the two rows."))
		}
		bands = append(bands, b)
	}
	rule.CheckBands(t, "row", rows, bands)
	rule.CheckFirst(rows, bands, "the trigger", trigger)
	return bands
}
