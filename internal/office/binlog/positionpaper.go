package binlog

import (
	"tenthpoint/internal/bin"
	"tenthpoint/internal/elevator"
	"tenthpoint/internal/grain"
	"tenthpoint/internal/message"
	"tenthpoint/internal/position"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/report"
)

// PositionPaper is the daily position record as a paper: commodity by commodity what lies in the
// house bin by bin, whose it is line by line, and whether the two agree.
func PositionPaper(p elevator.Profile, day quantity.Date, records []position.Record) report.Document {
	d := paper(p, message.New("Daily position record"), day)
	put := func(blocks ...report.Block) { d.Blocks = append(d.Blocks, blocks...) }
	if len(records) == 0 {
		put(report.Para{Text: message.New("Nothing is in the house.")})
	}
	for _, r := range records {
		put(report.Heading{Text: message.New("%s, in %s", message.Words(grain.NameOf(r.Commodity)), message.Name(r.Unit.String()))})
		if r.IsShort() {
			put(report.Para{Strong: true, Text: message.New("DEPOSITORS' GRAIN IS GONE: the company owns %s. Depositors are owed %s.", r.Of(position.Company), r.Of(position.Owed))})
		}
		put(report.Para{Text: balance(r), Strong: !r.Off().IsZero()})
		put(binTable(r), lineTable(r))
		if len(r.Adjusted) > 0 {
			put(adjustedTable(r))
		}
	}
	put(report.Para{Text: message.New("In the house are weights as weighed; the lines are weights as settled. What lies between is shrink that was settled and is not lost yet.")},
		report.Signing{Names: []message.Text{message.New("Manager, full name and signature"), message.New("Date")}})
	return d
}

// balance says that a record balances, or by how much not.
func balance(r position.Record) message.Text {
	if !r.Off().IsZero() {
		return message.New("IT DOES NOT BALANCE: %s lie in the house and the lines account for %s, %s apart.", r.Total.InHouse, r.Total.InHouse.Sub(r.Off()), r.Off())
	}
	return message.New("%s in the house = %s of depositors + %s company-owned + %s shrink not yet posted.",
		r.Total.InHouse, r.Of(position.Owed), r.Of(position.Company), r.Of(position.Between))
}

func figure(a quantity.Amount) message.Text { return report.Figure(a.Figure()) }

func figures(titles ...message.Text) []report.Column {
	var out []report.Column
	for _, t := range titles {
		out = append(out, report.Column{Title: t, Align: report.Right})
	}
	return out
}

// binTable is the record as weighed, bin by bin.
func binTable(r position.Record) report.Table {
	t := report.Table{
		Name: message.New("As weighed, by bin: %s", message.Words(grain.NameOf(r.Commodity))), Empty: message.New("Nothing is in the house."),
		Columns: append([]report.Column{{Title: message.New("Pit or bin")}}, figures(message.New("Yesterday"), message.New("Received"), message.New("Loaded out"), message.New("Taken back"), message.New("Moved"), message.New("In the house"))...),
	}
	for _, b := range r.Bins {
		t.Rows = append(t.Rows, report.Row{Cells: append([]message.Text{orUnnamed(b.Bin)}, binCells(b)...)})
	}
	t.Rows = append(t.Rows, report.Row{Kind: report.Total, Cells: append([]message.Text{message.New("All bins")}, binCells(r.Total)...)})
	return t
}

func binCells(b position.InBin) []message.Text {
	return []message.Text{figure(b.Before), figure(b.Received), figure(b.LoadedOut), figure(b.Back), figure(b.Moved), figure(b.InHouse)}
}

func orUnnamed(id string) message.Text {
	if id == "" {
		return message.New("not named")
	}
	return message.Name(id)
}

// lineTable is the record as settled, line by line, with the sum of each group.
func lineTable(r position.Record) report.Table {
	t := report.Table{
		Name: message.New("As settled, by owner: %s", message.Words(grain.NameOf(r.Commodity))), Empty: message.New("Nothing is in the house."),
		Columns: append([]report.Column{{Title: message.New("Line")}}, figures(message.New("Yesterday"), message.New("Up"), message.New("Down"), message.New("Tonight"), message.New("Bushels, by legal weight"))...),
	}
	for _, g := range []position.Group{position.Owed, position.Company, position.Between} {
		sum := position.OfLine{Before: quantity.Zero(r.Unit), Up: quantity.Zero(r.Unit), Down: quantity.Zero(r.Unit), Close: quantity.Zero(r.Unit)}
		for _, l := range r.Lines {
			if l.Line.Group() != g {
				continue
			}
			t.Rows = append(t.Rows, report.Row{Cells: lineCells(r, l.Line.Name(), l)})
			sum = position.OfLine{Before: sum.Before.Add(l.Before), Up: sum.Up.Add(l.Up), Down: sum.Down.Add(l.Down), Close: sum.Close.Add(l.Close)}
		}
		t.Rows = append(t.Rows, report.Row{Kind: report.Total, Cells: lineCells(r, g.Name(), sum)})
	}
	return t
}

func lineCells(r position.Record, name message.Text, l position.OfLine) []message.Text {
	bushels := message.Text{}
	if bu, known := r.Bushels(l.Close); known {
		bushels = report.Figure(bu.Fixed(2))
	}
	return []message.Text{name, figure(l.Before), figure(l.Up), figure(l.Down), figure(l.Close), bushels}
}

// adjustmentNames are the four reasons for an adjustment as people read them.
var adjustmentNames = map[bin.Adjustment]message.Text{
	bin.ShrinkRecalculation: message.New("Shrink recalculation"),
	bin.ErrorCorrection:     message.New("Error correction"),
	bin.AccountantsCount:    message.New("Accountant's count"),
	bin.WeighedInventory:    message.New("Weighed inventory"),
}

func adjustedTable(r position.Record) report.Table {
	t := report.Table{
		Name:    message.New("Adjustments: %s", message.Words(grain.NameOf(r.Commodity))),
		Columns: append([]report.Column{{Title: message.New("Adjustment")}}, figures(message.New("Weight"))...),
	}
	for _, a := range bin.Adjustments() {
		if change, some := r.Adjusted[a]; some {
			t.Rows = append(t.Rows, report.Row{Cells: []message.Text{adjustmentNames[a], figure(change)}})
		}
	}
	return t
}
