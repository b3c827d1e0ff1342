package guard

import (
	"tenthpoint/internal/load"
	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
)

// repeatedWithin is the number of minutes that must lie between two loads of one truck with the
// same gross.
const repeatedWithin = 20

// findRepeated compares the gross with the last ones of the same truck.
func findRepeated(c *check) {
	gross, ok := c.Weight(load.Gross, "")
	if !ok || c.InPlaceOf() > 0 {
		return
	}
	by, within := c.limits(""), int64(repeatedWithin)
	if by.From != nil && by.From.Unit() == quantity.Count {
		if whole, exact := by.From.Decimal(); exact {
			within = whole.IntPart()
		}
	}
	for _, other := range c.Others {
		if other.Ticket == 0 || int64(other.Minutes) >= within || other.Gross.Unit() != gross.Weight.Unit() || !other.Gross.Equal(gross.Weight) {
			continue
		}
		c.say(Finding{
			Field: string(load.Gross), About: about(other.Load, gross.Weight.String()),
			Said: message.New("Gross %s of this truck stands on ticket %d too, %d minutes before.", gross.Weight, other.Ticket, other.Minutes),
		}, by)
		return
	}
}

// findOnYard reports that the truck is on the yard with another load.
func findOnYard(c *check) {
	for _, other := range c.Others {
		if other.Ticket > 0 {
			continue
		}
		c.say(Finding{
			Field: "truck", About: about(other.Load),
			Said: message.New("Truck %v is on the yard already, as load %v.", truckName(c.Details.Truck), other.Load),
		}, c.limits(""))
		return
	}
}

func truckName(t load.Truck) string {
	if t.ID != "" {
		return t.ID
	}
	return t.Plate
}
