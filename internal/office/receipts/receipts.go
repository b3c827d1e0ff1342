// Package receipts drafts warehouse receipts and makes their papers: the receipt itself and the
// register of the series.
package receipts

import (
	"context"

	"tenthpoint/internal/load"
	"tenthpoint/internal/message"
	"tenthpoint/internal/office"
	"tenthpoint/internal/paysheet"
	"tenthpoint/internal/position"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/receipt"
	"tenthpoint/internal/title"
)

// Order is the tickets and terms of a receipt to be issued.
type Order struct {
	Grower     string
	Tickets    []Chosen
	Negotiable bool
	Grade      string
}

// Chosen is a ticket, or a part of it.
type Chosen struct {
	Number   int64
	Quantity *quantity.Amount // nil for all that is free
}

// Around is the records a receipt is drafted from, at that moment.
type Around struct {
	Tickets  []*load.Load // those chosen, in their order
	Receipts []receipt.Receipt
	Sheets   []paysheet.Sheet
}

// Draft makes a receipt without writing it. Its number, day and person are not given yet.
func Draft(o Order, around Around) (receipt.Receipt, error) {
	r := receipt.Receipt{Grower: o.Grower, Negotiable: o.Negotiable, Grade: o.Grade}
	for i, l := range around.Tickets {
		if r.Commodity != "" && r.Commodity != l.Details.Commodity {
			return r, message.Refused.Errorf("ticket %d is of another grain, and a warehouse receipt is of one", l.Number)
		}
		r.Commodity = l.Details.Commodity
		line, name, err := LineOf(l, o.Grower, o.Tickets[i].Quantity, append(around.Receipts, r), around.Sheets)
		if err != nil {
			return r, err
		}
		r.Name = name
		r.Lines = append(r.Lines, line)
	}
	return r, nil
}

// LineOf is a depositor's part of a ticket on a receipt: what was asked for, or all that is free of it.
func LineOf(l *load.Load, grower string, asked *quantity.Amount, receipts []receipt.Receipt, sheets []paysheet.Sheet) (line receipt.Line, name string, err error) {
	row := office.RowOf(l)
	owner := ownerOf(row.Owners, row.Grower, grower)
	switch {
	case l.Phase != load.Ticketed:
		return line, "", message.Refused.Errorf("ticket %d is %s, and no receipt is issued for it", l.Number, message.Words(string(l.Phase)))
	case l.Details.Direction == load.Outbound:
		return line, "", message.Refused.Errorf("ticket %d is of grain that left, and no receipt is issued for it", l.Number)
	case owner < 0:
		return line, "", message.Refused.Errorf("%s has no part in ticket %d", grower, l.Number)
	}
	held := row.TermsOf(owner)
	if held.Under != title.OpenStorage && held.Under != title.Nothing || held.Owner() == title.Houses {
		return line, "", message.Refused.Errorf("the grain of ticket %d is %s; a receipt is issued for grain in open storage", l.Number, held.Said())
	}
	part, err := office.PartOf(l, owner)
	if err != nil {
		return line, "", err
	}
	if part.Price != nil {
		return line, "", message.Refused.Errorf("the grain of ticket %d has its price and is sold; a receipt is issued for grain in open storage", l.Number)
	}
	onReceipts, onWeight := receipt.Held(receipts, l.Number, grower, part.Quantity.Unit(), part.Settled.Unit())
	sold, soldWeight := soldOf(sheets, l.Number, grower, part.Quantity.Unit(), part.Settled.Unit())
	free := part.Quantity.Sub(onReceipts).Sub(sold)
	line = receipt.Line{Ticket: l.Number, Quantity: free, Held: position.LineOf(held)}
	if asked != nil {
		line.Quantity = *asked
	}
	if line.Quantity.More(free) || free.Sign() <= 0 {
		return line, "", message.Refused.Errorf("of ticket %d %s was delivered, %s is sold and %s on warehouse receipts; %s is too much", l.Number, part.Quantity, sold, onReceipts, line.Quantity)
	}
	line.Weight = part.Settled.Sub(onWeight).Sub(soldWeight)
	if line.Quantity.Less(free) {
		line.Weight = quantity.Min(line.Weight, wholeUnits.Apply(part.Settled.Mul(line.Quantity).Div(part.Quantity)))
	}
	return line, nameOf(l, owner), nil
}

// LineAfter is a line of a receipt after its ticket ended and another is in its place, nil where it is
// void: as much of it as is free of what the new ticket brings; false where that is nothing.
func LineAfter(was receipt.Line, next *load.Load, of receipt.Receipt, around Around) (receipt.Line, bool) {
	if next == nil || next.Details.Commodity != of.Commodity {
		return was, false
	}
	for _, asked := range []*quantity.Amount{&was.Quantity, nil} {
		if line, _, err := LineOf(next, of.Grower, asked, around.Receipts, around.Sheets); err == nil {
			return line, true
		}
	}
	return was, false
}

// wholeUnits rounds the weight of a part.
var wholeUnits = quantity.To("1", quantity.HalfUp)

// soldOf is the quantity of a part that settlement sheets took, and its weight.
func soldOf(sheets []paysheet.Sheet, ticket int64, grower string, unit, weight quantity.Unit) (q, w quantity.Amount) {
	q, w = paysheet.SettledOf(sheets, ticket, grower, unit), quantity.Zero(weight)
	for _, s := range sheets {
		for _, l := range s.Lines {
			if s.InForce() && s.Grower == grower && l.Ticket == ticket && l.Weight != nil {
				w = w.Add(*l.Weight)
			}
		}
	}
	return q, w
}

// ownerOf is the place of a grower among the owners of a ticket, counted from 0; below 0 for none.
func ownerOf(owners []string, all, grower string) int {
	if len(owners) == 0 && all == grower {
		return 0
	}
	for i, id := range owners {
		if id == grower {
			return i
		}
	}
	return -1
}

func nameOf(l *load.Load, owner int) string {
	if owner < len(l.Details.Shares) {
		return l.Details.Shares[owner].Name
	}
	return l.Details.Grower.Name
}

// All are all receipts by number.
func All(ctx context.Context, d office.Desk) ([]receipt.Receipt, error) {
	all, err := office.RecordsOf[receipt.Receipt](ctx, d.Reader())
	receipt.InOrder(all)
	return all, err
}

// Numbered is a receipt by its number.
func Numbered(ctx context.Context, d office.Desk, number int64) (receipt.Receipt, error) {
	all, err := All(ctx, d)
	if err != nil {
		return receipt.Receipt{}, err
	}
	for _, r := range all {
		if r.Number == number {
			return r, nil
		}
	}
	return receipt.Receipt{}, NoReceipt(number)
}

// NoReceipt says that there is no such number.
func NoReceipt(number int64) error {
	return message.NotFound.Errorf("there is no warehouse receipt %d here", number)
}

// UnitOf is the unit a ticket was settled in.
func UnitOf(ctx context.Context, d office.Desk, ticket int64) (quantity.Unit, error) {
	l, err := office.Delivered(ctx, d, ticket)
	if err != nil {
		return quantity.Plain, err
	}
	part, err := office.PartOf(l, 0)
	return part.Quantity.Unit(), err
}
