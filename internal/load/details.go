package load

import (
	"tenthpoint/internal/grain"
	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/title"
)

// Direction is which way the grain moves.
type Direction string

const (
	// Inbound grain is received.
	Inbound Direction = "in"
	// Outbound grain leaves the elevator.
	Outbound Direction = "out"
)

// Details are the data of a load besides weights and sample. They are written whole each time, so
// that a fact never depends on how an earlier one was read.
type Details struct {
	Direction   Direction     `json:"direction"`
	Day         quantity.Date `json:"day"` // business day, which picks the edition
	Commodity   string        `json:"commodity"`
	Class       string        `json:"class,omitempty"`
	CropYear    string        `json:"crop_year,omitempty"`
	Schedule    string        `json:"schedule"` // the rates it is settled under
	Grower      Party         `json:"grower"`
	Shares      []Owner       `json:"shares,omitempty"`
	Consignee   string        `json:"consignee,omitempty"`
	Agent       string        `json:"agent,omitempty"`
	Truck       Truck         `json:"truck"`
	Driver      string        `json:"driver,omitempty"`
	Bin         string        `json:"bin,omitempty"` // pit or bin it went to or came from
	title.Terms               // of all of it, but for owners with terms of their own
	// Price is nil while there is none.
	Price       *quantity.Amount `json:"price,omitempty"`
	PriceSource string           `json:"price_source,omitempty"`
	// Posted is the price that was posted when this one was typed; nil where none was.
	Posted *Posted `json:"posted,omitempty"`

	Grown     Grown     `json:"grown,omitzero"`
	Lot       string    `json:"lot,omitempty"` // kept apart from other grain under this name
	Elsewhere Elsewhere `json:"elsewhere,omitzero"`
	Shipping  Shipping  `json:"shipping,omitzero"`
	// Apart describes a weighing of truck and trailer in two drafts; Zero tells that the scale's zero
	// was shown before the load was weighed, "shown" or "not shown".
	Apart WeighedApart `json:"apart,omitempty"`
	Zero  string       `json:"zero,omitempty"`
	// StoredFrom is the first day of storage where that is not the day of delivery.
	StoredFrom quantity.Date `json:"stored_from,omitzero"`

	// Pad is the emergency ticket it was written on first; nil where it was not.
	Pad *OnPad `json:"pad,omitempty"`
	// OldTicket is the number of a load from before the book, in the books it was in.
	OldTicket string `json:"old_ticket,omitempty"`
	Remark    string `json:"remark,omitempty"`
}

// Party is a person or firm on the ticket.
type Party struct {
	ID   string `json:"id"`
	Name string `json:"name"`
}

// Owner is one who shares in a load: Parts of Of.
type Owner struct {
	Party
	Parts quantity.Amount `json:"parts"`
	Of    quantity.Amount `json:"of"`
	// Drying is this owner's part of the drying charge; nil of all is that it is the part of the
	// grain.
	Drying *quantity.Portion `json:"drying,omitempty"`
	// Own is this owner's deal; nil where it is the load's.
	Own *Deal `json:"own,omitempty"`
}

// Part is the owner's part of the grain.
func (o Owner) Part() quantity.Portion { return quantity.Portion{Parts: o.Parts, Of: o.Of} }

// Deal is the disposition of grain, and its price.
type Deal struct {
	title.Terms
	Price       *quantity.Amount `json:"price,omitempty"`
	PriceSource string           `json:"price_source,omitempty"`
	Posted      *Posted          `json:"posted,omitempty"`
}

// Posted is the elevator's price of a grain on a day, and when and by whom it was posted.
type Posted struct {
	Commodity string          `json:"commodity"`
	Day       quantity.Date   `json:"day"`
	Price     quantity.Amount `json:"price"`
	At        string          `json:"at"`
	Who       string          `json:"who"`
	// Place and Delivery are of a bid for another place or a month still to come, which no load takes.
	Place    string `json:"place,omitempty"`
	Delivery string `json:"delivery,omitempty"`
}

// Deal returns the load's deal, for owners without one of their own.
func (d Details) Deal() Deal { return Deal{d.Terms, d.Price, d.PriceSource, d.Posted} }

