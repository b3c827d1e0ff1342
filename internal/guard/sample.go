package guard

import (
	"slices"
	"tenthpoint/internal/grain"
	"tenthpoint/internal/load"
	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
)

// findMoisture compares the moisture with the possible range of the grain.
func findMoisture(c *check) {
	m := c.Sample.Moisture
	known, err := grain.ByID(c.Details.Commodity)
	if m == nil || err != nil {
		return
	}
	by := c.limits("")
	from, to := orRange(by.From, by.To, usualMoisture(known.ID))
	if !outside(m.Percent, from, to) {
		return
	}
	c.say(Finding{
		Field: string(grain.Moisture), About: about(known.ID, m.Percent.String()),
		Said: message.New("Moisture %s: %s comes in between %s and %s here.", m.Percent, known.Name, *from, *to),
	}, by)
}

// findFactors compares every other result with the possible range of the grain.
func findFactors(c *check) {
	known, err := grain.ByID(c.Details.Commodity)
	if err != nil {
		return
	}
	for _, found := range c.Sample.Findings {
		f, ok := known.Factor(found.Factor)
		if !ok || found.Amount == nil || f.YesNo {
			continue
		}
		by := c.limits(string(f.ID))
		from, to := orRange(by.From, by.To, usualResult(known, f.ID))
		if !outside(inUnitOf(*found.Amount, from, to), from, to) {
			continue
		}
		f.NamesBushel = f.ID == grain.TestWeight && c.House.Rules == "canada"
		result, low, high := said(f, *found.Amount), shown(from, found.Amount.Unit()), shown(to, found.Amount.Unit())
		sentence := message.New("%s %s: %s is not known with less than %s or more than %s here.", f.Name, result, known.Name, low, high)
		switch {
		case from == nil:
			sentence = message.New("%s %s: more than %s is not known of %s here.", f.Name, result, high, known.Name)
		case to == nil:
			sentence = message.New("%s %s: less than %s is not known of %s here.", f.Name, result, low, known.Name)
		}
		c.say(Finding{ID: string(f.ID), Field: string(f.ID), About: about(known.ID, found.Amount.String()), Said: sentence}, by)
	}
}

// spoilers are the faults that good grain takes on from grain put on it. Musty and heating grain is left
// to the rates, which discount it or turn it away.
var spoilers = []grain.FactorID{grain.Sour, grain.Infested, grain.Weevils, grain.Insects}

// findSpoils looks for a fault that the grain of its bin would take on.
func findSpoils(c *check) {
	known, err := grain.ByID(c.Details.Commodity)
	if err != nil || c.Details.Direction == load.Outbound {
		return
	}
	for _, found := range c.Sample.Findings {
		f, ok := known.Factor(found.Factor)
		isThere := found.Present || found.Amount != nil && found.Amount.Sign() > 0
		if !ok || !isThere || !slices.Contains(spoilers, f.ID) {
			continue
		}
		c.say(Finding{
			Field: string(f.ID), About: about(known.ID, string(f.ID)),
			Said: message.New("%s: what it is put on takes it on. Call the manager before it is dumped.", message.Words(f.Name)),
		}, c.limits(""))
		return
	}
}

// said is a result with what its figure alone would not say.
func said(f grain.Factor, a quantity.Amount) message.Text {
	if remark, has := f.Remark(a); has {
		return message.New("%s (%s)", a, remark)
	}
	return message.New("%s", a)
}

// inUnitOf converts a test weight to the unit of its limits; other results are unchanged.
func inUnitOf(a quantity.Amount, from, to *quantity.Amount) quantity.Amount {
	for _, limit := range []*quantity.Amount{from, to} {
		if limit == nil {
			continue
		}
		if same, err := quantity.TestWeight(a, limit.Unit()); err == nil {
			return same
		}
	}
	return a
}

// shown is a limit in the unit the result was measured in, to the tenth where it is converted.
func shown(limit *quantity.Amount, unit quantity.Unit) quantity.Amount {
	if limit == nil {
		return quantity.Amount{}
	}
	if limit.Unit() == unit {
		return *limit
	}
	if same, err := quantity.TestWeight(*limit, unit); err == nil {
		return tenths.Apply(same)
	}
	return *limit
}

var tenths = quantity.To("0.1", quantity.HalfUp)
