package office

import (
	"fmt"
	"time"

	"tenthpoint/internal/elevator"
	"tenthpoint/internal/i18n"
	"tenthpoint/internal/message"
	"tenthpoint/internal/moisture/meter"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/report"
	"tenthpoint/internal/worksheet"
)

// Paper returns the log as a document for the meter's examiner, under the elevator's name, as of a
// day.
func (l MeterLog) Paper(p elevator.Profile, day quantity.Date) report.Document {
	d := report.Document{
		Language: p.Language, House: []string{p.Business, p.Street, p.Town, p.Phone}, Title: "Check log of " + l.Meter.Name(),
		About: fmt.Sprintf("calibration %s, as of %s", l.Meter.Calibration, day),
		Made:  time.Date(day.Year(), time.Month(day.Month()), day.Day(), 0, 0, 0, 0, time.UTC),
		Footer: "A bias is shown and never taken off a reading. Local law, the weights-and-measures authority " +
			"and the official inspector outrank the program that made this paper.",
	}
	if p.Demo {
		d.Marks = []string{"EXAMPLE - NOT FOR TRADE"}
	}
	put := func(blocks ...report.Block) { d.Blocks = append(d.Blocks, blocks...) }
	put(report.Pairs{Pairs: l.pairs()}, report.Para{Text: l.Standing.Sentence, Strong: true})
	for _, s := range append(append([]string{}, l.Standing.Ignored...), l.Standing.Hints...) {
		put(report.Para{Text: s})
	}
	if len(l.Starts) > 0 {
		put(report.Heading{Text: "Start checks"}, l.starts())
	}
	put(report.Heading{Text: "Reference samples"}, l.table(), l.bars())
	for _, b := range l.Biases {
		put(report.Heading{Text: "Bias: " + b.Grain}, report.Para{Text: b.Sentence}, stepsOf(b.Sheet, i18n.In(p.Language)))
	}
	put(report.Signing{Names: []string{"Examined by, full name and signature", "Date"}})
	return d
}

func (l MeterLog) pairs() []report.Pair {
	return []report.Pair{
		{Label: "Serial number", Value: orNot(l.Meter.Serial, "not written down")},
		{Label: "Read by", Value: l.Meter.Method.String()},
		{Label: "Checked by the rule of", Value: l.Authority.Name},
		{Label: "Source", Value: l.Authority.Source},
		{Label: "Last check that counts", Value: orNot(l.Standing.Last.String(), "none")},
		{Label: "Next due", Value: orNot(l.Standing.NextDue.String(), "no date set")},
	}
}

func orNot(text, otherwise string) string {
	if text == "" {
		return otherwise
	}
	return text
}

func massShown(a quantity.Amount) string {
	if a.Unit() != quantity.Gram {
		return ""
	}
	return a.Written()
}

// mostStarts is how many start checks a log prints, the last ones.
const mostStarts = 31

func (l MeterLog) starts() report.Table {
	t := report.Table{Name: "starts", Columns: []report.Column{
		{Title: "Day", Own: true}, {Title: "Check weight", Align: report.Right}, {Title: "Balance", Align: report.Right},
		{Title: "Thermometer", Align: report.Right}, {Title: "Other", Align: report.Right}, {Title: "Left out, because", Own: true}, {Title: "By", Own: true},
	}}
	for _, c := range l.Starts[max(0, len(l.Starts)-mostStarts):] {
		t.Rows = append(t.Rows, report.Row{Cells: []string{c.Day.String(), massShown(c.Weight), massShown(c.Balance), temperature(c.Thermometer), temperature(c.Other), c.Skipped, c.By}})
	}
	return t
}

func (l MeterLog) table() report.Table {
	t := report.Table{Name: "checks", Empty: "No reference sample has been read under this calibration.", Columns: []report.Column{
		{Title: "Day", Own: true}, {Title: "Grain"}, {Title: "Reference", Own: true}, {Title: "Oven %", Align: report.Right}, {Title: "Meter %", Align: report.Right},
		{Title: "Error pt", Align: report.Right}, {Title: "Allowed pt", Align: report.Right}, {Title: "Sample at"}, {Title: "Read by", Own: true}, {Title: ""},
	}}
	for _, p := range l.Chart.Points {
		c, outside := p.Check, ""
		if p.Outside {
			outside = "outside"
		}
		t.Rows = append(t.Rows, report.Row{Cells: []string{
			c.Day.String(), c.Crop, c.Name, bareFigure(c.Reference), bareFigure(c.Reading), bareFigure(c.Error()), allowed(p),
			orNot(temperature(c.Sample), "not taken"), c.By, outside,
		}})
	}
	return t
}

// bareFigure is a moisture or an error to the hundredth, the unit being in the
// heading.
func bareFigure(a quantity.Amount) string { return a.In(quantity.Plain).Fixed(2) }

func temperature(a quantity.Amount) string {
	if a.Unit() == quantity.Plain {
		return ""
	}
	return a.Written()
}

func allowed(p meter.ErrorPoint) string {
	if !p.Limited {
		return ""
	}
	return bareFigure(p.Limit)
}

// mostBars is the number of errors that fit side by side.
const mostBars = 14

// bars are the sizes of the last errors, with the limit beside them for
// comparison where there is one for all.
func (l MeterLog) bars() report.Bars {
	b := report.Bars{Title: "How far off, in points, whichever way", Empty: "No reference sample has been read."}
	points := l.Chart.Points
	if len(points) > mostBars {
		points = points[len(points)-mostBars:]
	}
	for _, p := range points {
		size := quantity.Max(p.Check.Error(), p.Check.Error().Neg())
		b.Labels = append(b.Labels, p.Check.Day.String()[len("2026-"):])
		b.Values = append(b.Values, bareFigure(p.Check.Error()))
		b.Heights = append(b.Heights, l.tall(size))
	}
	if len(points) > 0 && points[len(points)-1].Limited {
		limit := points[len(points)-1].Limit
		b.Labels, b.Values, b.Heights = append(b.Labels, "allowed"), append(b.Values, bareFigure(limit)), append(b.Heights, l.tall(limit))
	}
	return b
}

var nearestWhole = quantity.To("1", quantity.HalfUp)

// tall is the height of a bar for the size of an error, in thousandths of the
// tallest. It is an even number, as a bar is half of a chart that reaches as far
// below the line as above it.
func (l MeterLog) tall(size quantity.Amount) int {
	d, _ := nearestWhole.Apply(l.Chart.Share(size).Mul(quantity.Int(500, quantity.Plain))).Decimal()
	return 2 * int(d.IntPart())
}

func stepsOf(sheet *worksheet.Sheet, p *message.Printer) report.Steps {
	var out report.Steps
	for _, s := range sheet.Steps() {
		out.Steps = append(out.Steps, report.Step{Label: p.Text(s.Label()), Figure: s.PrintedIn(p), Explain: s.ExplainIn(p), Skipped: s.Kind() == worksheet.NotApplied})
	}
	return out
}
