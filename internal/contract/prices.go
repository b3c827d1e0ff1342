package contract

import (
	"tenthpoint/internal/elevator"
	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
)

// Slice is a quantity at one price.
type Slice struct{ Quantity, Price quantity.Amount }

// PricesFor are the prices that a quantity delivered on a contract is paid, after what was paid on
// it already: the parts priced one by one in their order, or the price of all of it.
func PricesFor(c elevator.ContractTerms, paid, q quantity.Amount) ([]Slice, error) {
	if room := most(c).Sub(paid); q.More(room) {
		return nil, message.Refused.Errorf("contract %s takes %s more, and %s was to be settled on it. Settle the rest at another price", c.Number, quantity.Max(room, quantity.Zero(room.Unit())), q)
	}
	parts := c.Parts
	if c.HasPrice() {
		rest := PricedPart{Quantity: most(c).Sub(c.Quantity).Add(Unpriced(c)), Price: c.Price}
		parts = append(parts[:len(parts):len(parts)], rest)
	}
	var out []Slice
	for _, part := range parts {
		skip := quantity.Min(paid, part.Quantity)
		paid = paid.Sub(skip)
		takes := quantity.Min(part.Quantity.Sub(skip), q)
		if takes.Sign() > 0 {
			out, q = append(out, Slice{takes, part.Price}), q.Sub(takes)
		}
	}
	if q.Sign() > 0 {
		return nil, message.Refused.Errorf("contract %s has no price yet for %s of it. Price that part first", c.Number, q)
	}
	return out, nil
}

// PricedPart is a part with its price.
type PricedPart = elevator.PricedPart
