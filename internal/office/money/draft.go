package money

import (
	"context"
	"slices"
	"strings"

	"tenthpoint/internal/contract"
	"tenthpoint/internal/elevator"
	"tenthpoint/internal/load"
	"tenthpoint/internal/message"
	"tenthpoint/internal/office"
	"tenthpoint/internal/opening"
	"tenthpoint/internal/paysheet"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/receipt"
	"tenthpoint/internal/settle"
	"tenthpoint/internal/title"
)

// Around is the input of a draft besides the order, read from the book at that moment.
type Around struct {
	Tickets   []*load.Load // those chosen, in their order
	Sheets    []paysheet.Sheet
	Payments  []paysheet.Payment
	Receipts  []receipt.Receipt
	Liens     []paysheet.Lien
	Contracts []elevator.ContractTerms
	Openings  []opening.Opening
}

// AroundNow reads the records that a sheet of some tickets is drafted from, outside of any act.
func AroundNow(ctx context.Context, d office.Desk, tickets []paysheet.Chosen) (around Around, err error) {
	for _, chosen := range tickets {
		l, err := office.Delivered(ctx, d, chosen.Number)
		if err != nil {
			return around, err
		}
		around.Tickets = append(around.Tickets, l)
	}
	if around.Sheets, err = Sheets(ctx, d); err != nil {
		return around, err
	}
	if around.Payments, err = Payments(ctx, d); err != nil {
		return around, err
	}
	if around.Receipts, err = office.RecordsOf[receipt.Receipt](ctx, d.Reader()); err != nil {
		return around, err
	}
	if around.Liens, err = Liens(ctx, d); err != nil {
		return around, err
	}
	if around.Openings, err = office.RecordsOf[opening.Opening](ctx, d.Reader()); err != nil {
		return around, err
	}
	around.Contracts, err = office.Contracts(ctx, d)
	return around, err
}

// Draft works a sheet out without writing it. Its number is not given yet.
func Draft(ctx context.Context, d office.Desk, o paysheet.Order, around Around) (paysheet.Sheet, paysheet.Worked, error) {
	if err := mayCorrect(around.Sheets, o.Corrects); err != nil {
		return paysheet.Sheet{}, paysheet.Worked{}, err
	}
	s := paysheet.Sheet{
		Day: o.Day, Grower: o.Grower, Tariff: o.Tariff.Hash, Advances: o.Advances, Payees: o.Payees, Release: o.Release,
		PayAfter: o.PayAfter, Corrects: o.Corrects, By: d.Signature(), Commodity: o.Tariff.Commodity.ID,
	}
	for _, l := range o.Levies {
		s.Levies = append(s.Levies, l.Hash)
	}
	owed := paysheet.OverpaidSheets(around.Sheets, around.Payments)
	s.Advances = slices.Concat(o.Advances, paysheet.StillOpen(openAdvances(around.Openings), around.Sheets, o.Grower), paysheet.TakenBack(owed, o.Grower, o.Day))
	w := drafting{ctx: ctx, d: d, o: o, around: around, sheet: &s, settled: map[int64]quantity.Amount{}}
	for i, l := range around.Tickets {
		if err := w.ticket(l, o.Tickets[i]); err != nil {
			return s, paysheet.Worked{}, err
		}
	}
	if o.Price != nil && !w.priced {
		return s, paysheet.Worked{}, message.Refused.Errorf("every ticket of the sheet has its price, so %s prices nothing. Leave it out", *o.Price)
	}
	if err := s.Check(); err != nil {
		return s, paysheet.Worked{}, err
	}
	if err := mindLiens(around.Liens, around.Tickets, o, s.Commodity); err != nil {
		return s, paysheet.Worked{}, err
	}
	for i, line := range s.Lines {
		weight := line.Takes(w.settled[line.Ticket])
		s.Lines[i].Weight = &weight
	}
	worked, err := Rework(ctx, d, s, around.Tickets, paysheet.Rules{Tariff: o.Tariff, Levies: o.Levies})
	if err != nil {
		return s, worked, err
	}
	s.Figures, s.Working = worked.Figures(), worked.Hash()
	return s, worked, nil
}

