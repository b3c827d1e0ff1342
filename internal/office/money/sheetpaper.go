package money

import (
	"tenthpoint/internal/elevator"
	"tenthpoint/internal/levy"
	"tenthpoint/internal/message"
	"tenthpoint/internal/office"
	"tenthpoint/internal/paysheet"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/report"
	"tenthpoint/internal/tariff"
	"tenthpoint/internal/worksheet"
)

// SheetPaper is a settlement sheet as a paper: the tickets, what is deducted and why, the sum, and
// the working of every line.
func SheetPaper(s paysheet.Sheet, w paysheet.Worked, by paysheet.Rules, grain string, desk office.Desk, say *message.Printer) report.Document {
	p := desk.Profile()
	d := paper(p, s.Day, sheetTitle(s), message.New("%v, %v, on %s", s.Name, s.Grower, s.Day))
	if s.Voided != nil {
		d.Marks = append(d.Marks, message.New("VOID since %s: %v", s.Voided.Day, s.Voided.Reason))
	}
	if by.Tariff.Status == tariff.Example {
		d.MarkExample()
	}
	pairs := []report.Pair{
		{Label: message.New("Grain"), Value: message.Words(grain)}, {Label: message.New("Tariff"), Value: message.Name(by.Tariff.ID)}, {Label: message.New("Settled by"), Value: message.Name(s.By)},
	}
	if s.Corrects > 0 {
		pairs = append(pairs, report.Pair{Label: message.New("In place of sheet"), Value: message.New("%d", s.Corrects)})
	}
	if !s.PayAfter.IsZero() {
		pairs = append(pairs, report.Pair{Label: message.New("Paid from"), Value: message.New("%s", s.PayAfter)})
	}
	pairs = append(pairs, report.Pair{Label: message.New("Payable to"), Value: payees(s)})
	if s.Release != "" {
		pairs = append(pairs, report.Pair{Label: message.New("Lien, not paid jointly"), Value: message.Words(s.Release)})
	}
	d.Blocks = append(d.Blocks, report.Pairs{Pairs: pairs}, report.Heading{Text: message.New("Tickets")}, ticketTable(s, w, desk), report.Heading{Text: message.New("Settlement")}, totalTable(w, by),
		report.Para{Text: message.New("+ is to the owner and - from the owner; the working has the size alone and says in words what it is.")})
	for _, l := range by.Levies {
		d.Blocks = append(d.Blocks, report.Para{Text: evidence(l, s, w, p)})
	}
	d.Blocks = append(d.Blocks, report.Heading{Text: message.New("How it was worked out")}, report.Steps{Steps: steps(w.Sheet, say)},
		report.Signing{Names: []message.Text{message.New("For the elevator"), message.New("Seller, name and signature")}})
	return d
}

// sheetTitle is the number of a sheet, which it has once it is issued.
func sheetTitle(s paysheet.Sheet) message.Text {
	if s.Number == 0 {
		return message.New("Settlement sheet, not issued")
	}
	return message.New("Settlement sheet %d", s.Number)
}

func payees(s paysheet.Sheet) message.Text {
	return message.Names(" and ", append([]string{s.Name}, s.Payees...))
}

func ticketTable(s paysheet.Sheet, w paysheet.Worked, desk office.Desk) report.Table {
	t := report.Table{Name: message.New("tickets"), Columns: []report.Column{
		{Title: message.New("Ticket"), Align: report.Right}, {Title: message.New("Delivered")}, {Title: message.New("Quantity"), Align: report.Right}, {Title: message.New("Price"), Align: report.Right},
		{Title: message.New("From")}, {Title: message.New("Value"), Align: report.Right},
	}}
	for i, l := range s.Lines {
		value, _ := w.Step(paysheet.LineID(i) + ".value")
		t.Rows = append(t.Rows, report.Row{Cells: []message.Text{message.New("%d", l.Ticket), message.New("%s", l.Delivered), figure(l.Quantity), figure(l.Price), priceFrom(l, desk), report.Figure(value.Printed())}})
	}
	t.Rows = append(t.Rows, report.Row{Kind: report.Total, Cells: []message.Text{{}, {}, figure(w.Quantity.Value()), {}, {}, report.Figure(w.Gross.Printed())}})
	return t
}

