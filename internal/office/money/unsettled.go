package money

import (
	"context"

	"tenthpoint/internal/message"
	"tenthpoint/internal/office"
	"tenthpoint/internal/paysheet"
	"tenthpoint/internal/quantity"
)

// Unsettled is the part of a ticket that is on no settlement sheet yet.
type Unsettled struct {
	Ticket    int64
	Day       quantity.Date
	Commodity string
	Whole     quantity.Amount
	Left      quantity.Amount
	Under     message.Text
	Price     *quantity.Amount
}

// UnsettledOf are the tickets in force of a grower of which something is not settled.
func UnsettledOf(ctx context.Context, d office.Desk, grower string) ([]Unsettled, error) {
	sheets, err := Sheets(ctx, d)
	if err != nil {
		return nil, err
	}
	return LeftOf(ctx, d, grower, paysheet.TakenBy(sheets))
}

// LeftOf is [UnsettledOf] with what the sheets took, to be asked for many growers.
func LeftOf(ctx context.Context, d office.Desk, grower string, taken paysheet.Taken) ([]Unsettled, error) {
	account, err := office.Account(ctx, d, grower, quantity.Date{}, quantity.Date{})
	if err != nil {
		return nil, err
	}
	var out []Unsettled
	for _, part := range account.Parts {
		for _, t := range part.Tickets {
			left := t.Quantity.Sub(taken.Of(t.Number, grower, t.Quantity.Unit()))
			if left.Sign() > 0 {
				out = append(out, Unsettled{Ticket: t.Number, Day: t.Delivered, Commodity: t.Commodity, Whole: t.Quantity, Left: left, Under: t.Terms().Said(), Price: t.Price})
			}
		}
	}
	return out, nil
}
