package confirming

import (
	"strings"

	"tenthpoint/internal/confirmation"
	"tenthpoint/internal/elevator"
	"tenthpoint/internal/grain"
	"tenthpoint/internal/message"
	"tenthpoint/internal/report"
)

// Letter is a letter as a paper, in a language by its code; that of the house for an empty one.
func Letter(r confirmation.Round, l confirmation.Letter, p elevator.Profile, language string) report.Document {
	d := report.Of(p, r.Day)
	if language != "" {
		d.Language = language
	}
	d.Title, d.About = message.New("Please confirm your balances"), message.New("letter %d of sample %d, %s", l.Number, r.Number, r.Day)
	d.Blocks = append(d.Blocks,
		report.Para{Text: message.Name(l.Name), Strong: true}, report.Para{Text: message.Name(strings.TrimSpace(l.Address))},
		report.Para{Text: message.New("By our books this is yours, or owed to you, in the evening of %s. Please compare it with your tickets and receipts, mark an answer below, sign and send this letter back. Your answer may also go to the licensing authority.", r.Day)},
		balanceTable(l),
		report.Para{Text: message.New("[  ]  I agree with these balances.")},
		report.Para{Text: message.New("[  ]  I do not agree. By my papers it is:  ______________________________________")},
		report.Signing{Names: []message.Text{message.New("Depositor, full name and signature"), message.New("Date")}})
	d.Footer = message.New("You were drawn by chance, by a seed that the house keeps. A balance you do not answer is not taken for right.")
	return d
}

func balanceTable(l confirmation.Letter) report.Table {
	t := report.Table{Name: message.New("Balances"), Columns: []report.Column{
		{Title: message.New("Grain")}, {Title: message.New("Held under")}, {Title: message.New("Quantity"), Align: report.Right},
	}}
	for _, b := range l.Balances {
		t.Rows = append(t.Rows, report.Row{Cells: []message.Text{message.Words(grain.NameOf(b.Commodity)), b.Under.Message(), message.New("%s", b.Quantity)}})
	}
	return t
}

// List is a sample as a paper: who was written to, what came back, and what did not.
func List(r confirmation.Round, p elevator.Profile) report.Document {
	d := report.Of(p, r.Day)
	d.Title, d.About = message.New("Balances confirmed by depositors"), message.New("sample %d, balances of %s", r.Number, r.Day)
	d.Blocks = append(d.Blocks, report.Pairs{Pairs: []report.Pair{
		{Label: message.New("Drawn by"), Value: message.Name(r.By)},
		{Label: message.New("Seed"), Value: message.Name(r.Seed)},
		{Label: message.New("Depositors with a balance"), Value: message.New("%d", r.Of)},
		{Label: message.New("Written to"), Value: message.New("%d", len(r.Letters))},
		{Label: message.New("Not answered"), Value: message.New("%d", len(r.Unanswered()))},
	}}, answerTable(r))
	d.Footer = message.New("Drawn in the order of the SHA-256 of the seed, a line end and the depositor's code.")
	return d
}

func answerTable(r confirmation.Round) report.Table {
	t := report.Table{Name: message.New("Letters"), Columns: []report.Column{
		{Title: message.New("Letter"), Align: report.Right}, {Title: message.New("Depositor")}, {Title: message.New("Answer")}, {Title: message.New("Day")}, {Title: message.New("What it says")}, {Title: message.New("Noted by")},
	}}
	for _, l := range r.Letters {
		cells := []message.Text{message.New("%d", l.Number), message.New("%v %v", l.Grower, l.Name), message.New("not answered"), {}, {}, {}}
		if a := l.Answer; a != nil {
			cells = append(cells[:2], a.How.Said(), message.New("%s", a.Day), message.Name(a.Words), message.Name(a.By))
		}
		t.Rows = append(t.Rows, report.Row{Cells: cells})
	}
	return t
}
