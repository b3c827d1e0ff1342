package settle

import (
	"tenthpoint/internal/grain"
	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/title"
	"tenthpoint/internal/worksheet"
)

// Facts are the input of a settlement.
type Facts struct {
	// Drafts are the weighings: one for a truck, two when truck and trailer
	// are weighed apart.
	Drafts   []Draft
	Moisture Moisture
	// Findings are the other results of the sample, in the order tested.
	Findings []Finding
	Deal     // of the load, but for owners with a deal of their own
	Shares   []Share
	// Accepted are the ids of discounts whose limit would turn the load away
	// and which a manager has accepted all the same.
	Accepted []string
}

// Draft is one weighing, full and empty.
type Draft struct {
	Name                    string // "truck", "trailer"; empty for a single draft
	Gross, Tare             quantity.Amount
	GrossSource, TareSource message.Text
}

// Moisture writes the moisture of the load on the sheet and returns the step
// that holds it, in percent. A typed or metered figure is a [Reading]; the
// bench's own working of dial, temperature and replicates is another, whose
// steps belong to the engine like all others.
type Moisture interface {
	Work(*worksheet.Sheet, quantity.Rounding, Engine) *worksheet.Step
}

// Reading is a moisture that came as a figure.
type Reading struct {
	Percent quantity.Amount
	Source  message.Text
}

// Work records the reading, rounded once to the edition's place.
func (r Reading) Work(s *worksheet.Sheet, recorded quantity.Rounding, _ Engine) *worksheet.Step {
	return s.Given(LineMoisture, message.Words("Moisture"), r.Percent, recorded, r.Source)
}

// Finding is one factor's result. A yes-no factor uses Present instead of Amount.
type Finding struct {
	Factor  grain.FactorID
	Amount  quantity.Amount
	Present bool
	Source  message.Text
}

// Price is the price of a bushel, hundredweight or tonne.
type Price struct {
	Amount quantity.Amount
	Source message.Text
}

// Deal is whether grain has a price. Price is per unit of the edition's settling
// unit; nil is none, and charges are shown all the same. Unpriced is then what
// stands in the place of money. The first two engines know of no
// Unpriced, and of no deals of owners.
type Deal struct {
	Price    *Price
	Unpriced message.Text
}

// unpriced is the word in place of money.
func (d Deal) unpriced() message.Text {
	if d.Unpriced.IsZero() {
		return title.Nothing.Unpriced()
	}
	return d.Unpriced
}

// Share is one owner's part: Parts of Of, such as 1 of 3, or 33.5 of 100.
type Share struct {
	Owner     string
	Parts, Of quantity.Amount // plain numbers
	Own       *Deal           // nil where it is that of the load
	// Drying is the part of the drying charge where that is not the part of the grain: a landlord
	// who pays for no drying. Where any owner has one, an owner without has none of it.
	Drying *quantity.Portion
}
