package binlog

import (
	"context"

	"tenthpoint/internal/bin"
	"tenthpoint/internal/bin/shape"
	"tenthpoint/internal/elevator"
	"tenthpoint/internal/grain"
	"tenthpoint/internal/message"
	"tenthpoint/internal/office"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/report"
)

// MeasureSheet is a measure-up as a paper: the size of the bin, what the tape said, the official measure
// worked out, and the difference to the book.
func MeasureSheet(ctx context.Context, d office.Desk, number int64) (report.Document, error) {
	all, err := office.RecordsOf[bin.Movement](ctx, d.Reader())
	if err != nil {
		return report.Document{}, err
	}
	for _, m := range all {
		switch {
		case m.Number != number:
		case m.What != bin.MeasureUp || m.Count == nil || m.Count.Measure == nil || m.Count.Shape == nil:
			return report.Document{}, message.Refused.Errorf("movement %d is no measure-up; the sheet is of one", number)
		default:
			return composeMeasureSheet(d.Profile(), m)
		}
	}
	return report.Document{}, message.NotFound.Errorf("there is no movement %d in this book. Look its number up on the card of the bin", number)
}

func composeMeasureSheet(p elevator.Profile, m bin.Movement) (report.Document, error) {
	c := m.Count
	worked, err := c.Shape.Work(*c.Measure, m.Commodity)
	if err != nil {
		return report.Document{}, err
	}
	d := paper(p, message.New("Measure-up sheet no. %d, bin %v", m.Number, c.Bin), m.Day)
	if m.UndoneBy != 0 {
		d.Marks = append(d.Marks, message.New("undone by no. %d", m.UndoneBy))
	}
	d.Blocks = append(d.Blocks,
		report.Heading{Text: message.New("The bin")}, report.Pairs{Pairs: sizes(*c.Shape)},
		report.Heading{Text: message.New("Measured")}, report.Pairs{Pairs: measures(*c.Measure)},
		report.Heading{Text: message.New("Worked out")}, report.Pairs{Pairs: working(worked, c.Measure.TestWeight)},
		report.Heading{Text: message.New("Against the book")}, report.Pairs{Pairs: against(m)},
		report.Para{Text: message.New("The official measure of the Iowa Grain Warehouse Bureau: diameter times diameter times depth times 0.7854 times 0.80385 bushels, a cone a third of that. Other constants are in print.")},
		report.Para{Text: bin.BinEntry.Said()},
		report.Signing{Names: []message.Text{message.New("Measured by"), message.New("Manager, full name and signature"), message.New("Date")}})
	return d, nil
}

// pairs are a label and an amount each, of amounts that somebody wrote down.
func pairs(all ...report.Pair) []report.Pair {
	var out []report.Pair
	for _, p := range all {
		if !p.Value.IsZero() {
			out = append(out, p)
		}
	}
	return out
}

func sizes(s shape.Shape) []report.Pair {
	return pairs(
		report.Pair{Label: message.New("Form"), Value: message.Words(string(s.Form))},
		report.Pair{Label: message.New("Diameter"), Value: noted(s.Diameter)}, report.Pair{Label: message.New("Wall"), Value: noted(s.Wall)},
		report.Pair{Label: message.New("Cone"), Value: noted(s.Cone)}, report.Pair{Label: message.New("Peak"), Value: noted(s.Peak)},
		report.Pair{Label: message.New("Length"), Value: noted(s.Length)}, report.Pair{Label: message.New("Width"), Value: noted(s.Width)},
	)
}

func measures(m shape.Measure) []report.Pair {
	peak := noted(m.Peak)
	if m.PeakGuessed {
		peak = message.New("not measured; the official peak of dry clean grain")
	}
	return pairs(
		report.Pair{Label: message.New("Depth at the wall"), Value: noted(m.Depth)}, report.Pair{Label: message.New("Peak above it"), Value: peak},
		report.Pair{Label: message.New("Test weight"), Value: noted(m.TestWeight)}, report.Pair{Label: message.New("Pack"), Value: noted(m.Pack)},
		report.Pair{Label: message.New("Table of the pack"), Value: message.Name(m.PackSource)},
	)
}

func working(r shape.Result, testWeight quantity.Amount) []report.Pair {
	return []report.Pair{
		{Label: message.New("Room below the level"), Value: cubic(r.Level)},
		{Label: message.New("Room above it"), Value: cubic(r.Peaked)},
		{Label: message.New("Room, all of it"), Value: cubic(r.Room)},
		{Label: message.New("By volume"), Value: message.New("%s", toTenths.Apply(r.Bulk))},
		{Label: message.New("Weight at %s, without pack", testWeight), Value: message.New("%s", toTenths.Apply(r.Loose))},
		{Label: message.New("Weight with pack"), Value: message.New("%s", toTenths.Apply(r.Packed))},
	}
}

// cubic is room as people say it.
func cubic(room quantity.Amount) message.Text {
	figure := report.Figure(toTenths.Apply(room).Fixed(1))
	if room.Unit() == quantity.Metre.Times(quantity.Metre).Times(quantity.Metre) {
		return message.New("%s m³", figure)
	}
	return message.New("%s cu ft", figure)
}

func against(m bin.Movement) []report.Pair {
	c := m.Count
	became := message.New("not posted")
	if c.Posted {
		became = message.New("posted: the book says what was measured")
	}
	return pairs(
		report.Pair{Label: message.New("Grain"), Value: message.Words(grain.NameOf(m.Commodity))},
		report.Pair{Label: message.New("Measured"), Value: message.New("%s", c.Counted)}, report.Pair{Label: message.New("In the book"), Value: message.New("%s", c.Book)},
		report.Pair{Label: message.New("Difference"), Value: message.New("%s", c.Counted.Sub(c.Book))}, report.Pair{Label: message.New("What became of it"), Value: became},
		report.Pair{Label: message.New("Reason"), Value: message.Name(m.Reason)}, report.Pair{Label: message.New("By"), Value: message.Name(m.By)},
	)
}
