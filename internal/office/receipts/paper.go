package receipts

import (
	"tenthpoint/internal/elevator"
	"tenthpoint/internal/grain"
	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/receipt"
	"tenthpoint/internal/report"
)

// Paper is a receipt as a paper. It has the fields that receipts were read to have, and no authority's
// form: it says so.
func Paper(r receipt.Receipt, p elevator.Profile) report.Document {
	d := report.Of(p, r.Day)
	d.Title, d.About = message.New("Warehouse receipt %d", r.Number), message.New("%v, %s", r.Name, r.Day)
	d.Marks = append(d.Marks, message.New("EXAMPLE OF A FORM: confirm it with the licensing authority"))
	if r.Blank != "" {
		d.About = message.New("left blank on purpose: %v", r.Blank)
		return d
	}
	if r.Ended != nil {
		d.Marks = append(d.Marks, r.Ended.How.Said())
	}
	d.Blocks = append(d.Blocks, report.Pairs{Pairs: facts(r)}, tickets(r), report.Para{Text: owedTo(r)},
		report.Signing{Names: []message.Text{message.New("For the elevator"), message.New("Date")}})
	d.Footer = message.New("No legal or tax advice: the authority and the contract outrank the program that made this paper.")
	return d
}

func facts(r receipt.Receipt) []report.Pair {
	class := message.New("not negotiable")
	if r.Negotiable {
		class = message.New("negotiable")
	}
	pairs := []report.Pair{
		{Label: message.New("Depositor"), Value: message.New("%v %v", r.Grower, r.Name)},
		{Label: message.New("Class"), Value: class},
		{Label: message.New("Grain"), Value: message.Words(grain.NameOf(r.Commodity))},
		{Label: message.New("Quantity"), Value: message.New("%s", r.Quantity())},
		{Label: message.New("Weight as settled"), Value: message.New("%s", r.Weight())},
		{Label: message.New("Issued by"), Value: message.Name(r.By)},
	}
	if r.Grade != "" {
		pairs = append(pairs, report.Pair{Label: message.New("Grade"), Value: message.Name(r.Grade)})
	}
	if r.Replaces > 0 {
		pairs = append(pairs, report.Pair{Label: message.New("In place of receipt"), Value: message.New("%d, of %s", r.Replaces, r.OldDay)})
	}
	if r.Ended != nil {
		pairs = append(pairs, report.Pair{Label: message.New("Ended"), Value: message.New("%s", r.Ended.Day)})
	}
	if r.Ended != nil && r.Ended.Reason != "" {
		pairs = append(pairs, report.Pair{Label: message.New("Reason"), Value: message.Name(r.Ended.Reason)})
	}
	return pairs
}

func tickets(r receipt.Receipt) report.Table {
	t := report.Table{Name: message.New("tickets"), Columns: []report.Column{
		{Title: message.New("Ticket"), Align: report.Right}, {Title: message.New("Quantity"), Align: report.Right}, {Title: message.New("Weight as settled"), Align: report.Right},
	}}
	for _, l := range r.Lines {
		t.Rows = append(t.Rows, report.Row{Cells: []message.Text{message.New("%d", l.Ticket), message.New("%s", l.Quantity), message.New("%s", l.Weight)}})
	}
	return t
}

func owedTo(r receipt.Receipt) message.Text {
	if r.Negotiable {
		return message.New("Received in store. The grain is delivered to whoever surrenders this receipt, and not before.")
	}
	return message.New("Received in store. The grain is delivered to the depositor named, or as the depositor orders in writing.")
}

// Register is the series as a paper, every number of it, with what is owed on each class.
func Register(all []receipt.Receipt, p elevator.Profile, day quantity.Date) report.Document {
	d := report.Of(p, day)
	d.Title, d.About = message.New("Register of warehouse receipts"), message.New("all numbers, as of %s", day)
	t := report.Table{Name: message.New("receipts"), Empty: message.New("No receipt is issued yet."), Columns: []report.Column{
		{Title: message.New("Receipt"), Align: report.Right}, {Title: message.New("Day")}, {Title: message.New("Depositor")}, {Title: message.New("Grain")},
		{Title: message.New("Class")}, {Title: message.New("Quantity"), Align: report.Right}, {Title: message.New("Standing")}, {Title: message.New("Ended")}, {Title: message.New("In place of"), Align: report.Right},
	}}
	for _, r := range all {
		t.Rows = append(t.Rows, registerRow(r))
	}
	d.Blocks = append(d.Blocks, t)
	d.Footer = message.New("Numbers run without a gap; a blank left on purpose is marked as such.")
	return d
}

func registerRow(r receipt.Receipt) report.Row {
	row := report.Row{Cells: []message.Text{message.New("%d", r.Number), message.New("%s", r.Day), {}, {}, {}, {}, r.Standing(), {}, {}}}
	if r.Blank != "" {
		row.Cells[7] = message.Name(r.Blank)
		return row
	}
	row.Cells[2], row.Cells[3] = message.New("%v %v", r.Grower, r.Name), message.Words(grain.NameOf(r.Commodity))
	row.Cells[4], row.Cells[5] = r.Class().Name(), message.New("%s", r.Quantity())
	if r.Ended != nil {
		row.Cells[7] = message.New("%s", r.Ended.Day)
	}
	if r.Replaces > 0 {
		row.Cells[8] = message.New("%d", r.Replaces)
	}
	return row
}
