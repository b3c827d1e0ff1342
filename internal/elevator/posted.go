package elevator

import (
	"strings"

	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
)

// PostedPrice is a bid: the price of a grain that the elevator posts for one day, for all its desks. The
// fact has the hour and the person; the last one written for a day is in force. A bid for delivery at
// another place or in a month still to come stands beside the one for grain that is delivered here now.
type PostedPrice struct {
	Commodity string          `json:"commodity"`
	Day       quantity.Date   `json:"day"`
	Price     quantity.Amount `json:"price"`
	Place     string          `json:"place,omitempty"`    // where it is delivered; empty for here
	Delivery  string          `json:"delivery,omitempty"` // month of delivery, "2027-03"; empty for now
}

// IsForNow reports whether the price is for grain delivered here now, as tickets take it.
func (p PostedPrice) IsForNow() bool { return p.Place == "" && p.Delivery == "" }

// ID is the name that the price is recorded under.
func (p PostedPrice) ID() string {
	id := PostedID(p.Commodity, p.Day)
	if p.IsForNow() {
		return id
	}
	return strings.TrimSpace(strings.Join([]string{id, p.Delivery, p.Place}, " "))
}

// Kind names the fact in the journal.
func (PostedPrice) Kind() string { return "house.posted" }

// PostedID is the name that the price of a grain delivered here on a day is recorded under.
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
