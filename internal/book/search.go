package book

// Search finds tickets by a few letters. Empty fields do not restrict it. The highest ticket comes
// first.
type Search struct {
	Terms []Term // all of them must fit
	// Ticket, Grower and Truck are given whole; a grower is also found as one
	// who shares in the load.
	Ticket        int64
	Grower, Truck string
	// AlsoGrowers are the codes of cards that the grower has taken over.
	AlsoGrowers []string
	// Commodity and Bin are ids, given whole.
	Commodity, Bin string
	Phases         []string
	FromDay        string // issued on or after
	ToDay          string // issued on or before
	// MoistFrom and MoistBelow bound the moisture, in percent, from one to below another.
	MoistFrom, MoistBelow string
	// CameFrom and CameBefore bound the time at which the truck was written down, as facts carry it. A
	// load in the place of another ticket was no truck, and is left out.
	CameFrom, CameBefore string
	// With is the line of a settlement that is not zero: drying, discounts.
	With string
	// Hour is the hour of the wall's clock, "14", in which trucks of the one day came. Whoever knows
	// that clock makes CameFrom and CameBefore of it; a book does not look at it.
	Hour string
	// Before leaves out tickets of this number and above, for the next page of a list. Zero begins
	// with the newest.
	Before int64
	// Refused lists loads that were turned away, which have no ticket, the last
	// one first; days are then those of the refusal and Before is not looked at.
	Refused bool
	Limit   int
}

// Term is one word of a search. It matches a load when it is part of the grower's name or the
// truck's, the whole of the grower's code, the beginning of the ticket's number, or one of the
// commodities that the word may name.
type Term struct {
	Text        string
	Commodities []string
	// Growers are the codes that the word leads to, of cards merged or renamed.
	Growers []string
}