// openAdvances are the advances of the opening in force.
func openAdvances(all []opening.Opening) []paysheet.OpenAdvance {
	var out []paysheet.OpenAdvance
	if o, open := opening.InForce(all); open {
		for _, a := range o.Advances {
			out = append(out, paysheet.OpenAdvance{Number: a.Number, Grower: a.Grower, Advance: paysheet.Advance{Day: a.Since, Amount: a.Amount}})
		}
	}
	return out
}

type drafting struct {
	ctx    context.Context
	d      office.Desk
	o      paysheet.Order
	around Around
	sheet  *paysheet.Sheet
	priced bool // the price of the sheet was used
	// settled is the settled weight of the grower's part of each ticket.
	settled map[int64]quantity.Amount
}

// ticket adds the lines of one ticket.
func (w *drafting) ticket(l *load.Load, chosen paysheet.Chosen) error {
	owner, name, err := ownerOf(l, w.o.Grower)
	switch {
	case err != nil:
		return err
	case l.Phase != load.Ticketed:
		return message.Refused.Errorf("ticket %d is %s, and nothing is settled on it", l.Number, message.Words(string(l.Phase)))
	case l.Details.Direction == load.Outbound:
		return message.Refused.Errorf("ticket %d is of grain that left, and nothing is paid for it", l.Number)
	case l.Details.Commodity != w.sheet.Commodity:
		return message.Refused.Errorf("ticket %d is %s, and the sheet is for %s", l.Number, l.Details.Commodity, w.sheet.Commodity)
	case l.IssuedDay.After(w.o.Day):
		return message.Refused.Errorf("ticket %d counts on %s, after the day of the sheet, %s", l.Number, l.IssuedDay, w.o.Day)
	}
	w.sheet.Name = name
	whole, err := w.part(l, owner)
	if err != nil {
		return err
	}
	deal := l.Details.DealOf(max(0, owner-1))
	line := paysheet.Line{Ticket: l.Number, Owner: owner, Whole: whole.Quantity, Under: deal.Under, Whose: deal.Whose, Delivered: l.Details.Day}
	w.settled[l.Number] = whole.Settled
	line.From = paysheet.SettledOf(append(w.around.Sheets, *w.sheet), l.Number, w.o.Grower, whole.Quantity.Unit())
	onReceipts, _ := receipt.Held(w.around.Receipts, l.Number, w.o.Grower, whole.Quantity.Unit(), whole.Settled.Unit())
	free := line.Whole.Sub(line.From).Sub(onReceipts)
	line.Quantity = free
	switch {
	case onReceipts.Sign() > 0 && (free.Sign() <= 0 || chosen.Quantity != nil && chosen.Quantity.More(free)):
		return message.Refused.Errorf("of ticket %d %s is on warehouse receipts and %s is free. A receipt is surrendered before its grain is sold", l.Number, onReceipts, quantity.Max(free, onReceipts.Sub(onReceipts)))
	case chosen.Quantity != nil:
		line.Quantity = *chosen.Quantity
	case line.Quantity.Sign() <= 0:
		return message.Refused.Errorf("ticket %d is settled already: of %s nothing is left", l.Number, line.Whole)
	}
	return w.price(line, deal)
}

// part is the grower's part of a ticket as it was issued.
func (w *drafting) part(l *load.Load, owner int) (settle.Part, error) {
	if l.Balance != nil {
		return office.PartOf(l, owner)
	}
	s, err := office.Resettle(w.ctx, w.d, l)
	if err != nil {
		return settle.Part{}, err
	}
	return partOf(s, owner)
}

func partOf(s *settle.Settlement, owner int) (settle.Part, error) {
	summary, err := s.Summary()
	if err != nil || owner == 0 || len(summary.Owners) == 0 {
		return summary.Part, err
	}
	own, err := summary.Of(owner)
	return own.Part, err
}

// ownerOf finds a grower among the owners of a ticket, counted from 1; 0 where one has all of it.
func ownerOf(l *load.Load, grower string) (int, string, error) {
	if len(l.Details.Shares) == 0 {
		if l.Details.Grower.ID == grower {
			return 0, l.Details.Grower.Name, nil
		}
	}
	for i, o := range l.Details.Shares {
		if o.ID == grower {
			return i + 1, o.Name, nil
		}
	}
	return 0, "", message.Refused.Errorf("%s has no part in ticket %d", grower, l.Number)
}

// TicketPrice is the source of a price that is the ticket's own; one of a contract begins with
// contractPrice. The words stand in the facts of every book.
const (
	TicketPrice   = "ticket"
	contractPrice = "contract "
)

