package entry

import (
	"tenthpoint/internal/elevator"
	"tenthpoint/internal/quantity"
)

// ReadPosted reads a price to be posted: the grain by name or code, money per unit it is settled by,
// and a day, or today for none.
func ReadPosted(h House, commodity, price, day string) (p elevator.PostedPrice, err error) {
	c, err := CommodityHere(h.Profile(), commodity)
	if err != nil {
		return p, err
	}
	p.Commodity = c.ID
	if p.Day, err = ParseDay("Day", day, h.Today()); err != nil {
		return p, err
	}
	if p.Day.IsZero() {
		p.Day = h.Today()
	}
	p.Price, err = ParsePrice(price, PostedUnit(h, c.ID))
	return p, err
}

// PostedUnit is the unit that a grain is settled by, per which its price is posted.
func PostedUnit(h House, commodity string) quantity.Unit { return settlesBy(h, commodity) }