// DealOf returns one owner's deal, counted from zero.
func (d Details) DealOf(owner int) Deal {
	if owner < len(d.Shares) && d.Shares[owner].Own != nil {
		return *d.Shares[owner].Own
	}
	return d.Deal()
}

// Deals returns the deals of a load, owner by owner; one where nobody shares in it.
func (d Details) Deals() []Deal {
	if len(d.Shares) == 0 {
		return []Deal{d.Deal()}
	}
	deals := make([]Deal, len(d.Shares))
	for i := range d.Shares {
		deals[i] = d.DealOf(i)
	}
	return deals
}

// IsPriced reports whether any of the load has its price.
func (d Details) IsPriced() bool {
	for _, one := range d.Deals() {
		if one.Price != nil {
			return true
		}
	}
	return false
}

// Truck is the vehicle on the scale.
type Truck struct {
	ID      string `json:"id,omitempty"`
	Plate   string `json:"plate,omitempty"`
	Trailer string `json:"trailer,omitempty"`
}

// Which is the side of a weighing.
type Which string

// A draft is weighed full and empty.
const (
	Gross Which = "gross"
	Tare  Which = "tare"
)

// WeightSource is the source of a weight.
type WeightSource string

const (
	// FromScale is read from the indicator.
	FromScale WeightSource = "scale"
	// StoredTare is the truck's tare from an earlier weighing.
	StoredTare WeightSource = "stored"
	// ByHand is typed by a person; the ticket marks it MANUAL WT.
	ByHand WeightSource = "manual"
)

// Weighing is one weight taken.
type Weighing struct {
	Which  Which           `json:"which"`
	Draft  string          `json:"draft,omitempty"` // "truck", "trailer"; empty for a single draft
	Weight quantity.Amount `json:"weight"`
	Source WeightSource    `json:"source"`
	Scale  string          `json:"scale,omitempty"`
	// DriverOn says whether the driver was on the truck; "on", "off" or "".
	DriverOn string `json:"driver_on,omitempty"`
	// Taken is the day a stored tare was weighed.
	Taken  quantity.Date `json:"taken"`
	Reason string        `json:"reason,omitempty"`
}

// Sample is the result of the bench.
type Sample struct {
	Number   string    `json:"number,omitempty"`
	Tester   string    `json:"tester,omitempty"`
	Probes   string    `json:"probes,omitempty"`
	Moisture *Moisture `json:"moisture,omitempty"`
	Findings []Finding `json:"findings,omitempty"`
	// NoneSeen is that whatever is counted or noticed and is not among Findings was looked for
	// and not found. It makes a grade whole; a settlement takes Findings alone.
	NoneSeen bool `json:"none_seen,omitempty"`
	// Flags are warnings about the reading, printed on the slip.
	Flags []Flag `json:"flags,omitempty"`
	// Stops are the warnings that stop the ticket.
	Stops []Stop `json:"stops,omitempty"`
	Grade string `json:"grade,omitempty"`
	// Mark tells whether the grade is final; empty where nobody said.
	Mark GradeMark `json:"grade_mark,omitempty"`
	// Kept is the location of the retained sample, Until the day it may be discarded.
	Kept  string        `json:"kept,omitempty"`
	Until quantity.Date `json:"until"`
}

// Stop is a flag on the reading that stops the ticket until a manager accepts the load. Nobody may
// accept a final one.
type Stop struct {
	Code     string       `json:"code"`
	Sentence message.Kept `json:"sentence"`
	Final    bool         `json:"final,omitempty"`
}

// Moisture is a moisture result and how it was come by.
type Moisture struct {
	Percent     quantity.Amount `json:"percent"` // as measured, not rounded
	Method      string          `json:"method"`
	Meter       string          `json:"meter,omitempty"`
	Calibration string          `json:"calibration,omitempty"`
	Reason      string          `json:"reason,omitempty"`
	// Bench is the bench's own record of dial, temperature and replicates, from which Percent was
	// calculated; nil for a typed figure.
	Bench *Bench `json:"bench,omitempty"`
}

// Finding is one other result of the sample.
type Finding struct {
	Factor  grain.FactorID   `json:"factor"`
	Amount  *quantity.Amount `json:"amount,omitempty"`
	Present bool             `json:"present,omitempty"`
}
