package slipcode

import (
	"tenthpoint/internal/grain"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/settle"
	"tenthpoint/internal/title"
)

// The lengths of hashes in a code, in bytes.
const (
	findBytes    = 6
	editionBytes = 16
	lawBytes     = 8
)

// Code is the content of the code of one slip.
type Code struct {
	Site   int64 // 0 where the house has one
	Ticket int64
	// Find is the short code that the house finds the ticket by.
	Find [findBytes]byte
	Day  quantity.Date
	// Edition is the beginning of the hash of the edition; Law that of the law, all zero for the
	// first one.
	Edition [editionBytes]byte
	Law     [lawBytes]byte
	Engine  settle.Engine
	Grain   string
	Units   Units

	Drafts   []Draft
	Moisture quantity.Amount // as recorded, in percent
	Sample   []Result
	Accepted []string // the limits that a manager has let pass
	Deal
	Owners []Owner
	Owner  int // whose slip it is, counted from 1; 0 is that of the whole load

	// Lines are the results on the slip.
	Lines []Line

	// NoMoney tells that prices and money were left out on purpose, as for who drives the truck.
	NoMoney bool
	// Left tells what there was no room for.
	Left Left

	Signature *Signature // nil of an unsigned one
}

// Units are the units of a ticket: pounds or kilograms on the scale and in the settlement;
// bushels, hundredweight or tonnes paid for.
type Units struct{ Scale, Weight, Quantity quantity.Unit }

// Draft is one weighing, full and empty.
type Draft struct {
	Name        string
	Gross, Tare quantity.Amount
}

// Result is the result of one factor: a figure, or of a yes-or-no factor whether it is Present.
type Result struct {
	Factor  grain.FactorID
	Amount  quantity.Amount
	IsSeen  bool // a yes-or-no result
	Present bool
}

// Deal is the title of grain and its price.
type Deal struct {
	Under title.Under
	Price *quantity.Amount
}

// Owner is one owner's part of a load, and of its drying where that is another.
type Owner struct {
	Parts, Of quantity.Amount
	Drying    *quantity.Portion
	Own       *Deal
}

// Line is a line of the settlement as the slip has it: of the whole load, or of an owner counted
// from 1. A discount is named by its place in the edition, for its rule's id is in the edition's
// own words.
type Line struct {
	Name     string // empty for a discount
	Discount int    // counted from 1
	Owner    int
	// Figure is without a unit: it is in that of the same line worked again.
	Figure quantity.Amount
}

// Left are the parts that a code has no room for.
type Left struct {
	Owners, Sample bool
	Lines          int
}

// IsWhole reports whether every fact is there, so that the ticket can be settled again.
func (l Left) IsWhole() bool { return !l.Owners && !l.Sample }

// Signature is the signature of a code: the beginning of the key, and its signature of the payload.
type Signature struct {
	Key   [keyBytes]byte
	Bytes [signatureBytes]byte
}

const (
	keyBytes       = 4
	signatureBytes = 64
)
