package office

import (
	"cmp"
	"context"
	"slices"

	"tenthpoint/internal/book"
	"tenthpoint/internal/daysheet"
	"tenthpoint/internal/elevator"
	"tenthpoint/internal/grain"
	"tenthpoint/internal/load"
	"tenthpoint/internal/message"
	"tenthpoint/internal/opening"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/report"
	"tenthpoint/internal/settle"
)

// Account totals a grower's part of the tickets from one day to another; no day is no bound. For a
// landlord it is the landlord's share of other growers' loads.
func Account(ctx context.Context, d Desk, growerID string, from, to quantity.Date) (daysheet.Account, error) {
	f := daysheet.AccountFacts{GrowerID: growerID, From: from, To: to, AsOf: d.Today()}
	grower, err := findGrower(ctx, d, growerID)
	if err != nil {
		return daysheet.Account{}, err
	}
	f.GrowerID, f.Name, f.Address = grower.ID, grower.Name, grower.Address
	if f.Tickets, err = ticketsOf(ctx, d, grower); err != nil {
		return daysheet.Account{}, err
	}
	filler, err := newFiller(ctx, d)
	if err != nil {
		return daysheet.Account{}, err
	}
	if f.Contracts, err = filler.ofGrower(grower.ID, f.Tickets); err != nil {
		return daysheet.Account{}, err
	}
	if f.Example, err = IsExample(ctx, d, f.Tickets); err != nil {
		return daysheet.Account{}, err
	}
	return daysheet.MakeAccount(f), nil
}

// ticketsOf are the tickets of a grower and of the cards it has taken over, as its own.
func ticketsOf(ctx context.Context, d Desk, grower elevator.Card) ([]daysheet.Ticket, error) {
	var out []daysheet.Ticket
	seen := map[string]bool{}
	for _, code := range grower.Codes {
		rows, err := d.Reader().Loads(ctx, book.LoadFilter{Grower: code, FromTicket: 1})
		if err != nil {
			return nil, err
		}
		owners, err := d.Reader().OwnersFor(ctx, code)
		if err != nil {
			return nil, err
		}
		for _, r := range rows {
			if seen[r.ID] {
				continue
			}
			seen[r.ID] = true
			r.Owners = owners[r.ID]
			t, err := sharedTicket(ctx, d, r)
			if err != nil {
				return nil, err
			}
			out = append(out, asOwn(t, grower))
		}
	}
	balances, err := balancesOf(ctx, d, grower)
	if err != nil {
		return nil, err
	}
	out = append(out, balances...)
	slices.SortStableFunc(out, func(a, b daysheet.Ticket) int { return cmp.Compare(a.Number, b.Number) })
	return out, nil
}

// balancesOf are the opening balances of a grower in force, as tickets of an account.
func balancesOf(ctx context.Context, d Desk, grower elevator.Card) ([]daysheet.Ticket, error) {
	all, err := RecordsOf[opening.Opening](ctx, d.Reader())
	if err != nil {
		return nil, err
	}
	o, open := opening.InForce(all)
	if !open {
		return nil, nil
	}
	var out []daysheet.Ticket
	for _, lot := range o.Lots {
		if !slices.Contains(grower.Codes, lot.Grower) {
			continue
		}
		part, none := balancePart(o.Load(lot)), quantity.Zero(lot.Weight.Unit())
		out = append(out, asOwn(daysheet.Ticket{
			Number: lot.Number, Day: o.Day, Delivered: lot.Since, Commodity: lot.Commodity, Name: grain.NameOf(lot.Commodity),
			GrowerID: lot.Grower, Grower: lot.Name, Disposition: string(lot.Under), Contract: lot.No, Titles: titles(o.Load(lot).Details),
			Summary: settle.Summary{Part: part, ScaleNet: part.Net, Dockage: none, Water: none, Handling: none, Quality: none},
		}, grower))
	}
	return out, nil
}

// asOwn names a grower by the card that goes on.
func asOwn(t daysheet.Ticket, grower elevator.Card) daysheet.Ticket {
	now := func(code string) string {
		if slices.Contains(grower.Codes, code) {
			return grower.ID
		}
		return code
	}
	t.GrowerID, t.Owners = now(t.GrowerID), slices.Clone(t.Owners)
	for i := range t.Owners {
		t.Owners[i] = now(t.Owners[i])
	}
	return t
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
func findGrower(ctx context.Context, d Desk, id string) (elevator.Card, error) {
	growers, err := Growers(ctx, d)
	if err != nil {
		return elevator.Card{}, err
	}
	if card, known := elevator.CardOf(growers, id); known {
		return card, nil
	}
	rows, err := d.Reader().Loads(ctx, book.LoadFilter{Grower: id, Limit: 1})
	if err != nil {
		return elevator.Card{}, err
	}
	if len(rows) == 0 {
		return elevator.Card{}, message.NotFound.Errorf("there is no grower %q in this book. Look the code up in the list of growers", id)
	}
	if rows[0].Grower == id {
		return elevator.Card{Grower: elevator.Grower{ID: id, Name: rows[0].GrowerName}, Codes: []string{id}}, nil
	}
	return elevator.Card{Grower: elevator.Grower{ID: id, Name: id}, Codes: []string{id}}, nil
}

// sharedTicket is a row as the account reads it, with the shares of its owners.
func sharedTicket(ctx context.Context, d Desk, r book.LoadRow) (daysheet.Ticket, error) {
	t, err := SheetTicket(d, r)
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
	t.Parts = OwnersParts(l)
	if len(t.Owners) > 1 && len(t.Owners) != len(t.Summary.Owners) {
		return t, message.Errorf("ticket %d has %d owners and figures of %d", t.Number, len(t.Owners), len(t.Summary.Owners))
	}
	return t, nil
}

// OwnersParts are the shares of a load's owners as the ticket has them: "1/3".
func OwnersParts(l *load.Load) []string {
	var out []string
	for _, o := range l.Details.Shares {
		out = append(out, o.Part().String())
	}
	return out
}
