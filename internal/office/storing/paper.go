// Package storing makes the paper that answers whether grain keeps: what the tables say, and what its
// grower can do where it does not.
package storing

import (
	"tenthpoint/internal/dryness"
	"tenthpoint/internal/grain"
	"tenthpoint/internal/load"
	"tenthpoint/internal/message"
	"tenthpoint/internal/office"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/report"
)

// Of is the question about a load's grain at a moisture, before it is said until when.
func Of(d office.Desk, l *load.Load, moisture quantity.Amount) dryness.Storing {
	q := dryness.Storing{Crop: l.Details.Commodity, Moisture: moisture, Posted: office.PostedFor(d, l)}
	if known, err := grain.ByID(q.Crop); err == nil {
		q.Bushel = known.Bushel
	}
	return q
}

// Paper is the answer as a paper for the grower.
func Paper(d office.Desk, q dryness.Storing, s dryness.Stored) report.Document {
	doc := report.Of(d.Profile(), d.Today())
	doc.Title = message.New("Does it keep?")
	doc.About = message.New("%s at %s, for %s at %s", message.Words(grain.NameOf(q.Crop)), q.Moisture.FixedString(1), q.Days, q.Temperature)
	kept := report.Table{Name: message.New("By the tables"), Columns: []report.Column{{Title: message.New("Table")}, {Title: message.New("Keeps"), Align: report.Right}, {Title: message.New("Long enough")}}}
	for _, by := range s.By {
		enough := message.Words("no")
		if by.Enough {
			enough = message.Words("yes")
		}
		kept.Rows = append(kept.Rows, report.Row{Cells: []message.Text{message.Name(by.Table.ID), by.Keeps.Message(), enough}})
	}
	doc.Blocks = append(doc.Blocks, kept)
	for _, r := range s.Recommended {
		doc.Blocks = append(doc.Blocks, report.Para{Text: message.New("Recommended for so long: %s (%s).", r.Moisture, r.Source)})
	}
	if len(s.Ways) > 0 {
		doc.Blocks = append(doc.Blocks, report.Heading{Text: message.New("What can be done")}, waysTable(s.Ways))
	}
	doc.Blocks = append(doc.Blocks, report.Para{Text: message.New("Advice, not a promise: look at the grain and its temperature. Nobody enters a bin alone or while grain moves; fumigants are for licensed applicators.")})
	return doc
}

// waysTable sets what a grower can do side by side; what is not known is left empty.
func waysTable(ways []dryness.Way) report.Table {
	t := report.Table{Name: message.New("Ways"), Columns: []report.Column{
		{Title: message.New("Way")}, {Title: message.New("Days"), Align: report.Right}, {Title: message.New("Cost of a bushel"), Align: report.Right}, {Title: message.New("Of 100 lb left"), Align: report.Right}, {Title: message.New("Then")},
	}}
	known := func(a quantity.Amount) message.Text {
		if !quantity.Recorded(a) {
			return message.Text{}
		}
		return message.New("%s", a)
	}
	for _, w := range ways {
		t.Rows = append(t.Rows, report.Row{Cells: []message.Text{w.Name, known(w.Days), known(w.Cost), known(w.Left), w.Then}})
	}
	return t
}
