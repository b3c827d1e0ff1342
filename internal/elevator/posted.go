package elevator

import (
	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
)

// PostedPrice is the price of a grain that the elevator posts for one day, for all its desks. The
// fact has the hour and the person; the last one written for a day is in force.
type PostedPrice struct {
	Commodity string          `json:"commodity"`
	Day       quantity.Date   `json:"day"`
	Price     quantity.Amount `json:"price"`
}

// Kind names the fact in the journal.
func (PostedPrice) Kind() string { return "house.posted" }

// PostedID is the name that the price of a grain on a day is recorded under.
func PostedID(commodity string, day quantity.Date) string { return commodity + " " + day.String() }

// Check returns what is wrong with the price, or nil.
func (p PostedPrice) Check() error {
	switch {
	case p.Commodity == "" || p.Day.IsZero():
		return message.Invalid.Errorf("a posted price is that of a grain on a day; name both")
	case p.Price.Sign() <= 0:
		return message.Invalid.Errorf("the price is %s; type a price above zero", p.Price)
	}
	return nil
}
