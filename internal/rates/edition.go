package rates

import (
	"tenthpoint/internal/grain"
	"tenthpoint/internal/quantity"
)

// Status tells what an edition may be used for.
type Status string

const (
	// Example editions are invented. They are marked "example - not for trade"
	// wherever they show.
	Example Status = "example"
	// House editions are an elevator's own posted rates.
	House Status = "house"
	// Statute editions restate a published rule.
	Statute Status = "statute"
)

// Edition is one commodity's rates for one period.
type Edition struct {
	ID        string
	Title     string
	Schedule  string // the series of editions it belongs to, such as "main"
	Commodity grain.Commodity
	From      quantity.Date // first day in force
	Until     quantity.Date // last day in force; zero means until replaced
	Status    Status
	Corrects  string // id of the edition this one corrects, if any
	Origin    Origin
	Units     Units
	Rounding  Places
	Order     []string
	Dockage   DockageRule
	Shrink    Shrink
	Handling  Handling
	Drying    Drying
	Discounts []Discount
	Shares    Shares

	File string // the name it was read by, for messages
	Text []byte // the file as read
	Hash string // SHA-256 of Text, in hex
}

// Origin is where an edition comes from.
type Origin struct {
	Issued   quantity.Date
	By       string
	Document string
	Note     string
}

// Units are what an edition counts in.
type Units struct {
	// Weight is lb or kg: the unit of every weight on the slip.
	Weight quantity.Unit
	// Settle is bu, cwt or t: what the price is per.
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

// Basis names a weight that something is taken on.
type Basis string

const (
	// Net is gross less tare.
	Net Basis = "net"
	// Clean is net less dockage: the wet grain.
	Clean Basis = "clean"
	// Dry is clean less water shrink and handling.
	Dry Basis = "dry"
	// Remaining is whatever is left at that place in the order.
	Remaining Basis = "left"
)

// Cell is one figure of an edition with the place it stands in.
type Cell struct {
	Amount quantity.Amount
	// Row is the cell's place for people: "shrink.rate, line 31".
	Row string
}

// Given reports whether the edition has the cell at all.
func (c Cell) Given() bool { return c.Row != "" }

// DockageRule is what the edition adds to the grain's own recording rule
// (7 CFR 810.104): dockage is taken off the net weight before anything else.
// Its Row is empty where no dockage is determined of the grain.
type DockageRule struct {
	// MustTest refuses to settle a load whose dockage was not tested; without
	// it an untested load has none taken off.
	MustTest bool
	Rounding quantity.Rounding
	Row      string
}

// Shares says how a settlement is parted among owners.
type Shares struct {
	// Remainder is who takes what is left when every share has been rounded
	// down: "first", "last" or "largest".
	Remainder string
	Row       string
}

// Factor is a factor of the commodity in the unit that the edition's discount
// for it is written in, which is what is typed where no unit is.
func (e *Edition) Factor(id grain.FactorID) (grain.Factor, bool) {
	for _, d := range e.Discounts {
		if d.Factor.ID == id {
			return d.Factor, true
		}
	}
	return e.Commodity.Factor(id)
}

// Source is how a row of this edition is quoted on paper.
func (e *Edition) Source(row string) string { return e.ID + ": " + row }
