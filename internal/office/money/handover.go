package money

import (
	"cmp"
	"context"
	"slices"

	"tenthpoint/internal/message"
	"tenthpoint/internal/office"
	"tenthpoint/internal/paysheet"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/report"
)

// Owed is the account of one levy with its fund.
type Owed struct {
	Levy                  string
	Taken, HandedOn, Left quantity.Amount // $; left is below zero where too much was handed on
	Through               quantity.Date   // the last day that was handed on; zero for none
}

// Owings are the accounts of all levies that were ever taken, of sheets up to a day.
func Owings(ctx context.Context, d office.Desk, through quantity.Date) ([]Owed, error) {
	taken, err := Remittance(ctx, d, "", quantity.Date{}, through)
	if err != nil {
		return nil, err
	}
	handed, err := Handovers(ctx, d)
	if err != nil {
		return nil, err
	}
	var out []Owed
	for _, r := range taken {
		at := slices.IndexFunc(out, func(o Owed) bool { return o.Levy == r.Levy.ID })
		if at < 0 {
			at, out = len(out), append(out, Owed{Levy: r.Levy.ID, Taken: quantity.Zero(quantity.Dollar), HandedOn: paysheet.HandedOn(handed, r.Levy.ID)})
		}
		out[at].Taken = out[at].Taken.Add(r.Amount)
	}
	for i := range out {
		out[i].Left = out[i].Taken.Sub(out[i].HandedOn)
		for _, h := range handed {
			if h.Levy == out[i].Levy && h.InForce() && h.Through.After(out[i].Through) {
				out[i].Through = h.Through
			}
		}
	}
	return out, nil
}

// OwedOf is the account of one levy, of sheets up to a day. It fails for a levy that no sheet has taken.
func OwedOf(ctx context.Context, d office.Desk, levy string, through quantity.Date) (Owed, error) {
	all, err := Owings(ctx, d, through)
	if err != nil {
		return Owed{}, err
	}
	at := slices.IndexFunc(all, func(o Owed) bool { return o.Levy == levy })
	if at < 0 {
		return Owed{}, message.NotFound.Errorf("no settlement sheet up to %s has taken the levy %v", through, levy)
	}
	return all[at], nil
}

// Handovers are all handovers, by levy and number.
func Handovers(ctx context.Context, d office.Desk) ([]paysheet.Handover, error) {
	all, err := office.RecordsOf[paysheet.Handover](ctx, d.Reader())
	slices.SortFunc(all, func(a, b paysheet.Handover) int {
		return cmp.Or(cmp.Compare(a.Levy, b.Levy), cmp.Compare(a.Number, b.Number))
	})
	return all, err
}

// handedOn lists the handovers of a levy in a span of days, for a paper; false where there are none.
func handedOn(all []paysheet.Handover, levy string, from, to quantity.Date) (report.Table, bool) {
	t := report.Table{Name: message.New("Handed on"), Columns: []report.Column{
		{Title: message.New("Day")}, {Title: message.New("Through")}, {Title: message.New("Number")}, {Title: message.New("Handed on"), Align: report.Right}, {Title: message.New("Note")},
	}}
	for _, h := range all {
		if h.Levy != levy || !h.Day.Between(from, to) {
			continue
		}
		note := message.Text{}
		if !h.InForce() {
			note = message.New("void since %s: %v", h.Voided.Day, h.Voided.Reason)
		}
		t.Rows = append(t.Rows, report.Row{Cells: []message.Text{message.New("%s", h.Day), message.New("%s", h.Through), message.Words(h.Reference), figure(h.Amount), note}})
	}
	return t, len(t.Rows) > 0
}
