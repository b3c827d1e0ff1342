package money

import (
	"cmp"
	"context"

	"tenthpoint/internal/elevator"
	"tenthpoint/internal/message"
	"tenthpoint/internal/office"
	"tenthpoint/internal/paysheet"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/report"
	"tenthpoint/internal/spelled"
)

// Payments are all payments by number.
func Payments(ctx context.Context, d office.Desk) ([]paysheet.Payment, error) {
	all, err := office.RecordsOf[paysheet.Payment](ctx, d.Reader())
	paysheet.PaymentsInOrder(all)
	return all, err
}

// OpenSheets are the sheets on which money is still to be paid, the longest due first.
func OpenSheets(ctx context.Context, d office.Desk) ([]paysheet.Open, error) {
	sheets, err := Sheets(ctx, d)
	if err != nil {
		return nil, err
	}
	payments, err := Payments(ctx, d)
	return paysheet.OpenSheets(sheets, payments), err
}

// PaymentNumbered is a payment with its sheet, and what is left of that after all payments.
func PaymentNumbered(ctx context.Context, d office.Desk, number int64) (p paysheet.Payment, s paysheet.Open, err error) {
	payments, err := Payments(ctx, d)
	if err != nil {
		return p, s, err
	}
	for _, p := range payments {
		if p.Number != number {
			continue
		}
		sheets, err := Sheets(ctx, d)
		if err != nil {
			return p, s, err
		}
		for _, one := range sheets {
			if one.Number == p.Sheet {
				s.Sheet, s.Paid = one, paysheet.PaidOn(payments, one.Number)
				s.Left = paysheet.BalancesOf(sheets, payments)[one.Number]
			}
		}
		return p, s, nil
	}
	return p, s, message.NotFound.Errorf("there is no payment %d here", number)
}

// Stub is the paper that goes with a payment.
func Stub(p paysheet.Payment, s paysheet.Open, house elevator.Profile) report.Document {
	d := paper(house, p.Day, message.New("Payment %d", p.Number), message.New("on settlement sheet %d, %s", p.Sheet, p.Day))
	if p.Voided != nil {
		d.Marks = append(d.Marks, message.New("VOID since %s: %v", p.Voided.Day, p.Voided.Reason))
	}
	d.Blocks = append(d.Blocks, report.Pairs{Pairs: []report.Pair{
		{Label: message.New("Payable to"), Value: payees(s.Sheet)},
		{Label: message.New("Amount"), Value: inWords(p.Amount, house.Language)},
		{Label: message.New("Paid"), Value: message.List(" ", p.How.Said(), message.Own(p.Reference))},
		{Label: message.New("Settlement sheet"), Value: message.New("%d, of %s", s.Number, s.Day)},
		{Label: message.New("Payable on it"), Value: figure(s.Figures["payable"])},
		{Label: message.New("Paid on it"), Value: figure(s.Paid)},
		{Label: message.New("Still open"), Value: figure(s.Left)},
		{Label: message.New("Written down by"), Value: message.Name(p.By)},
	}})
	return d
}

// inWords is a sum as a figure and, as checks have it, in words.
func inWords(sum quantity.Amount, language string) message.Text {
	words, ok := spelled.Dollars(cmp.Or(language, "en"), sum)
	if !ok {
		return figure(sum)
	}
	return message.New("%s: %v", sum, words)
}
