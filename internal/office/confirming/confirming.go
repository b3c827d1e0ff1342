// Package confirming draws the depositors who are asked to confirm their balances, and makes the papers:
// the letters, and the list of what came back.
package confirming

import (
	"context"
	"slices"

	"tenthpoint/internal/confirmation"
	"tenthpoint/internal/message"
	"tenthpoint/internal/office"
	"tenthpoint/internal/office/money"
	"tenthpoint/internal/paysheet"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/receipt"
)

// Draft draws a sample of so many depositors with what they are owed today, by a seed; without one, by
// the end of the chain of facts, which nobody knew beforehand. It has no number yet.
func Draft(ctx context.Context, d office.Desk, size int, seed string) (confirmation.Round, error) {
	r := confirmation.Round{Number: 1, Day: d.Today(), By: d.Signature(), Seed: seed}
	if size < 1 {
		return r, message.Invalid.Errorf("a sample of %d is none; say how many depositors are written to", size)
	}
	if r.Seed == "" {
		last, _, err := d.Reader().Head(ctx)
		if err != nil {
			return r, err
		}
		r.Seed = last.Hash[:min(len(last.Hash), seedLetters)]
	}
	owed, err := balances(ctx, d)
	if err != nil {
		return r, err
	}
	codes := make([]string, 0, len(owed))
	for code := range owed {
		codes = append(codes, code)
	}
	r.Of = len(codes)
	for i, code := range confirmation.Draw(codes, r.Seed, size) {
		l := owed[code]
		l.Number = i + 1
		r.Letters = append(r.Letters, l)
	}
	return r, r.Check()
}

// seedLetters is how much of a hash makes a seed: enough that nobody can try them all, few enough to be
// typed.
const seedLetters = 12

// balances are what every grower is owed, as letters by code; those without a balance have none.
func balances(ctx context.Context, d office.Desk) (map[string]confirmation.Letter, error) {
	growers, err := office.Growers(ctx, d)
	if err != nil {
		return nil, err
	}
	sheets, err := money.Sheets(ctx, d)
	if err != nil {
		return nil, err
	}
	receipts, err := office.RecordsOf[receipt.Receipt](ctx, d.Reader())
	if err != nil {
		return nil, err
	}
	taken, out := paysheet.TakenBy(sheets), map[string]confirmation.Letter{}
	for _, g := range growers {
		if g.Into != nil { // another card is in its place, and has its grain
			continue
		}
		left, err := money.LeftOf(ctx, d, g.ID, taken)
		if err != nil {
			return nil, err
		}
		l := confirmation.Letter{Grower: g.ID, Name: g.Name, Address: g.Address}
		for _, u := range left {
			l.Balances = owe(l.Balances, u, g.ID, receipts)
		}
		if len(l.Balances) > 0 {
			out[g.ID] = l
		}
	}
	return out, nil
}

// owe adds what is left of a ticket to the balances: what is on receipts apart from the rest.
func owe(all []confirmation.Balance, u money.Unsettled, grower string, receipts []receipt.Receipt) []confirmation.Balance {
	rest := u.Left
	for _, r := range receipt.On(receipts, u.Ticket, grower) {
		for _, l := range r.Lines {
			if l.Ticket == u.Ticket && l.Quantity.Unit() == rest.Unit() {
				all = add(all, u.Commodity, message.New("on warehouse receipt %d", r.Number), l.Quantity)
				rest = rest.Sub(l.Quantity)
			}
		}
	}
	return add(all, u.Commodity, u.Under, rest)
}

func add(all []confirmation.Balance, commodity string, under message.Text, q quantity.Amount) []confirmation.Balance {
	if q.Sign() <= 0 {
		return all
	}
	at := slices.IndexFunc(all, func(b confirmation.Balance) bool {
		return b.Commodity == commodity && b.Under.Message().Equal(under) && b.Quantity.Unit() == q.Unit()
	})
	if at < 0 {
		return append(all, confirmation.Balance{Commodity: commodity, Under: message.Kept{Text: under}, Quantity: q})
	}
	all[at].Quantity = all[at].Quantity.Add(q)
	return all
}

// All are all rounds, by number.
func All(ctx context.Context, d office.Desk) ([]confirmation.Round, error) {
	all, err := office.RecordsOf[confirmation.Round](ctx, d.Reader())
	slices.SortFunc(all, func(a, b confirmation.Round) int { return int(a.Number - b.Number) })
	return all, err
}

// Numbered is a round by its number; the last one for zero.
func Numbered(ctx context.Context, d office.Desk, number int64) (confirmation.Round, error) {
	all, err := All(ctx, d)
	if err != nil {
		return confirmation.Round{}, err
	}
	return Pick(all, number)
}

// Pick is the round of a number among all; the last one for zero.
func Pick(all []confirmation.Round, number int64) (confirmation.Round, error) {
	if number == 0 && len(all) > 0 {
		return all[len(all)-1], nil
	}
	for _, r := range all {
		if r.Number == number {
			return r, nil
		}
	}
	return confirmation.Round{}, message.NotFound.Errorf("no sample of depositors with this number was drawn yet")
}
