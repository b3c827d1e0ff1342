package openings

import (
	"tenthpoint/internal/elevator"
	"tenthpoint/internal/grain"
	"tenthpoint/internal/message"
	"tenthpoint/internal/opening"
	"tenthpoint/internal/position"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/report"
)

// Paper is an opening as a paper, entered or not: whether it balances, what lies in the bins, whose it
// is.
func Paper(o opening.Opening, p elevator.Profile) report.Document {
	d := report.Of(p, o.Day)
	d.Title, d.About = message.New("Opening of the books"), message.New("balances of the evening of %s", o.Day)
	if o.Ended != nil {
		d.Marks = append(d.Marks, message.New("TAKEN BACK on %s by %v: %v", o.Ended.Day, o.Ended.By, o.Ended.Reason))
	}
	d.Blocks = append(d.Blocks,
		report.Pairs{Pairs: []report.Pair{
			{Label: message.New("By"), Value: message.Name(o.By)},
			{Label: message.New("Reason"), Value: message.Name(o.Reason)},
			{Label: message.New("List"), Value: message.Name(o.List)},
		}},
		balanceTable(o), lyingTable(o), lotTable(o))
	if len(o.Advances) > 0 {
		d.Blocks = append(d.Blocks, report.Heading{Text: message.New("Advances")}, advanceTable(o))
	}
	if len(o.Liens) > 0 {
		d.Blocks = append(d.Blocks, report.Heading{Text: message.New("Notices of lien")}, lienTable(o))
	}
	d.Blocks = append(d.Blocks,
		report.Signing{Names: []message.Text{message.New("Manager, full name and signature"), message.New("Date")}})
	d.Footer = message.New("Opening balances have numbers from %d on. Sheets and receipts name them so.", int64(opening.First))
	return d
}

func right(titles ...message.Text) []report.Column {
	var out []report.Column
	for _, t := range titles {
		out = append(out, report.Column{Title: t, Align: report.Right})
	}
	return out
}

func grainName(commodity string) message.Text { return message.Words(grain.NameOf(commodity)) }

func given(a *quantity.Amount) message.Text {
	if a == nil {
		return message.Text{}
	}
	return message.New("%s", *a)
}

func dayOf(d quantity.Date) message.Text {
	if d.IsZero() {
		return message.Text{}
	}
	return message.New("%s", d)
}

// balanceTable is what the bins hold and what the owners account for, grain by grain.
func balanceTable(o opening.Opening) report.Table {
	t := report.Table{
		Name: message.New("Balance"),
		Columns: append([]report.Column{{Title: message.New("Grain")}},
			right(message.New("In the bins"), position.Owed.Name(), position.Company.Name(), position.Between.Name(), message.New("Apart"))...),
	}
	for _, b := range o.Balances() {
		t.Rows = append(t.Rows, report.Row{Cells: []message.Text{
			grainName(b.Commodity), message.New("%s", b.Lying), message.New("%s", b.Owed), message.New("%s", b.Company), message.New("%s", b.Between), message.New("%s", b.Off()),
		}})
	}
	return t
}

// lyingTable is what lies in the bins, layer on layer.
func lyingTable(o opening.Opening) report.Table {
	t := report.Table{
		Name: message.New("Layers, the lowest first"),
		Columns: append([]report.Column{{Title: message.New("Bin")}, {Title: message.New("Grain")}},
			right(message.New("Weight"), message.New("Moisture"), message.New("Test weight"), message.New("Oldest"))...),
	}
	for _, l := range o.Lying {
		t.Rows = append(t.Rows, report.Row{Cells: []message.Text{
			message.Name(l.Bin), grainName(l.Commodity), message.New("%s", l.Weight), given(l.Moisture), given(l.TestWeight), dayOf(l.Since),
		}})
	}
	return t
}

// lotTable is what depositors are owed, and what the house owns.
func lotTable(o opening.Opening) report.Table {
	t := report.Table{
		Name: message.New("Opening balances, by depositor"), Empty: message.New("Nothing is owed to depositors."),
		Columns: []report.Column{
			{Title: message.New("Number"), Align: report.Right}, {Title: message.New("Depositor")}, {Title: message.New("Grain")},
			{Title: message.New("Held under")}, {Title: message.New("Quantity"), Align: report.Right}, {Title: message.New("Weight as settled"), Align: report.Right},
			{Title: message.New("Delivered")}, {Title: message.New("Price"), Align: report.Right}, {Title: message.New("Old ticket")}, {Title: message.New("Receipt"), Align: report.Right},
		},
	}
	for _, l := range o.Lots {
		t.Rows = append(t.Rows, report.Row{Cells: []message.Text{
			numberOf(l.Number), message.New("%v %v", l.Grower, l.Name), grainName(l.Commodity), l.Said(), message.New("%s", l.Quantity), message.New("%s", l.Weight),
			dayOf(l.Since), given(l.Price), message.Name(l.Paper), receiptOf(l),
		}})
	}
	for _, own := range o.Owned {
		t.Rows = append(t.Rows, report.Row{Cells: []message.Text{
			{}, {}, grainName(own.Commodity), ownedName(own), {}, message.New("%s", own.Weight), {}, {}, {}, {},
		}})
	}
	return t
}

// advanceTable is what depositors were paid before and still owe.
func advanceTable(o opening.Opening) report.Table {
	t := report.Table{Name: message.New("Advances"), Columns: []report.Column{
		{Title: message.New("Number"), Align: report.Right}, {Title: message.New("Depositor")}, {Title: message.New("Paid on")}, {Title: message.New("Amount"), Align: report.Right}, {Title: message.New("Old paper")},
	}}
	for _, a := range o.Advances {
		t.Rows = append(t.Rows, report.Row{Cells: []message.Text{numberOf(a.Number), message.New("%v %v", a.Grower, a.Name), dayOf(a.Since), message.New("%s", a.Amount), message.Name(a.Paper)}})
	}
	return t
}

// lienTable is the notices of lien that came in before.
func lienTable(o opening.Opening) report.Table {
	t := report.Table{Name: message.New("Notices of lien"), Columns: []report.Column{
		{Title: message.New("Number"), Align: report.Right}, {Title: message.New("Grower")}, {Title: message.New("Lender")}, {Title: message.New("Grain")}, {Title: message.New("Received")}, {Title: message.New("Last day")}, {Title: message.New("Old paper")},
	}}
	for _, n := range o.Liens {
		of := message.New("every grain")
		if n.Commodity != "" {
			of = grainName(n.Commodity)
		}
		t.Rows = append(t.Rows, report.Row{Cells: []message.Text{numberOf(n.Number), message.Name(n.Grower), message.Name(n.Holder), of, dayOf(n.Since), dayOf(n.Until), message.Name(n.Paper)}})
	}
	return t
}

// numberOf is a number that is given when the opening is entered.
func numberOf(n int64) message.Text {
	if n == 0 {
		return message.Text{}
	}
	return message.New("%d", n)
}

func ownedName(o opening.Owned) message.Text {
	if o.Line == position.Sold {
		return position.Company.Name()
	}
	return o.Line.Name()
}

func receiptOf(l opening.Lot) message.Text {
	switch {
	case l.Receipt == nil:
		return message.Text{}
	case l.Receipt.Negotiable:
		return message.New("%d, negotiable", l.Receipt.Number)
	}
	return message.New("%d", l.Receipt.Number)
}
