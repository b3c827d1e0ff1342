package money

import (
	"context"
	"slices"

	"tenthpoint/internal/contract"
	"tenthpoint/internal/elevator"
	"tenthpoint/internal/load"
	"tenthpoint/internal/office"
	"tenthpoint/internal/paysheet"
	"tenthpoint/internal/quantity"
)

// Ended is a ticket that ends, and the one in its place; nil where it is void.
type Ended struct {
	Number int64
	Next   *load.Load
}

// Redraft works a settlement sheet out anew after one of its tickets ended, on a day. Every line keeps
// its price, and charges run to the day they ran to; the ticket in the place of the one that ended
// takes its lines as far as it brings grain for them. What it brings beyond that follows where the old
// line took all there was, and is left unsettled where its contract has no room or no price for it.
// Left is false where no line of the sheet remains. The sheet that is corrected does not count among
// those around any more.
func Redraft(ctx context.Context, d office.Desk, s paysheet.Sheet, of Ended, day quantity.Date, around Around) (next paysheet.Sheet, left bool, err error) {
	next = s
	next.Number, next.Corrects, next.Voided = 0, s.Number, nil
	next.RunsTo, next.Day, next.By = s.ChargedTo(), day, d.Signature()
	next.Lines = nil
	w := redrafting{around: around, sheet: &next, of: of}
	if of.Next != nil {
		if err := w.part(ctx, d, s); err != nil {
			return next, false, err
		}
	}
	for i := 0; i < len(s.Lines); {
		group := sameLines(s.Lines[i:])
		i += len(group)
		if err := w.group(group); err != nil {
			return next, false, err
		}
	}
	if len(next.Lines) == 0 {
		return next, false, nil
	}
	rules, err := KeptRules(ctx, d.Reader(), s)
	if err != nil {
		return next, false, err
	}
	if err := next.Check(); err != nil {
		return next, false, err
	}
	worked, err := Rework(ctx, d, next, around.Tickets, rules)
	if err != nil {
		return next, false, err
	}
	next.Figures, next.Working = worked.Figures(), worked.Hash()
	return next, true, nil
}

// sameLines are the first lines that took one part of a ticket from one source.
func sameLines(lines []paysheet.Line) []paysheet.Line {
	first := lines[0]
	n := slices.IndexFunc(lines, func(l paysheet.Line) bool {
		return l.Ticket != first.Ticket || l.Source != first.Source || !onContract(l) && !l.Price.Equal(first.Price)
	})
	if n < 0 {
		return lines
	}
	return lines[:n]
}

// redrafting is a sheet being worked out anew.
type redrafting struct {
	around Around
	sheet  *paysheet.Sheet
	of     Ended

	// What the grower has in the ticket in the place of the one that ended; whole is nil where that is
	// nothing, or another grain.
	owner   int
	whole   *quantity.Amount
	settled quantity.Amount
}

// part finds the grower's part of the ticket in the place of the one that ended.
func (w *redrafting) part(ctx context.Context, d office.Desk, s paysheet.Sheet) error {
	next := w.of.Next
	owner, _, err := ownerOf(next, s.Grower)
	if err != nil || next.Details.Commodity != s.Commodity || next.Details.Direction == load.Outbound {
		return nil // another's grain, or another grain: nothing of it is on this sheet
	}
	settlement, err := office.Resettle(ctx, d, next)
	if err != nil {
		return err
	}
	part, err := partOf(settlement, owner)
	if err != nil || part.Quantity.Unit() != s.Lines[0].Quantity.Unit() {
		return err
	}
	w.owner, w.whole, w.settled = owner, &part.Quantity, part.Settled
	return nil
}

// group puts the lines of one part of a ticket onto the sheet.
func (w *redrafting) group(lines []paysheet.Line) error {
	if lines[0].Ticket != w.of.Number {
		w.sheet.Lines = append(w.sheet.Lines, lines...)
		return nil
	}
	if w.whole == nil {
		return nil
	}
	last := lines[len(lines)-1]
	took := quantity.Zero(last.Quantity.Unit())
	for _, l := range lines {
		took = took.Add(l.Quantity)
	}
	deal := w.of.Next.Details.DealOf(max(0, w.owner-1))
	line := lines[0]
	line.Ticket, line.Owner, line.Whole, line.Delivered = w.of.Next.Number, w.owner, *w.whole, w.of.Next.Details.Day
	line.Under, line.Whose = deal.Under, deal.Whose
	line.From = paysheet.SettledOf(append(w.around.Sheets, *w.sheet), line.Ticket, w.sheet.Grower, line.Whole.Unit())
	there := line.Whole.Sub(line.From)
	line.Quantity = quantity.Min(there, took)
	if last.From.Add(last.Quantity).Equal(last.Whole) {
		line.Quantity = there
	}
	if line.Quantity.Sign() <= 0 {
		return nil
	}
	if onContract(line) {
		return w.contract(line, quantity.Min(there, took))
	}
	if line.Source == TicketPrice {
		if deal.Price == nil {
			return nil
		}
		line.Price, line.Bid = *deal.Price, bidOf(deal)
	}
	w.put(line)
	return nil
}

// contract prices a line by its contract; where that has no room or price for all of it, only what
// was on it before is.
func (w *redrafting) contract(line paysheet.Line, before quantity.Amount) error {
	at := slices.IndexFunc(w.around.Contracts, func(c elevator.ContractTerms) bool { return onContractNumbered(line, c.Number) })
	if at < 0 {
		return nil
	}
	d := drafting{around: w.around, sheet: w.sheet}
	paid := d.paidOn(line.Source, line.Quantity.Unit())
	prices, err := contract.PricesFor(w.around.Contracts[at], paid, line.Quantity)
	if err != nil {
		line.Quantity = before
		if prices, err = contract.PricesFor(w.around.Contracts[at], paid, before); err != nil {
			return err
		}
	}
	for _, slice := range prices {
		part := line
		part.Quantity, part.Price = slice.Quantity, slice.Price
		w.put(part)
		line.From = line.From.Add(slice.Quantity)
	}
	return nil
}

func (w *redrafting) put(line paysheet.Line) {
	weight := line.Takes(w.settled)
	line.Weight = &weight
	w.sheet.Lines = append(w.sheet.Lines, line)
}
