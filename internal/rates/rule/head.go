package rule

import (
	"tenthpoint/internal/grain"
	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/tomlfile"
)

// Head is the part of an edition before its rules, needed to read them.
type Head struct {
	Commodity grain.Commodity
	Units     Units
	Rounding  Places
	// NoBushel marks an edition that states no bushel weight at all.
	NoBushel bool
}

// Units are the units of an edition.
type Units struct {
	// Weight is lb or kg: the unit of every weight on the slip.
	Weight quantity.Unit
	// Settle is bu, cwt or t: the unit of the price.
	Settle quantity.Unit
	// Currency is the three-letter code of the money.
	Currency string
	// Bushel is the legal weight of one bushel in Weight per bushel; zero
	// when the elevator does not use bushels.
	Bushel quantity.Amount
	// BushelSource names the law the bushel weight is from.
	BushelSource string
}

// HasBushels reports whether the edition counts bushels at all.
func (u Units) HasBushels() bool { return !u.Bushel.IsZero() }

// Places are the edition's roundings for figures that are not given one of
// their own.
type Places struct {
	Moisture quantity.Rounding
	Weight   quantity.Rounding
	Quantity quantity.Rounding // bushels, cwt or t
	Money    quantity.Rounding
}

// MustRound requires a rounding place: a printed line has one, or the lines of a ticket do not add.
func MustRound(t *tomlfile.Table, key string, place quantity.Rounding) {
	if t.Has(key) && place.Rule == quantity.Exact {
		t.AddProblem(key, message.New("%s is exact: a printed line needs a place to be rounded to", t.Name(key)), message.New("Write the place and the rule, such as \"1 half-up\" or \"0.01 half-up\"."))
	}
}

// LineRounding reads the rounding of one line, or takes the edition's own.
func LineRounding(t *tomlfile.Table, otherwise quantity.Rounding) quantity.Rounding {
	place := t.OptionalRounding("round", otherwise)
	MustRound(t, "round", place)
	return place
}

// PerQuantityUnits are the units of money for a quantity.
func PerQuantityUnits() []quantity.Unit {
	return []quantity.Unit{quantity.DollarsPerBu, quantity.DollarsPerCwt, quantity.DollarsPerT}
}

// PerPointUnits are the units of money for a quantity and a point.
func PerPointUnits() []quantity.Unit {
	units := PerQuantityUnits()
	for i := range units {
		units[i] = units[i].Per(quantity.Point)
	}
	return units
}

// NeedsBushel refuses a figure per bushel in an edition without bushels.
func (h *Head) NeedsBushel(t *tomlfile.Table, key string, c Cell) {
	unit := c.Amount.Unit()
	perBushel := unit == quantity.DollarsPerBu || unit == quantity.DollarsPerBu.Per(quantity.Point)
	if perBushel && h.NoBushel && h.Units.Settle != quantity.Bushel {
		t.AddProblem(key, message.New("%s is per bushel, and the edition has no bushel weight", c.Amount.Written()), message.New("Add units.bushel with its source, or write the figure per cwt or t."))
	}
}
