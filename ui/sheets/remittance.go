package sheets

import (
	"cmp"
	"context"

	"tenthpoint/internal/office/money"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/report"
	"tenthpoint/ui/session"
	"tenthpoint/ui/session/ask"
)

// Remit asks for a span of days and prints what is to be handed on of each levy.
func (p *Payments) Remit() {
	f := p.session
	thisYear(f, ask.Span{
		Title: f.Say("Levies to be handed on"),
		Text:  f.Say("What settlement sheets of these days have taken, a table for each levy. A sheet void later is taken back on the day it was void."),
		Paper: func(_ map[string]string, from, to quantity.Date) (report.Document, string, string, error) {
			all, err := money.Remittance(context.Background(), f.Desk, "", from, to)
			handed, failed := money.Handovers(context.Background(), f.Desk)
			err = cmp.Or(err, failed)
			return money.RemittancePaper(all, handed, f.Desk.Profile(), from, to, f.Desk.Today()), "levies", f.Say("the list of levies"), err
		},
	})
}

// Totals asks for a span of days and prints what growers sold and were paid in it.
func (p *Payments) Totals() {
	f := p.session
	thisYear(f, ask.Span{
		Title: f.Say("Totals by grower"),
		Text:  f.Say("By grower and grain: what was sold, deducted, payable and paid in these days. No tax advice."),
		Paper: func(_ map[string]string, from, to quantity.Date) (report.Document, string, string, error) {
			all, err := money.PayeeTotals(context.Background(), f.Desk, from, to)
			return money.PayeePaper(all, f.Desk.Profile(), f.GrainName, from, to, f.Desk.Today()), "totals", f.Say("the totals by grower"), err
		},
	})
}

// thisYear asks for a span of days, this year's at first.
func thisYear(f *session.Session, s ask.Span) {
	today := f.Desk.Today()
	first, _ := quantity.NewDate(today.Year(), 1, 1)
	s.From, s.To = first.String(), today.String()
	s.Ask(f)
}
