package season

import (
	"strings"
	"tenthpoint/internal/grain/look"
	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/report"
)

// earned is the income of the house.
type earned struct{ *Facts }

// income is the income from one kind of work, as its tickets and sheets have it; below zero
// where it paid.
type income struct {
	name  message.Text
	line  string // of the settlement, by which its tickets are found; empty where it is on sheets
	money quantity.Amount
}

// incomes are the kinds of income of the span, those of which there is none left out. Water shrink is
// none of them: it is water.
func (f earned) kinds() []income {
	none := quantity.Zero(quantity.Dollar)
	drying, services, handling, discounts, premiums := none, none, none, none, none
	for _, l := range f.inForce() {
		drying, services = drying.Add(l.Drying), services.Add(l.Services.Sub(l.Drying))
		discounts, premiums = discounts.Add(l.Discounts), premiums.Sub(l.Premiums)
		if _, _, some := l.Unpriced(); !some && l.Settled.Sign() > 0 {
			handling = handling.Add(l.Value.Mul(l.Handling).Div(l.Settled))
		}
	}
	var out []income
	for _, one := range []income{
		{message.New("Drying"), "drying", drying},
		{message.New("income|Services"), "services", services},
		{message.New("Handling shrink"), "handling", cents.Apply(handling)},
		{message.New("Discounts"), "discounts", discounts},
		{message.New("Storage"), "", f.Kept.Storage},
		{message.New("Interest"), "", f.Kept.Interest},
		{message.New("Premiums"), "premiums", premiums},
	} {
		if !one.money.IsZero() {
			out = append(out, one)
		}
	}
	return out
}

// picture shows the income by kind of work, from the house's side.
func (f earned) picture() report.Picture {
	p := report.Picture{Title: message.New("Income by kind, $, from the house's side"), Empty: message.New("Nothing was charged in these days.")}
	kinds := f.kinds()
	if len(kinds) == 0 {
		return p
	}
	s, base := signedScale(kinds)
	sum := quantity.Zero(quantity.Dollar)
	for i, one := range kinds {
		sum = sum.Add(one.money)
		stack := report.Stack{
			Value: figure(whole.Apply(one.money)), Said: message.New("%s: %s.", one.name, dollars(one.money)),
			Parts: []report.Part{{Height: s.height(one.money), Look: look.Kind(i)}},
		}
		if one.line != "" {
			stack.Opens = strings.Join([]string{f.span(), "issued with", one.line}, " ")
		}
		p.Stacks = append(p.Stacks, stack)
		p.Legend = append(p.Legend, report.Legend{Name: one.name, Look: look.Kind(i)})
	}
	p.Base = base
	p.Says = message.New("%s together. Premiums are paid out. Water shrink is water and is not in it, nor is what the work cost.", dollars(sum))
	return p
}

// signedScale is a scale for amounts above and below zero, and how high the ground line is.
func signedScale(kinds []income) (s scale, base int) {
	none := quantity.Zero(quantity.Dollar)
	up, down := none, none
	for _, one := range kinds {
		up, down = quantity.Max(up, one.money), quantity.Max(down, one.money.Neg())
	}
	s = scaleFor(quantity.Dollar, up.Add(down))
	return s, s.height(down)
}

// table is the kinds with their sum.
func (f earned) table() report.Table {
	t := report.Table{Name: message.New("Income by kind, from the house's side"), Empty: message.New("Nothing was charged in these days."), Columns: []report.Column{
		{Title: message.New("Kind")}, {Title: message.New("Amount"), Unit: "$", Align: report.Right},
	}}
	sum := quantity.Zero(quantity.Dollar)
	for _, one := range f.kinds() {
		sum = sum.Add(one.money)
		t.Rows = append(t.Rows, report.Row{Cells: []message.Text{one.name, money(one.money)}})
	}
	if len(t.Rows) > 0 {
		t.Rows = append(t.Rows, report.Row{Kind: report.Total, Cells: []message.Text{message.New("Together"), money(sum)}})
	}
	return t
}
