package sheets

import (
	"context"

	"tenthpoint/internal/office/money"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/report"
	"tenthpoint/ui/model"
	"tenthpoint/ui/session"
)

// Remit asks for a span of days and prints what is to be handed on of each levy.
func (p *Payments) Remit() {
	f := p.session
	askSpan(f, f.Say("Levies to be handed on"), f.Say("What settlement sheets of these days have taken, a table for each levy. A sheet void later is taken back on the day it was void."),
		f.Say("the list of levies"), "levies", func(from, to quantity.Date) (report.Document, error) {
			all, err := money.Remittance(context.Background(), f.Desk, "", from, to)
			return money.RemittancePaper(all, f.Desk.Profile(), from, to, f.Desk.Today()), err
		})
}

// Totals asks for a span of days and prints what growers sold and were paid in it.
func (p *Payments) Totals() {
	f := p.session
	askSpan(f, f.Say("Totals by grower"), f.Say("By grower and grain: what was sold, deducted, payable and paid in these days. No tax advice."),
		f.Say("the totals by grower"), "totals", func(from, to quantity.Date) (report.Document, error) {
			all, err := money.PayeeTotals(context.Background(), f.Desk, from, to)
			return money.PayeePaper(all, f.Desk.Profile(), f.GrainName, from, to, f.Desk.Today()), err
		})
}

// askSpan asks for a span of days, this year's at first, and prints the paper about it.
func askSpan(f *session.Session, title, text, what, name string, paper func(from, to quantity.Date) (report.Document, error)) {
	today := f.Desk.Today()
	first, _ := quantity.NewDate(today.Year(), 1, 1)
	f.Put(model.Ask{
		Title: title, Text: text, Yes: f.Say("Print"),
		Fields: []model.AskField{
			{ID: "from", Label: f.Say("From"), Value: first.String(), Chars: 12, Hint: f.Say("year-month-day, or empty")},
			{ID: "to", Label: f.Say("Through"), Value: today.String(), Chars: 12, Hint: f.Say("year-month-day, or empty")},
			{ID: "files", Label: f.Say("Also as workbook and lines"), Checkbox: true},
		},
		Check: func(values map[string]string) map[string]string {
			wrong := map[string]string{}
			for _, id := range []string{"from", "to"} {
				if _, err := session.DateOrNone(values[id]); err != nil {
					wrong[id] = f.Sentence(err)
				}
			}
			return wrong
		},
		Then: func(values map[string]string) {
			from, _ := session.DateOrNone(values["from"])
			to, _ := session.DateOrNone(values["to"])
			doc, err := paper(from, to)
			if err != nil {
				f.Fail(err)
				return
			}
			if values["files"] == model.TickOn {
				session.ExportDocument(f, doc, name, what)
			}
			session.PrintDocument(f, doc, name, what, true)
		},
	})
}
