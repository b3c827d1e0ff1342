package office

import (
	"context"

	"tenthpoint/internal/book"
	"tenthpoint/internal/daysheet"
	"tenthpoint/internal/elevator"
	"tenthpoint/internal/load"
	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/report"
)

// Account totals a grower's part of the tickets from one day to another; no day is no bound. For a
// landlord it is the landlord's share of other growers' loads.
func Account(ctx context.Context, d Desk, growerID string, from, to quantity.Date) (daysheet.Account, error) {
	f := daysheet.AccountFacts{GrowerID: growerID, From: from, To: to, AsOf: d.Today()}
	grower, err := findGrower(ctx, d, growerID)
	if err != nil {
		return daysheet.Account{}, err
	}
	f.Name, f.Address = grower.Name, grower.Address
	rows, err := d.Reader().Loads(ctx, book.LoadFilter{Grower: growerID, FromTicket: 1})
	if err != nil {
		return daysheet.Account{}, err
	}
	owners, err := d.Reader().OwnersFor(ctx, growerID)
	if err != nil {
		return daysheet.Account{}, err
	}
	for _, r := range rows {
		r.Owners = owners[r.ID]
		t, err := sharedTicket(ctx, d, r)
		if err != nil {
			return daysheet.Account{}, err
		}
		f.Tickets = append(f.Tickets, t)
	}
	if f.Contracts, err = contractsOf(ctx, d, growerID); err != nil {
		return daysheet.Account{}, err
	}
	if f.Example, err = isExample(ctx, d, f.Tickets); err != nil {
		return daysheet.Account{}, err
	}
	return daysheet.MakeAccount(f), nil
}

// ContractFill returns how much of a contract is delivered, by the grower's part of all tickets.
func ContractFill(ctx context.Context, d Desk, c elevator.ContractTerms) (daysheet.Fill, error) {
	account, err := Account(ctx, d, c.Grower, quantity.Date{}, quantity.Date{})
	if err != nil {
		return daysheet.Fill{}, err
	}
	for _, fill := range account.Fills {
		if fill.Number == c.Number {
			return fill, nil
		}
	}
	return daysheet.Fill{}, message.NotFound.Errorf("there is no contract %s here", c.Number)
}

// Statement is a grower's account as a paper.
func Statement(ctx context.Context, d Desk, growerID string, from, to quantity.Date) (report.Document, error) {
	account, err := Account(ctx, d, growerID, from, to)
	if err != nil {
		return report.Document{}, err
	}
	return daysheet.ComposeAccount(account, d.Profile()), nil
}

// findGrower finds a grower; one that is only on tickets, not in the list, is named by the code.
func findGrower(ctx context.Context, d Desk, id string) (elevator.Grower, error) {
	growers, err := Growers(ctx, d)
	if err != nil {
		return elevator.Grower{}, err
	}
	for _, g := range growers {
		if g.ID == id {
			return g, nil
		}
	}
	rows, err := d.Reader().Loads(ctx, book.LoadFilter{Grower: id, Limit: 1})
	if err != nil {
		return elevator.Grower{}, err
	}
	if len(rows) == 0 {
		return elevator.Grower{}, message.NotFound.Errorf("there is no grower %q in this book. Look the code up in the list of growers", id)
	}
	if rows[0].Grower == id {
		return elevator.Grower{ID: id, Name: rows[0].GrowerName}, nil
	}
	return elevator.Grower{ID: id, Name: id}, nil
}

// sharedTicket is a row as the account reads it, with the shares of its owners.
func sharedTicket(ctx context.Context, d Desk, r book.LoadRow) (daysheet.Ticket, error) {
	t, err := sheetTicket(d, r)
	if err != nil || len(r.Owners) == 0 {
		return t, err
	}
	facts, err := d.Reader().FactsOf(ctx, LoadSubject(r.ID))
	if err != nil {
		return t, err
	}
	l, err := Replay(r.ID, facts)
	if err != nil {
		return t, err
	}
	t.Parts = ownersParts(l)
	if len(t.Owners) > 1 && len(t.Owners) != len(t.Summary.Owners) {
		return t, message.Errorf("ticket %d has %d owners and figures of %d", t.Number, len(t.Owners), len(t.Summary.Owners))
	}
	return t, nil
}

// ownersParts are the shares of a load's owners as the ticket has them: "1/3".
func ownersParts(l *load.Load) []string {
	var out []string
	for _, o := range l.Details.Shares {
		part := o.Parts.Figure() + "/" + o.Of.Figure()
		if o.Of.Equal(quantity.Int(100, quantity.Plain)) {
			part = o.Parts.Figure() + " %"
		}
		out = append(out, part)
	}
	return out
}

func contractsOf(ctx context.Context, d Desk, growerID string) ([]daysheet.Contract, error) {
	all, err := Contracts(ctx, d)
	if err != nil {
		return nil, err
	}
	var out []daysheet.Contract
	for _, c := range all {
		if c.Grower == growerID {
			out = append(out, daysheet.Contract{Number: c.Number, Commodity: c.Commodity, Name: commodityName(c.Commodity), Quantity: c.Quantity, Price: c.Price, Priced: c.PriceText(), Until: c.Until})
		}
	}
	return out, nil
}
