package money

import (
	"cmp"
	"context"
	"slices"

	"tenthpoint/internal/elevator"
	"tenthpoint/internal/message"
	"tenthpoint/internal/office"
	"tenthpoint/internal/paysheet"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/report"
)

// PayeeTotal is a grower's sales of one grain in a span, and the payments on them.
type PayeeTotal struct {
	Grower, Name, Commodity string
	Sheets                  int
	// Quantity, Net, Deducted and Payable are of the settlement sheets of the span; Paid is what was
	// paid in the span, also on older sheets.
	Quantity, Net, Deducted, Payable, Paid quantity.Amount
}

// PayeeTotals are the totals of all growers for a span of days, by grower and grain. What is void
// does not count.
func PayeeTotals(ctx context.Context, d office.Desk, from, to quantity.Date) ([]PayeeTotal, error) {
	sheets, err := Sheets(ctx, d)
	if err != nil {
		return nil, err
	}
	payments, err := Payments(ctx, d)
	if err != nil {
		return nil, err
	}
	payments = slices.DeleteFunc(payments, func(p paysheet.Payment) bool { return !p.Day.Between(from, to) })
	totals := map[[2]string]*PayeeTotal{}
	for _, s := range sheets {
		paid := paysheet.PaidOn(payments, s.Number)
		counts := s.InForce() && s.Day.Between(from, to)
		if !counts && paid.Sign() == 0 {
			continue
		}
		key := [2]string{s.Grower, s.Commodity}
		t, known := totals[key]
		if !known {
			none := quantity.Zero(quantity.Dollar)
			t = &PayeeTotal{Grower: s.Grower, Commodity: s.Commodity, Quantity: quantity.Zero(s.Figures["quantity"].Unit()), Net: none, Deducted: none, Payable: none, Paid: none}
			totals[key] = t
		}
		t.Name, t.Paid = s.Name, t.Paid.Add(paid)
		if counts {
			t.Sheets++
			t.Quantity, t.Net = t.Quantity.Add(s.Figures["quantity"]), t.Net.Add(s.Figures["net"])
			t.Deducted, t.Payable = t.Deducted.Add(s.Figures["deducted"]), t.Payable.Add(s.Figures["payable"])
		}
	}
	var out []PayeeTotal
	for _, t := range totals {
		out = append(out, *t)
	}
	slices.SortFunc(out, func(a, b PayeeTotal) int {
		return cmp.Or(cmp.Compare(a.Grower, b.Grower), cmp.Compare(a.Commodity, b.Commodity))
	})
	return out, nil
}

// PayeePaper is the totals as a paper.
func PayeePaper(all []PayeeTotal, house elevator.Profile, grainName func(string) string, from, to, made quantity.Date) report.Document {
	d := paper(house, made, message.New("Totals by grower"), spanText(from, to))
	t := report.Table{Name: message.New("totals"), Empty: message.New("Nothing was settled or paid in these days."), Columns: []report.Column{
		{Title: message.New("Grower")}, {Title: message.New("Name")}, {Title: message.New("Grain")}, {Title: message.New("Sheets"), Align: report.Right},
		{Title: message.New("Quantity"), Align: report.Right}, {Title: message.New("Net market value"), Align: report.Right},
		{Title: message.New("Deducted"), Align: report.Right}, {Title: message.New("Payable"), Align: report.Right}, {Title: message.New("Paid"), Align: report.Right},
	}}
	none := quantity.Zero(quantity.Dollar)
	net, deducted, payable, paid := none, none, none, none
	for _, one := range all {
		t.Rows = append(t.Rows, report.Row{Cells: []message.Text{message.Name(one.Grower), message.Name(one.Name), message.Words(grainName(one.Commodity)),
			message.New("%d", one.Sheets), figure(one.Quantity), figure(one.Net), fromOwner(one.Deducted), figure(one.Payable), figure(one.Paid)}})
		net, deducted, payable, paid = net.Add(one.Net), deducted.Add(one.Deducted), payable.Add(one.Payable), paid.Add(one.Paid)
	}
	if len(all) > 0 {
		t.Rows = append(t.Rows, report.Row{Kind: report.Total, Cells: []message.Text{{}, {}, {}, {}, {}, figure(net), fromOwner(deducted), figure(payable), figure(paid)}})
	}
	d.Blocks = append(d.Blocks, t)
	return d
}
