package guard

import (
	"slices"

	"tenthpoint/internal/grain"
	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/title"
)

// findPrice compares a price with the posted one, else with the elevator's range, else with the
// last prices ticketed, else with the range the grain has ever cost. Contract prices were agreed
// earlier and are not checked.
func findPrice(c *check) {
	price := c.Details.Price
	if price == nil || c.Details.Under == title.Contract {
		return
	}
	by := c.limits("")
	f := Finding{Field: "price"}
	middle, usual := median(c.Prices, price.Unit())
	from, to := usualPrice(c.Details.Commodity, price.Unit())
	switch {
	case c.Posted != nil && c.Posted.Unit() == price.Unit():
		if !far(*price, *c.Posted) {
			return
		}
		f.Said = message.New("Price %s: the posted price is %s.", *price, *c.Posted)
	case by.From != nil || by.To != nil:
		if !outside(*price, by.From, by.To) {
			return
		}
		f.Said = message.New("Price %s: this house pays from %s to %s.", *price, shownLimit(by.From), shownLimit(by.To))
	case usual && !c.Past: // the prices of today say nothing of a day long ago
		if !far(*price, middle) {
			return
		}
		f.Said = message.New("Price %s: the last tickets were at %s.", *price, middle)
	case outside(*price, from, to):
		f.Said = message.New("Price %s: such grain is paid from %s to %s.", *price, shownPrice(*from), shownPrice(*to))
	default:
		return
	}
	f.About = about(c.Details.Commodity, price.String())
	c.say(f, by)
}

// farOff is the allowed deviation of a price from another: a fifth.
var farOff = quantity.Of("0.2", quantity.Plain)

func far(price, from quantity.Amount) bool {
	off := price.Sub(from)
	if off.Sign() < 0 {
		off = off.Neg()
	}
	return off.More(from.Mul(farOff))
}

// fewestPrices make a price usual.
const fewestPrices = 3

// median is the middle of the prices in a unit; false of too few.
func median(all []quantity.Amount, unit quantity.Unit) (quantity.Amount, bool) {
	var same []quantity.Amount
	for _, p := range all {
		if p.Unit() == unit {
			same = append(same, p)
		}
	}
	if len(same) < fewestPrices {
		return quantity.Amount{}, false
	}
	slices.SortFunc(same, quantity.Amount.Cmp)
	return same[len(same)/2], true
}

// usualPrice is the range of a grain in the unit of a price; nil where the grain has
// no bushel to reckon by.
func usualPrice(commodity string, unit quantity.Unit) (from, to *quantity.Amount) {
	cwt := pricesPerCwt(commodity)
	hundredweights, ok := cwtIn(commodity, unit)
	if !ok {
		return nil, nil
	}
	low, high := cwt.from.Mul(hundredweights), cwt.to.Mul(hundredweights)
	return &low, &high
}

// cwtIn returns the hundredweights in one unit of a price.
func cwtIn(commodity string, unit quantity.Unit) (quantity.Amount, bool) {
	switch unit {
	case quantity.DollarsPerCwt:
		return quantity.Int(1, quantity.Plain), true
	case quantity.DollarsPerT:
		each, err := quantity.MassFactor(quantity.Tonne, quantity.Cwt)
		return each, err == nil
	case quantity.DollarsPerBu:
		known, err := grain.ByID(commodity)
		each, wrong := quantity.MassFactor(quantity.Lb, quantity.Cwt)
		if err != nil || wrong != nil || known.Bushel.IsZero() {
			return quantity.Amount{}, false
		}
		return known.Bushel.Mul(each), true
	}
	return quantity.Amount{}, false
}

// shownPrice is a limit in whole cents.
func shownPrice(a quantity.Amount) quantity.Amount {
	return quantity.To("0.01", quantity.HalfUp).Apply(a)
}

// shownLimit formats a limit; a dash where there is none.
func shownLimit(a *quantity.Amount) any {
	if a == nil {
		return "–"
	}
	return *a
}