// priceFrom says where a line's price is from: of a posted one, when it was posted and by whom.
func priceFrom(l paysheet.Line, desk office.Desk) message.Text {
	if l.Bid == nil {
		return message.Words(l.Source)
	}
	return message.New("posted %s by %s", message.Own(desk.Local(l.Bid.At)), l.Bid.Who)
}

// totalTable is the settlement as its owner reads it, with each levy by its name: + is to the owner,
// - from the owner.
func totalTable(w paysheet.Worked, by paysheet.Rules) report.Table {
	t := report.Table{Name: message.New("settlement"), Columns: []report.Column{{Title: message.New("What")}, {Title: message.New("Money"), Align: report.Right}}}
	row := func(label, money message.Text) {
		t.Rows = append(t.Rows, report.Row{Cells: []message.Text{label, money}})
	}
	taken := func(step *worksheet.Step) { row(step.Label(), fromOwner(step.Value())) }
	row(w.Gross.Label(), figure(w.Gross.Value()))
	row(w.Quality.Label(), toOwner(w.Quality.Value()))
	row(w.Net.Label(), figure(w.Net.Value()))
	taken(w.Services)
	taken(w.Keeping)
	for i, l := range by.Levies {
		step, _ := w.Step(paysheet.LevyID(i))
		if l.Buyer {
			row(message.New("%s, paid by the elevator", message.Name(l.Title)), figure(step.Value()))
			continue
		}
		row(message.Name(l.Title), fromOwner(step.Value()))
	}
	taken(w.Advances)
	taken(w.Interest)
	taken(w.Deducted)
	t.Rows = append(t.Rows, report.Row{Kind: report.Total, Cells: []message.Text{w.Payable.Label(), figure(w.Payable.Value())}})
	return t
}

// toOwner is money that is added for an owner, fromOwner money that is taken; below zero it is the
// other way.
func toOwner(a quantity.Amount) message.Text {
	if a.Sign() > 0 {
		return report.Figure("+" + a.FixedString(cents))
	}
	return report.Figure(a.FixedString(cents))
}

func fromOwner(a quantity.Amount) message.Text { return toOwner(a.Neg()) }

// cents are the places of money on a sheet.
const cents = 2

// evidence is the producer's record of a levy: who bought, from whom, how much, its value, the
// levy, the day and the place, and whether anybody confirmed the rule.
func evidence(l *levy.Levy, s paysheet.Sheet, w paysheet.Worked, p elevator.Profile) message.Text {
	said := message.New("%v (%v): bought by %v, %v, of %v; %s; net market value %s; on %s; by %v.",
		l.Title, l.Jurisdiction, p.Business, p.Town, s.Name, w.Quantity.Value(), w.Net.Value(), s.Day, l.Source)
	if l.Refundable {
		said = message.List(" ", said, message.New("The producer may ask for it back."))
	}
	if l.IsConfirmed() {
		return message.List(" ", said, message.New("Confirmed by %v on %s.", l.ConfirmedBy, l.ConfirmedOn))
	}
	return message.List(" ", said, message.New("Nobody has confirmed this rule; confirm it with the authority."))
}

// steps are the working, in the language of the house.
func steps(s *worksheet.Sheet, say *message.Printer) []report.Step {
	var out []report.Step
	for _, section := range s.Sections() {
		out = append(out, report.Step{Label: say.Text(section.Title), Part: true})
		for _, step := range section.Steps {
			out = append(out, report.Step{Label: say.Text(step.Label()), Figure: step.PrintedIn(say), Explain: step.ExplainIn(say), Skipped: step.Kind() == worksheet.NotApplied})
		}
	}
	return out
}
