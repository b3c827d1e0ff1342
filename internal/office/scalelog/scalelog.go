// Package scalelog reads the logs of truck scales, and makes the paper for their examiner.
package scalelog

import (
	"context"
	"strings"

	"tenthpoint/internal/elevator"
	"tenthpoint/internal/law"
	"tenthpoint/internal/message"
	"tenthpoint/internal/office"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/report"
	"tenthpoint/internal/truckscale"
)

// Read gathers the log of a scale of the elevator.
func Read(ctx context.Context, d office.Desk, id string) (truckscale.Log, error) {
	scale, known := d.Profile().Scale(id)
	if !known {
		return truckscale.Log{}, message.NotFound.Errorf("there is no scale %s at this elevator. Name one that is set up, or add it in the set-up", id)
	}
	return office.ScaleLog(d, office.ReadNow(ctx, d), scale)
}

// Row is an entry of a log for a list or a paper.
type Row struct {
	Day, By    string
	What       message.Text
	Known      string // the load on the deck, or the other scale's reading
	Shown, Off string
	Allowed    string
	Note       string // weights, truck, seals, reason: people's own words
	IsOutside  bool   // outside a tolerance that was read
}

// Rows are the entries of a log, oldest first.
func Rows(l truckscale.Log) []Row {
	var out []Row
	for _, f := range l.Entries {
		row := Row{Day: f.On().String(), By: f.Person()}
		switch f := f.(type) {
		case truckscale.Zeroed:
			row.What, row.Shown = message.New("zero check"), f.Shown.String()
		case truckscale.Weighed:
			row.What, row.Known, row.Shown, row.Off, row.Note = message.New("check weighing"), f.Known.String(), f.Shown.String(), f.Off().String(), f.Weights
			row.allow(l, f)
		case truckscale.Compared:
			row.What, row.Known, row.Shown, row.Off, row.Note = message.New("with scale %v", f.Other), f.OtherShown.String(), f.Shown.String(), f.Apart().String(), f.What
		case truckscale.Certificate:
			row.What, row.Note = message.New("certificate %v through %s", f.Number, f.Until), strings.Join(given(f.Inspector, f.Seals), "; ")
		case truckscale.Service:
			row.What, row.Note = message.New("back in service"), f.Reason
			if f.Out {
				row.What = message.New("out of service")
			}
		}
		out = append(out, row)
	}
	return out
}

func (r *Row) allow(l truckscale.Log, f truckscale.Weighed) {
	t, known := l.Allowed(f.Day, f.Known)
	if !known {
		return
	}
	r.Allowed = t.At.String()
	r.IsOutside = t.Confirmed && quantity.Max(f.Off(), f.Off().Neg()).More(t.At)
}

func given(texts ...string) []string {
	var out []string
	for _, t := range texts {
		if t != "" {
			out = append(out, t)
		}
	}
	return out
}

// Paper returns the log as a document for the scale's examiner, under the elevator's name, as of a
// day.
func Paper(l truckscale.Log, p elevator.Profile, day quantity.Date) report.Document {
	d := report.Of(p, day)
	d.Title, d.About = message.New("Log of scale %v", l.Scale.ID), message.New("as of %s", day)
	d.Footer = law.ToConfirm(message.New("Local law, the weights-and-measures authority and the official inspector outrank the program that made this paper."))
	put := func(blocks ...report.Block) { d.Blocks = append(d.Blocks, blocks...) }
	put(report.Pairs{Pairs: []report.Pair{
		{Label: message.New("Division"), Value: message.New("%s", l.Scale.Division)},
		{Label: message.New("Capacity"), Value: message.New("%s", l.Scale.Capacity)},
	}})
	for _, said := range l.Status(day).Said {
		put(report.Para{Text: said})
	}
	put(table(l), report.Signing{Names: []message.Text{message.New("Examined by, full name and signature"), message.New("Date")}})
	return d
}

func table(l truckscale.Log) report.Table {
	t := report.Table{Name: message.New("log"), Empty: message.New("Nothing is written down."), Columns: []report.Column{
		{Title: message.New("Day")}, {Title: message.New("What")}, {Title: message.New("On the deck"), Align: report.Right}, {Title: message.New("Shown"), Align: report.Right},
		{Title: message.New("Off by"), Align: report.Right}, {Title: message.New("Allowed"), Align: report.Right}, {Title: message.New("Note")}, {Title: message.New("By")}, {},
	}}
	for _, r := range Rows(l) {
		outside := message.Text{}
		if r.IsOutside {
			outside = message.New("outside")
		}
		t.Rows = append(t.Rows, report.Row{Cells: []message.Text{message.Name(r.Day), r.What, report.Figure(r.Known), report.Figure(r.Shown), report.Figure(r.Off), report.Figure(r.Allowed), message.Name(r.Note), message.Name(r.By), outside}})
	}
	return t
}
