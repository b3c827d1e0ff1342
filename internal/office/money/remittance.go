package money

import (
	"context"

	"tenthpoint/internal/elevator"
	"tenthpoint/internal/levy"
	"tenthpoint/internal/message"
	"tenthpoint/internal/office"
	"tenthpoint/internal/paysheet"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/report"
)

// takenLevy is a levy of a settlement sheet with what it came to.
type takenLevy struct {
	*levy.Levy
	amount quantity.Amount // $
}

// levied are the levies of a sheet, worked out again from what the book keeps.
func levied(ctx context.Context, d office.Desk, s paysheet.Sheet) ([]takenLevy, error) {
	if len(s.Levies) == 0 {
		return nil, nil
	}
	worked, rules, err := ReworkFromBook(ctx, d, s)
	if err != nil {
		return nil, err
	}
	out := make([]takenLevy, len(rules.Levies))
	for i, l := range rules.Levies {
		step, found := worked.Step(paysheet.LevyID(i))
		if !found {
			return nil, message.Storage.Errorf("settlement sheet %d has no line for levy %v", s.Number, l.ID)
		}
		out[i] = takenLevy{l, step.Value()}
	}
	return out, nil
}

// touches reports whether a sheet, or its end, counts in a span of days.
func touches(s paysheet.Sheet, from, to quantity.Date) bool {
	return s.Day.Between(from, to) || s.Voided != nil && s.Voided.Day.Between(from, to)
}

// Remitted is a levy on one settlement sheet, to be handed on to its fund. Of a sheet that was void
// later there are two, and the second takes the first back.
type Remitted struct {
	Levy     *levy.Levy
	Sheet    paysheet.Sheet
	Day      quantity.Date
	Quantity quantity.Amount
	On       quantity.Amount // what the rate was taken on
	Amount   quantity.Amount // $
}

// Remittance lists the amounts to be handed on of one levy for a span of days; of all levies where id is
// empty.
func Remittance(ctx context.Context, d office.Desk, id string, from, to quantity.Date) ([]Remitted, error) {
	sheets, err := Sheets(ctx, d)
	if err != nil {
		return nil, err
	}
	var out []Remitted
	for _, s := range sheets {
		if !touches(s, from, to) {
			continue
		}
		taken, err := levied(ctx, d, s)
		if err != nil {
			return nil, err
		}
		for _, l := range taken {
			if id != "" && l.ID != id {
				continue
			}
			one := Remitted{Levy: l.Levy, Sheet: s, Day: s.Day, Quantity: s.Figures["quantity"], On: baseOf(l.Levy, s), Amount: l.amount}
			if one.Day.Between(from, to) {
				out = append(out, one)
			}
			if s.Voided != nil && s.Voided.Day.Between(from, to) {
				one.Day, one.Quantity, one.On, one.Amount = s.Voided.Day, one.Quantity.Neg(), one.On.Neg(), one.Amount.Neg()
				out = append(out, one)
			}
		}
	}
	return out, nil
}

func baseOf(l *levy.Levy, s paysheet.Sheet) quantity.Amount {
	return s.Figures[map[levy.Base]string{levy.Quantity: "quantity", levy.Gross: "gross", levy.Net: "net"}[l.Base]]
}

// RemittancePaper is a remittance as a paper, for each levy a table of what was taken and one of what was
// handed on in these days.
func RemittancePaper(all []Remitted, handed []paysheet.Handover, house elevator.Profile, from, to, made quantity.Date) report.Document {
	d := paper(house, made, message.New("Levies to be handed on"), spanText(from, to))
	if len(all) == 0 {
		d.Blocks = append(d.Blocks, report.Para{Text: message.New("No levy was taken in these days.")})
	}
	for _, l := range leviesOf(all) {
		d.Blocks = append(d.Blocks, report.Heading{Text: message.Name(l.Title)}, report.Para{Text: levyRule(l)}, remittanceTable(all, l))
		if t, any := handedOn(handed, l.ID, from, to); any {
			d.Blocks = append(d.Blocks, t)
		}
	}
	return d
}

func levyRule(l *levy.Levy) message.Text {
	rule := message.New("Levy %v: %s, by %v.", l.ID, l.Rate.Amount, l.Source)
	if !l.IsConfirmed() {
		return message.List(" ", rule, message.New("Nobody has confirmed the rule with its authority."))
	}
	return message.List(" ", rule, message.New("Confirmed by %v on %s.", l.ConfirmedBy, l.ConfirmedOn))
}

// leviesOf are the levies of a remittance in the order they were first taken, editions apart.
func leviesOf(all []Remitted) (out []*levy.Levy) {
	known := map[string]bool{}
	for _, r := range all {
		if !known[r.Levy.Hash] {
			known[r.Levy.Hash] = true
			out = append(out, r.Levy)
		}
	}
	return out
}

func remittanceTable(all []Remitted, l *levy.Levy) report.Table {
	t := report.Table{Name: message.Name(l.ID), Columns: []report.Column{
		{Title: message.New("Day")}, {Title: message.New("Sheet"), Align: report.Right}, {Title: message.New("Grower")},
		{Title: message.New("Quantity"), Align: report.Right}, {Title: message.New("Taken on"), Align: report.Right}, {Title: message.New("Levy"), Align: report.Right}, {Title: message.New("Note")},
	}}
	var quantities, sum quantity.Amount
	for _, r := range all {
		if r.Levy.Hash != l.Hash {
			continue
		}
		note := message.Text{}
		if r.Amount.Sign() < 0 {
			note = message.New("void, taken back")
		}
		if len(t.Rows) == 0 {
			quantities, sum = quantity.Zero(r.Quantity.Unit()), quantity.Zero(quantity.Dollar)
		}
		quantities, sum = quantities.Add(r.Quantity), sum.Add(r.Amount)
		t.Rows = append(t.Rows, report.Row{Cells: []message.Text{
			message.New("%s", r.Day), message.New("%d", r.Sheet.Number), message.New("%v %v", r.Sheet.Grower, r.Sheet.Name), figure(r.Quantity), figure(r.On), figure(r.Amount), note}})
	}
	t.Rows = append(t.Rows, report.Row{Kind: report.Total, Cells: []message.Text{{}, {}, {}, figure(quantities), {}, figure(sum), {}}})
	return t
}
