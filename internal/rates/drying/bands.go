package drying

import (
	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/rates/rule"
	"tenthpoint/internal/tomlfile"
	"tenthpoint/internal/worksheet"
)

// readBands reads the bands of moisture, each with its rate.
func readBands(t *tomlfile.Table, h *rule.Head, units []quantity.Unit, name string, from rule.Cell) []rule.Band {
	rows := t.Tables("band")
	bands := make([]rule.Band, 0, len(rows))
	for i, row := range rows {
		row.SetTitle(message.New("place|drying band %d", i+1))
		b := rule.ReadBand(row, quantity.Percent)
		b.Cell = readRate(row, h, units)
		bands = append(bands, b)
	}
	rule.CheckBands(t, "band", rows, bands)
	rule.CheckFirst(rows, bands, name, from)
	return bands
}

func postBands(w *rule.Lines, r Rule) {
	w.Step(r.Step)
	for i, b := range r.Bands {
		w.MoistureRow("band", i, b)
	}
}

// bandOf is the band of the load's moisture; false when the load was refused.
func bandOf(w rule.Working, r Rule) (rule.Band, bool) {
	band, ok := rule.Find(r.Bands, w.Moisture().Value())
	if !ok {
		w.OffTable("moisture", "Moisture", w.Moisture(), r.Source, r.Bands)
	}
	return band, ok
}

// pointsInside returns the number of points from low to top that lie in a band. The last band also
// takes what rounding up has carried past its end.
func pointsInside(b rule.Band, low, top *worksheet.Step, last bool) worksheet.Expr {
	var from, upTo worksheet.Operand = low, top
	if b.HasLow && b.Low.More(low.Value()) {
		from = worksheet.Const(b.Low)
	}
	if b.HasHigh && !last && b.High.Less(top.Value()) {
		upTo = worksheet.Const(b.High)
	}
	return worksheet.Points(upTo, from)
}
