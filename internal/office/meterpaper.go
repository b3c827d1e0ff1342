package office

import (
	"tenthpoint/internal/elevator"
	"tenthpoint/internal/i18n"
	"tenthpoint/internal/law"
	"tenthpoint/internal/message"
	"tenthpoint/internal/moisture/meter"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/report"
	"tenthpoint/internal/worksheet"
)

// Paper returns the log as a document for the meter's examiner, under the elevator's name, as of a
// day.
func (l MeterLog) Paper(p elevator.Profile, day quantity.Date) report.Document {
	d := report.Of(p, day)
	d.Title = message.New("Check log of %s", message.New("meter %v (%v)", l.Meter.ID, l.Meter.Model))
	d.About = message.New("calibration %v, as of %s", l.Meter.Calibration, day)
	d.Footer = law.ToConfirm(message.New("A bias is shown and never taken off a reading. Local law, the weights-and-measures authority " +
		"and the official inspector outrank the program that made this paper."))
	put := func(blocks ...report.Block) { d.Blocks = append(d.Blocks, blocks...) }
	put(report.Pairs{Pairs: l.pairs()}, report.Para{Text: l.Standing.Sentence, Strong: true})
	for _, s := range append(append([]message.Text{}, l.Standing.Ignored...), l.Standing.Hints...) {
		put(report.Para{Text: s})
	}
	if len(l.Starts) > 0 {
		put(report.Heading{Text: message.New("Start checks")}, l.starts())
	}
	put(report.Heading{Text: message.New("Reference samples")}, l.table(), l.bars())
	for _, b := range l.Biases {
		put(report.Heading{Text: message.New("Bias: %s", b.Grain)}, report.Para{Text: b.Sentence}, stepsOf(b.Sheet, i18n.In(p.Language)))
	}
	put(report.Signing{Names: []message.Text{message.New("Examined by, full name and signature"), message.New("Date")}})
	return d
}

func (l MeterLog) pairs() []report.Pair {
	return []report.Pair{
		{Label: message.New("Serial number"), Value: orNot(l.Meter.Serial, message.New("not written down"))},
		{Label: message.New("Read by"), Value: message.Words(l.Meter.Method.String())},
		{Label: message.New("Checked by the rule of"), Value: message.Words(l.Authority.Name)},
		{Label: message.New("Source"), Value: l.Authority.Stated()},
		{Label: message.New("Last check that counts"), Value: orNot(l.Standing.Last.String(), message.New("none"))},
		{Label: message.New("Next due"), Value: orNot(l.Standing.NextDue.String(), message.New("no date set"))},
	}
}

func orNot(name string, otherwise message.Text) message.Text {
	if name == "" {
		return otherwise
	}
	return message.Name(name)
}

func massShown(a quantity.Amount) message.Text {
	if a.Unit() != quantity.Gram {
		return message.Text{}
	}
	return report.Figure(a.Written())
}

// mostStarts is the number of start checks a log prints, the last ones.
const mostStarts = 31

func (l MeterLog) starts() report.Table {
	t := report.Table{Name: message.New("starts"), Columns: []report.Column{
		{Title: message.New("Day")}, {Title: message.New("Check weight"), Align: report.Right}, {Title: message.New("Balance"), Align: report.Right},
		{Title: message.New("Thermometer"), Align: report.Right}, {Title: message.New("Other"), Align: report.Right}, {Title: message.New("Left out, because")}, {Title: message.New("By")},
	}}
	for _, c := range l.Starts[max(0, len(l.Starts)-mostStarts):] {
		t.Rows = append(t.Rows, report.Row{Cells: []message.Text{message.Name(c.Day.String()), massShown(c.Weight), massShown(c.Balance), temperature(c.Thermometer), temperature(c.Other), message.Name(c.Skipped), message.Name(c.By)}})
	}
	return t
}

func (l MeterLog) table() report.Table {
	percent, points := quantity.Percent.String(), quantity.Point.String()
	t := report.Table{Name: message.New("checks"), Empty: message.New("No reference sample has been read under this calibration."), Columns: []report.Column{
		{Title: message.New("Day")}, {Title: message.New("Grain")}, {Title: message.New("Reference")},
		{Title: message.New("Oven"), Unit: percent, Align: report.Right}, {Title: message.New("Meter"), Unit: percent, Align: report.Right},
		{Title: message.New("Error"), Unit: points, Align: report.Right}, {Title: message.New("Allowed"), Unit: points, Align: report.Right},
		{Title: message.New("Sample at")}, {Title: message.New("Read by")}, {},
	}}
	for _, p := range l.Chart.Points {
		c, outside := p.Check, message.Text{}
		if p.Outside {
			outside = message.New("outside")
		}
		t.Rows = append(t.Rows, report.Row{Cells: []message.Text{
			message.Name(c.Day.String()), message.Words(c.Crop), message.Name(c.Name), bareFigure(c.Reference), bareFigure(c.Reading), bareFigure(c.Error()), allowed(p),
			takenAt(c.Sample), message.Name(c.By), outside,
		}})
	}
	return t
}

// bareFigure is a moisture or an error to the hundredth, the unit being in the
// heading.
func bareFigure(a quantity.Amount) message.Text { return report.Figure(a.In(quantity.Plain).Fixed(2)) }

func temperature(a quantity.Amount) message.Text {
	if a.Unit() == quantity.Plain {
		return message.Text{}
	}
	return report.Figure(a.Written())
}

func takenAt(a quantity.Amount) message.Text {
	if a.Unit() == quantity.Plain {
		return message.New("not taken")
	}
	return temperature(a)
}

func allowed(p meter.ErrorPoint) message.Text {
	if !p.Limited {
		return message.Text{}
	}
	return bareFigure(p.Limit)
}

// mostBars is the number of errors that fit side by side.
const mostBars = 14

// bars are the sizes of the last errors, with the limit beside them for
// comparison where there is one for all.
func (l MeterLog) bars() report.Bars {
	b := report.Bars{Title: message.New("How far off, in points, whichever way"), Empty: message.New("No reference sample has been read.")}
	points := l.Chart.Points
	if len(points) > mostBars {
		points = points[len(points)-mostBars:]
	}
	for _, p := range points {
		size := quantity.Max(p.Check.Error(), p.Check.Error().Neg())
		b.Labels = append(b.Labels, message.Name(p.Check.Day.String()[len("2026-"):]))
		b.Values = append(b.Values, bareFigure(p.Check.Error()))
		b.Heights = append(b.Heights, l.tall(size))
	}
	if len(points) > 0 && points[len(points)-1].Limited {
		limit := points[len(points)-1].Limit
		b.Labels, b.Values, b.Heights = append(b.Labels, message.New("allowed")), append(b.Values, bareFigure(limit)), append(b.Heights, l.tall(limit))
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
