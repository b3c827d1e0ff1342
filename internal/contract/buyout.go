package contract

import (
	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/worksheet"
)

// BuyOutWorking writes what ending a contract costs whose rest never comes: the market less the
// contract's price on the quantity still to come. Above zero the grower owes it, below zero the
// house does.
func BuyOutWorking(c Filled, market quantity.Amount) (*worksheet.Sheet, *worksheet.Step, error) {
	switch {
	case !c.HasPrice():
		return nil, nil, message.Refused.Errorf("contract %s has no price, so what its rest costs is not known. Price it first", c.Number)
	case market.Unit() != c.Price.Unit() || market.Sign() <= 0:
		return nil, nil, message.Invalid.Errorf("%s is no market price per %s", market, c.Quantity.Unit())
	case c.Left.IsZero():
		return nil, nil, message.Refused.Errorf("contract %s is delivered whole", c.Number)
	}
	s := &worksheet.Sheet{}
	agreed := s.Given("agreed", message.New("Agreed"), c.Quantity, quantity.Unrounded, message.New("contract %v", c.Number))
	delivered := s.Given("delivered", message.New("Delivered"), c.Delivered, quantity.Unrounded, message.New("tickets in force"))
	left := s.Work("left", message.New("Still to come"), worksheet.Less(agreed, delivered), quantity.Unrounded, worksheet.Unsourced)
	now := s.Given("market", message.New("Market price"), market, quantity.Unrounded, message.New("as given"))
	price := s.Given("price", message.New("Contract price"), c.Price, quantity.Unrounded, message.New("contract %v", c.Number))
	money := s.Work("money", message.New("Owed for what did not come"), worksheet.Times(worksheet.Less(now, price), left), Cents, worksheet.Unsourced)
	return s, money, nil
}

// Cents is the rounding of money where no edition says it.
var Cents = quantity.To("0.01", quantity.HalfUp)
