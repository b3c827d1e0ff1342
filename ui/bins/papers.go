package bins

import (
	"context"
	"fmt"
	"slices"

	"tenthpoint/internal/bin"
	"tenthpoint/internal/message"
	"tenthpoint/internal/office/binlog"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/report"
	"tenthpoint/ui/session"
	"tenthpoint/ui/session/ask"
)

// printDryingLog asks for the days and prints the log of the dryer.
func printDryingLog(b *Bins) {
	today := b.today()
	ask.Span{
		Title: b.session.Say("Drying log"), From: today.AddDays(-cardDays).String(), To: today.String(),
		Paper: func(_ map[string]string, from, to quantity.Date) (report.Document, string, string, error) {
			if to.IsZero() {
				to = today
			}
			doc, err := binlog.DryingLog(context.Background(), b.session.Desk, from, to)
			return doc, "drying-log-" + to.String(), b.session.Say("the drying log"), err
		},
	}.Ask(b.session)
}

// measuredUp is the newest measure-up of the chosen bin among the days of its card; false where there
// is none.
func measuredUp(b *Bins) (bin.Movement, bool) {
	today := b.today()
	all, err := binlog.Movements(context.Background(), b.session.Desk, b.chosen, today.AddDays(-cardDays), today)
	if err != nil || b.chosen == "" {
		return bin.Movement{}, false
	}
	for _, m := range slices.Backward(all) {
		if m.What == bin.MeasureUp {
			return m, true
		}
	}
	return bin.Movement{}, false
}

// printMeasureSheet prints the sheet of the newest measure-up of the chosen bin.
func printMeasureSheet(b *Bins) {
	m, known := measuredUp(b)
	if !known {
		b.session.Fail(message.NotFound.Errorf("bin %v was not measured up in the last %d days", b.chosen, cardDays))
		return
	}
	doc, err := binlog.MeasureSheet(context.Background(), b.session.Desk, m.Number)
	if err != nil {
		b.session.Fail(err)
		return
	}
	session.PrintDocument(b.session, doc, fmt.Sprintf("measure-up-%d", m.Number), b.session.Say("the sheet of measure-up %d", m.Number), false)
}
