package guard

import (
	"slices"

	"tenthpoint/internal/grain"
	"tenthpoint/internal/load"
	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/title"
)

// findPrice compares each price of the load, or each owner's own, with the posted one, else with
// the elevator's range, else with the last prices ticketed, else with the range the grain has ever
// cost. Contract prices were agreed earlier and are not checked.
func findPrice(c *check) {
	whole := len(c.Details.Shares) == 0
	for _, o := range c.Details.Shares {
		if o.Own == nil {
			whole = true
			continue
		}
		c.comparePrice(*o.Own, Finding{ID: string(Price) + "-" + o.ID, Field: "price"}, o.Name)
	}
	if whole {
		c.comparePrice(c.Details.Deal(), Finding{Field: "price"}, "")
	}
}

// ComparesPrice reports whether any owner of the load has a price that is compared.
func ComparesPrice(l *load.Load) bool { return slices.ContainsFunc(l.Details.Deals(), isCompared) }

func isCompared(d load.Deal) bool { return d.Price != nil && d.Under != title.Contract }

func (c *check) comparePrice(deal load.Deal, f Finding, owner string) {
	if !isCompared(deal) {
		return
	}
	price, by := deal.Price, c.limits("")
	posted := c.postedFor(deal)
	middle, usual := median(c.Prices, price.Unit())
	from, to := usualPrice(c.Details.Commodity, price.Unit())
	switch {
	case posted != nil && posted.Unit() == price.Unit():
		if !far(*price, *posted, postedOff) {
			return
		}
		f.Said = message.New("Price %s: the posted price is %s.", *price, *posted)
	case by.From != nil || by.To != nil:
		if !outside(*price, by.From, by.To) {
			return
		}
		f.Said = message.New("Price %s: this house pays from %s to %s.", *price, shownLimit(by.From), shownLimit(by.To))
	case usual && !c.Past: // the prices of today say nothing of a day long ago
		if !far(*price, middle, farOff) {
			return
		}
		f.Said = message.New("Price %s: the last tickets were at %s.", *price, middle)
	case outside(*price, from, to):
		f.Said = message.New("Price %s: such grain is paid from %s to %s.", *price, shownPrice(*from), shownPrice(*to))
	default:
		return
	}
	if owner != "" {
		f.Said = message.New("%v: %s", owner, f.Said)
	}
	f.About = about(c.Details.Commodity, price.String())
	c.say(f, by)
}

// postedFor is the posted price that a deal was made at, else the one posted now.
func (c *check) postedFor(deal load.Deal) *quantity.Amount {
	if p := deal.Posted; p != nil && p.Commodity == c.Details.Commodity && p.Day == c.Details.Day {
		return &p.Price
	}
	if c.Posted != nil {
		return &c.Posted.Price
	}
	return nil
}

// farOff is the allowed deviation of a price from the last ones, a fifth; postedOff that from the
// posted price, a twentieth.
var (
	farOff    = quantity.Of("0.2", quantity.Plain)
	postedOff = quantity.Of("0.05", quantity.Plain)
)

func far(price, from, most quantity.Amount) bool {
	off := price.Sub(from)
	if off.Sign() < 0 {
		off = off.Neg()
	}
	return off.More(from.Mul(most))
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
