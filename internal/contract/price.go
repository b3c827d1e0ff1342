package contract

import (
	"tenthpoint/internal/elevator"
	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
)

// Pricing is a seller's order to price a part: the futures price of a basis contract, the basis of
// one hedged to arrive, the price itself of the others.
type Pricing struct {
	Quantity quantity.Amount
	Money    quantity.Amount
	Day      quantity.Date
	By       string
}

// Price gives a part of a contract its price.
func Price(c elevator.ContractTerms, p Pricing) (elevator.ContractTerms, error) {
	left := Unpriced(c)
	per := quantity.Dollar.Per(c.Quantity.Unit())
	switch {
	case !c.Form.PricedLater():
		return c, message.Refused.Errorf("contract %s has its price, %s, and no part of it is priced", c.Number, c.PriceText())
	case p.Quantity.Unit() != left.Unit() || p.Quantity.Sign() <= 0:
		return c, message.Invalid.Errorf("%s of contract %s is no part of it; it is a quantity above zero in %s", p.Quantity, c.Number, left.Unit())
	case p.Quantity.More(left):
		return c, message.Refused.Errorf("of contract %s only %s has no price yet, and %s was to be priced", c.Number, left, p.Quantity)
	case p.Money.Unit() != per:
		return c, message.Invalid.Errorf("%s is no money per %s", p.Money, c.Quantity.Unit())
	}
	part := elevator.PricedPart{Day: p.Day, Quantity: p.Quantity, Price: p.Money, By: p.By}
	switch c.Form {
	case elevator.Basis:
		part.Futures, part.Price = &p.Money, p.Money.Add(*c.Basis)
	case elevator.HedgeToArrive:
		part.Basis, part.Price = &p.Money, p.Money.Add(*c.Futures)
	case elevator.MinimumPrice:
		if p.Money.Less(c.Price) {
			return c, message.Refused.Errorf("contract %s pays at least %s, more than %s", c.Number, c.Price, p.Money)
		}
	}
	if part.Price.Sign() <= 0 {
		return c, message.Invalid.Errorf("the price of the part would be %s; it is above zero", part.Price)
	}
	c.Parts = append(c.Parts[:len(c.Parts):len(c.Parts)], part)
	return c, open(c)
}

// Priced is the quantity of a contract that has its price.
func Priced(c elevator.ContractTerms) quantity.Amount {
	if c.Form.FixesPrice() {
		return c.Quantity
	}
	return c.Quantity.Sub(Unpriced(c))
}

// Unpriced is the quantity that may still be priced by an order of the seller.
func Unpriced(c elevator.ContractTerms) quantity.Amount {
	left := c.Quantity
	for _, part := range c.Parts {
		left = left.Sub(part.Quantity)
	}
	return left
}
