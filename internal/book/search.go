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