// onContract reports whether a line has its price from a contract.
func onContract(l paysheet.Line) bool { return strings.HasPrefix(l.Source, contractPrice) }

func onContractNumbered(l paysheet.Line, number string) bool { return l.Source == contractPrice+number }

// price gives a line its price: the ticket's own, the contract's, or the sheet's.
func (w *drafting) price(line paysheet.Line, deal load.Deal) error {
	number := w.o.Contract
	if number == "" && (deal.Under == title.Contract || deal.Under == title.DelayedPrice) {
		number = deal.No
	}
	switch {
	case deal.Price != nil && w.o.Contract == "":
		line.Price, line.Source, line.Bid = *deal.Price, TicketPrice, bidOf(deal)
	case !deal.TakesPrice() && deal.Under != title.DelayedPrice && !w.o.Sale:
		return message.Refused.Errorf("the grain of ticket %d is %s and stays its owner's, so it has no price. Say that the owner sells it now", line.Ticket, deal.Said())
	case number != "" && w.o.Price == nil:
		return w.onContract(line, number)
	case w.o.Price == nil:
		return message.Refused.Errorf("ticket %d has no price; give the price of the sheet", line.Ticket)
	default:
		line.Price, line.Source, line.Bid, w.priced = *w.o.Price, w.o.Source, w.o.Bid, true
	}
	w.sheet.Lines = append(w.sheet.Lines, line)
	return nil
}

// bidOf is the posted bid that a deal's price is; nil for another price.
func bidOf(deal load.Deal) *paysheet.Bid {
	if deal.Posted == nil || deal.Price == nil || !deal.Posted.Price.Equal(*deal.Price) {
		return nil
	}
	return &paysheet.Bid{At: deal.Posted.At, Who: deal.Posted.Who}
}

// onContract prices a line by a contract, in as many lines as it has prices.
func (w *drafting) onContract(line paysheet.Line, number string) error {
	at := slices.IndexFunc(w.around.Contracts, func(c elevator.ContractTerms) bool { return c.Number == number })
	if at < 0 {
		return message.NotFound.Errorf("there is no contract %s here", number)
	}
	c := w.around.Contracts[at]
	switch {
	case !c.IsSeller(w.o.Grower):
		return message.Refused.Errorf("contract %s is not one of %s", c.Number, w.o.Grower)
	case c.Commodity != w.sheet.Commodity:
		return message.Refused.Errorf("contract %s is for %s, not for %s", c.Number, c.Commodity, w.sheet.Commodity)
	case c.Quantity.Unit() != line.Quantity.Unit():
		return message.Refused.Errorf("contract %s counts in %s, and ticket %d in %s", c.Number, c.Quantity.Unit(), line.Ticket, line.Quantity.Unit())
	}
	source := contractPrice + c.Number
	prices, err := contract.PricesFor(c, w.paidOn(source, line.Quantity.Unit()), line.Quantity)
	if err != nil {
		return err
	}
	for _, slice := range prices {
		part := line
		part.Quantity, part.Price, part.Source = slice.Quantity, slice.Price, source
		w.sheet.Lines = append(w.sheet.Lines, part)
		line.From = line.From.Add(slice.Quantity)
	}
	return nil
}

// paidOn is the quantity that earlier lines took from a contract.
func (w *drafting) paidOn(source string, unit quantity.Unit) quantity.Amount {
	paid := quantity.Zero(unit)
	for _, s := range append(w.around.Sheets, *w.sheet) {
		for _, l := range s.Lines {
			if s.InForce() && l.Source == source {
				paid = paid.Add(l.Quantity)
			}
		}
	}
	return paid
}

// mayCorrect asks that what is corrected is a void sheet: else it would be paid twice.
func mayCorrect(all []paysheet.Sheet, number int64) error {
	if number == 0 {
		return nil
	}
	for _, s := range all {
		switch {
		case s.Corrects == number && s.InForce():
			return message.Refused.Errorf("settlement sheet %d is corrected already, by sheet %d", number, s.Number)
		case s.Number == number && s.InForce():
			return message.Refused.Errorf("settlement sheet %d counts still; void it before another takes its place", number)
		}
	}
	for _, s := range all {
		if s.Number == number {
			return nil
		}
	}
	return message.NotFound.Errorf("there is no settlement sheet %d here", number)
}
