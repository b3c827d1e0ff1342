package paysheet

import (
	"tenthpoint/internal/levy"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/tariff"
)

// Order selects the tickets and terms that a sheet settles.
type Order struct {
	Grower  string
	Tickets []Chosen
	// Price is for grain that has none yet, Source where it is from.
	Price  *quantity.Amount
	Source string
	Bid    *Bid // where it is a posted one
	// Contract is the one to settle on; without it the one each ticket names.
	Contract string
	// Sale says that the owner sells grain that was held for them until now.
	Sale     bool
	Day      quantity.Date
	Tariff   *tariff.Edition
	Levies   []*levy.Levy
	Advances []Advance
	Payees   []string
	// Release says why a lender with a notice of lien is not among the payees.
	Release  string
	PayAfter quantity.Date
	Corrects int64
}

// Chosen is a ticket, or a part of it.
type Chosen struct {
	Number   int64
	Quantity *quantity.Amount // nil for all that is not settled yet
}
