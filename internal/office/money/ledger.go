package money

import (
	"context"

	"tenthpoint/internal/elevator"
	"tenthpoint/internal/ledger"
	"tenthpoint/internal/message"
	"tenthpoint/internal/office"
	"tenthpoint/internal/paysheet"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/report"
)

// Transactions are the settlement sheets and payments of a span as postings.
func Transactions(ctx context.Context, d office.Desk, accounts ledger.Accounts, from, to quantity.Date) ([]ledger.Transaction, error) {
	sheets, err := Sheets(ctx, d)
	if err != nil {
		return nil, err
	}
	var all []ledger.Transaction
	byNumber := map[int64]paysheet.Sheet{}
	for _, s := range sheets {
		byNumber[s.Number] = s
		if !touches(s, from, to) {
			continue
		}
		taken, err := levied(ctx, d, s)
		if err != nil {
			return nil, err
		}
		levies := make([]ledger.Taken, len(taken))
		for i, l := range taken {
			levies[i] = ledger.Taken{ID: l.ID, Amount: l.amount, Borne: l.Buyer}
		}
		posted, err := accounts.Sheet(s, levies)
		if err != nil {
			return nil, err
		}
		all = append(all, posted...)
	}
	payments, err := Payments(ctx, d)
	if err != nil {
		return nil, err
	}
	for _, p := range payments {
		posted, err := accounts.Payment(p, byNumber[p.Sheet])
		if err != nil {
			return nil, err
		}
		all = append(all, posted...)
	}
	return ledger.Between(all, from, to), nil
}

// LedgerPaper is the postings of a span as a paper, with what each account comes to.
func LedgerPaper(all []ledger.Transaction, house elevator.Profile, from, to, made quantity.Date) report.Document {
	d := paper(house, made, message.New("Postings"), spanText(from, to))
	lines := report.Table{Name: message.New("postings"), Empty: message.New("Nothing is posted in these days."), Columns: []report.Column{
		{Title: message.New("Day")}, {Title: message.New("What")}, {Title: message.New("Grower")}, {Title: message.New("Account")},
		{Title: message.New("Debit"), Align: report.Right}, {Title: message.New("Credit"), Align: report.Right},
	}}
	for _, t := range all {
		for _, p := range t.Postings {
			debit, credit := sides(p.Amount)
			lines.Rows = append(lines.Rows, report.Row{Cells: []message.Text{message.New("%s", t.Day), t.Said(), message.New("%v %v", t.Grower, t.Name), message.Name(p.Account), debit, credit}})
		}
	}
	sums := report.Table{Name: message.New("accounts"), Empty: message.New("Nothing is posted in these days."), Columns: []report.Column{
		{Title: message.New("Account")}, {Title: message.New("Debit"), Align: report.Right}, {Title: message.New("Credit"), Align: report.Right},
	}}
	for _, p := range ledger.Totals(all) {
		debit, credit := sides(p.Amount)
		sums.Rows = append(sums.Rows, report.Row{Cells: []message.Text{message.Name(p.Account), debit, credit}})
	}
	d.Blocks = append(d.Blocks, lines, report.Heading{Text: message.New("By account")}, sums)
	return d
}

// sides puts an amount into the column of debits or of credits.
func sides(a quantity.Amount) (debit, credit message.Text) {
	if a.Sign() < 0 {
		return message.Text{}, figure(a.Neg())
	}
	return figure(a), message.Text{}
}

// spanText says which days a paper is about.
func spanText(from, to quantity.Date) message.Text {
	switch {
	case from.IsZero() && to.IsZero():
		return message.New("all days")
	case from.IsZero():
		return message.New("until %s", to)
	case to.IsZero():
		return message.New("from %s", from)
	}
	return message.New("%s to %s", from, to)
}
