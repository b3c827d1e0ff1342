package money

import (
	"tenthpoint/internal/contract"
	"tenthpoint/internal/elevator"
	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/report"
)

// ContractPaper is a contract as a paper: what was agreed, what happened to it, what is delivered.
func ContractPaper(f contract.Filled, grain string, p elevator.Profile, today quantity.Date) report.Document {
	d := paper(p, today, message.New("Contract %v", f.Number), message.New("%s, as of %s", f.Form.Name(), today))
	pairs := []report.Pair{
		{Label: message.New("Grower"), Value: message.Name(f.Grower)},
		{Label: message.New("Grain"), Value: message.Words(grain)},
		{Label: message.New("Agreed"), Value: figure(f.ContractTerms.Quantity)},
		{Label: message.New("Price"), Value: f.PriceText()},
		{Label: message.New("Delivery"), Value: spanText(f.From, f.Until)},
		{Label: message.New("Delivered"), Value: figure(f.Delivered)},
		{Label: message.New("Still to come"), Value: figure(f.Left)},
	}
	if f.Tolerance != nil {
		pairs = append(pairs, report.Pair{Label: message.New("Tolerance"), Value: message.New("%s more or less", *f.Tolerance)})
	}
	if f.Short.Sign() > 0 {
		pairs = append(pairs, report.Pair{Label: message.New("Missing beyond the tolerance"), Value: figure(f.Short)})
	}
	for _, own := range []struct {
		label message.Text
		text  string
	}{{message.New("Quality"), f.Quality}, {message.New("Futures month"), f.Month}} {
		if own.text != "" {
			pairs = append(pairs, report.Pair{Label: own.label, Value: message.Name(own.text)})
		}
	}
	for _, s := range f.Sellers {
		pairs = append(pairs, report.Pair{Label: message.New("Seller"), Value: message.New("%v: %s of %s", s.GrowerID, s.Parts, s.Of)})
	}
	d.Blocks = append(d.Blocks, report.Pairs{Pairs: pairs},
		report.Heading{Text: message.New("Priced in parts")}, pricedTable(f.ContractTerms),
		report.Heading{Text: message.New("Changes")}, changeTable(f.ContractTerms),
		report.Heading{Text: message.New("Delivered")}, appliedTable(f),
		report.Signing{Names: []message.Text{message.New("Seller, name and signature"), message.New("For the elevator"), message.New("Date")}})
	return d
}

func figure(a quantity.Amount) message.Text { return message.New("%s", a) }

func pricedTable(c elevator.ContractTerms) report.Table {
	t := report.Table{Name: message.New("priced"), Empty: message.New("No part is priced by itself."), Columns: []report.Column{
		{Title: message.New("Day")}, {Title: message.New("Quantity"), Align: report.Right}, {Title: message.New("Futures"), Align: report.Right},
		{Title: message.New("Basis"), Align: report.Right}, {Title: message.New("Price"), Align: report.Right}, {Title: message.New("By")},
	}}
	for _, p := range c.Parts {
		t.Rows = append(t.Rows, report.Row{Cells: []message.Text{message.New("%s", p.Day), figure(p.Quantity), optional(p.Futures), optional(p.Basis), figure(p.Price), message.Name(p.By)}})
	}
	return t
}

func optional(a *quantity.Amount) message.Text {
	if a == nil {
		return message.Text{}
	}
	return figure(*a)
}

func changeTable(c elevator.ContractTerms) report.Table {
	t := report.Table{Name: message.New("changes"), Empty: message.New("Nothing has changed."), Columns: []report.Column{
		{Title: message.New("Day")}, {Title: message.New("What")}, {Title: message.New("Before")}, {Title: message.New("Money"), Align: report.Right}, {Title: message.New("Note")}, {Title: message.New("By")},
	}}
	for _, change := range c.Changes {
		before := message.Text{}
		if !change.Until.IsZero() {
			before = message.List(" ", message.Own(change.Month), message.New("until %s", change.Until))
		}
		money := optional(change.Money)
		if change.What == elevator.BoughtOut && change.Money != nil {
			money = fromOwner(*change.Money)
		}
		t.Rows = append(t.Rows, report.Row{Cells: []message.Text{message.New("%s", change.Day), contract.ChangeName(change.What), before, money, message.Name(change.Note), message.Name(change.By)}})
	}
	return t
}

func appliedTable(f contract.Filled) report.Table {
	t := report.Table{Name: message.New("delivered"), Empty: message.New("Nothing is delivered on it."), Columns: []report.Column{
		{Title: message.New("Ticket"), Align: report.Right}, {Title: message.New("Owner")}, {Title: message.New("Day")}, {Title: message.New("Applied"), Align: report.Right}, {Title: message.New("Note")},
	}}
	for _, a := range f.Applied {
		t.Rows = append(t.Rows, appliedRow(a))
	}
	t.Rows = append(t.Rows, report.Row{Kind: report.Total, Cells: []message.Text{{}, {}, {}, figure(f.Delivered), {}}})
	return t
}

func appliedRow(a contract.Applied) report.Row {
	return report.Row{Cells: []message.Text{message.New("%d", a.Ticket), message.Name(a.Owner), message.New("%s", a.Day), figure(a.Quantity), a.Why}}
}
