package money

import (
	"context"

	"tenthpoint/internal/levy"
	"tenthpoint/internal/load"
	"tenthpoint/internal/message"
	"tenthpoint/internal/office"
	"tenthpoint/internal/paysheet"
	"tenthpoint/internal/settle"
	"tenthpoint/internal/tariff"
)

// Rework works a sheet out from its fact: each ticket by its own engine and edition, at the price of
// its line. Tickets are those of the lines; there may be more.
func Rework(ctx context.Context, d office.Desk, s paysheet.Sheet, tickets []*load.Load, by paysheet.Rules) (paysheet.Worked, error) {
	parts := make([]paysheet.Part, len(s.Lines))
	for i, line := range s.Lines {
		l, err := ticketOf(tickets, line.Ticket)
		if err != nil {
			return paysheet.Worked{}, err
		}
		part, err := partAtPrice(ctx, d, l, line)
		if err != nil {
			return paysheet.Worked{}, err
		}
		if takes := line.Takes(part.Settled); line.Weight != nil && !line.Weight.Equal(takes) {
			return paysheet.Worked{}, message.Storage.Errorf("of ticket %d %s is written down as settled; its part comes to %s", line.Ticket, *line.Weight, takes)
		}
		parts[i] = paysheet.Part{Value: part.Value, Discounts: part.Discounts, Premiums: part.Premiums, Services: part.Services}
	}
	return paysheet.Work(s, parts, by)
}

func ticketOf(tickets []*load.Load, number int64) (*load.Load, error) {
	for _, l := range tickets {
		if l.Number == number {
			return l, nil
		}
	}
	return nil, office.NoTicket(number)
}

// partAtPrice is the grower's part of a ticket at the price of a line. An opening balance is worth its
// quantity at the price: what else was settled on it stands in the books before.
func partAtPrice(ctx context.Context, d office.Desk, l *load.Load, line paysheet.Line) (settle.Part, error) {
	if l.Balance != nil {
		part, err := office.PartOf(l, 0)
		part.Value = paysheet.Cents.Apply(line.Price.Mul(part.Quantity))
		return part, err
	}
	settled, err := atPrice(ctx, d, l, line)
	if err != nil {
		return settle.Part{}, err
	}
	return partOf(settled, line.Owner)
}

// atPrice settles a ticket again with the price of a line in place of its own.
func atPrice(ctx context.Context, d office.Desk, l *load.Load, line paysheet.Line) (*settle.Settlement, error) {
	if line.Source == TicketPrice {
		return office.Resettle(ctx, d, l)
	}
	e, err := d.Kept(ctx, l.Settled.EditionHash)
	if err != nil {
		return nil, err
	}
	tables, err := d.TablesKept(ctx, l.Settled.Law)
	if err != nil {
		return nil, err
	}
	facts := l.SettleFacts()
	deal := settle.Deal{Price: &settle.Price{Amount: line.Price, Source: message.Name(line.Source)}}
	apart := false
	for i := range facts.Shares {
		apart = apart || facts.Shares[i].Own != nil
	}
	if apart && line.Owner > 0 {
		facts.Shares[line.Owner-1].Own = &deal
	}
	if !apart || len(facts.Shares) == 1 {
		facts.Deal = deal
	}
	return l.Settled.Engine.Settle(facts, e.By(tables))
}

// KeptRules reads the tariff and the levies of a sheet from the book.
func KeptRules(ctx context.Context, b office.Book, s paysheet.Sheet) (paysheet.Rules, error) {
	id, text, err := b.Edition(ctx, s.Tariff)
	if err != nil {
		return paysheet.Rules{}, err
	}
	var rules paysheet.Rules
	if rules.Tariff, err = tariff.Read(id, []byte(text)); err != nil {
		return rules, err
	}
	for _, hash := range s.Levies {
		id, text, err := b.Edition(ctx, hash)
		if err != nil {
			return rules, err
		}
		l, err := levy.Read(id, []byte(text))
		if err != nil {
			return rules, err
		}
		rules.Levies = append(rules.Levies, l)
	}
	return rules, nil
}

// Sheets are all settlement sheets by number.
func Sheets(ctx context.Context, d office.Desk) ([]paysheet.Sheet, error) {
	all, err := office.RecordsOf[paysheet.Sheet](ctx, d.Reader())
	paysheet.InOrder(all)
	return all, err
}

// SheetNumbered is a sheet worked out again from its fact.
func SheetNumbered(ctx context.Context, d office.Desk, number int64) (paysheet.Sheet, paysheet.Worked, paysheet.Rules, error) {
	all, err := Sheets(ctx, d)
	if err != nil {
		return paysheet.Sheet{}, paysheet.Worked{}, paysheet.Rules{}, err
	}
	for _, s := range all {
		if s.Number == number {
			worked, rules, err := ReworkFromBook(ctx, d, s)
			return s, worked, rules, err
		}
	}
	return paysheet.Sheet{}, paysheet.Worked{}, paysheet.Rules{}, message.NotFound.Errorf("there is no settlement sheet %d here", number)
}

// ReworkFromBook works a sheet out again, by the texts and the tickets that the book keeps.
func ReworkFromBook(ctx context.Context, d office.Desk, s paysheet.Sheet) (paysheet.Worked, paysheet.Rules, error) {
	rules, err := KeptRules(ctx, d.Reader(), s)
	if err != nil {
		return paysheet.Worked{}, rules, err
	}
	var tickets []*load.Load
	for _, line := range s.Lines {
		l, err := office.Delivered(ctx, d, line.Ticket)
		if err != nil {
			return paysheet.Worked{}, rules, err
		}
		tickets = append(tickets, l)
	}
	worked, err := Rework(ctx, d, s, tickets, rules)
	return worked, rules, err
}

// Differs says what a sheet kept has other than its working, or nothing.
func Differs(s paysheet.Sheet, w paysheet.Worked) message.Text {
	for name, kept := range s.Figures {
		if again, known := w.Figures()[name]; !known || !again.Equal(kept) {
			return message.New("Settlement sheet %d keeps %v of %s, and it is worked out as %s.", s.Number, name, kept, again)
		}
	}
	if w.Hash() != s.Working {
		return message.New("The working of settlement sheet %d is not the one it was made by.", s.Number)
	}
	return message.Text{}
}
