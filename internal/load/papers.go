package load

import (
	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
)

// Grown is the farm, field and variety of the grain, as its owner declares it.
type Grown struct {
	Place    string `json:"place,omitempty"`       // county and state
	Farm     string `json:"farm,omitempty"`        // name of the farm
	Number   string `json:"farm_number,omitempty"` // by which public offices know the farm
	Field    string `json:"field,omitempty"`       // field, or the bin on the farm it comes from
	Variety  string `json:"variety,omitempty"`
	Previous string `json:"previous,omitempty"` // what the truck carried before
}

// Shipping are the papers that go with grain.
type Shipping struct {
	Vehicle string `json:"vehicle,omitempty"` // railcar or barge
	Seals   string `json:"seals,omitempty"`   // numbers of the seals of tarp or car
	Lading  string `json:"lading,omitempty"`  // number of the bill of lading
	Carrier string `json:"carrier,omitempty"`
	// Destination is the place it goes to, Freight who pays for the way: prepaid or collect.
	Destination string `json:"destination,omitempty"`
	Freight     string `json:"freight,omitempty"`
}

// OnPad is the emergency ticket that a load was written on while the power was out.
type OnPad struct {
	Number int64  `json:"number,string"`
	Hour   string `json:"hour,omitempty"` // when it was written, as "14:20"
}

// Elsewhere is the weight of the same grain on another certified scale: that of the farm or of the
// origin. It is compared, and settles nothing.
type Elsewhere struct {
	Weight *quantity.Amount `json:"weight,omitempty"` // net
	Ticket string           `json:"ticket,omitempty"`
	Scale  string           `json:"scale,omitempty"`
}

// WeighedApart describes a weighing of a truck and its trailer in two drafts. A coupled combination
// may not be weighed end by end and added up (NIST Handbook 44, UR.3.3).
type WeighedApart string

// A trailer is uncoupled, or owner and elevator have agreed in writing.
const (
	Uncoupled     WeighedApart = "uncoupled"
	AgreedWritten WeighedApart = "agreed"
)

// Said is the kind of weighing, for papers.
func (w WeighedApart) Said() message.Text {
	switch w {
	case Uncoupled:
		return message.New("uncoupled, each weighed whole")
	case AgreedWritten:
		return message.New("agreed in writing")
	}
	return message.New("not noted whether uncoupled")
}

// GradeMark tells whether a grade may still change.
type GradeMark string

// A grade is interim until it is final.
const (
	Interim GradeMark = "interim"
	Final   GradeMark = "final"
)

// OriginDifference is the net less the origin's weight; false while one of them is not known.
func OriginDifference(l *Load) (quantity.Amount, bool) {
	net, known := l.Net()
	origin := l.Details.Elsewhere
	if !known || origin.Weight == nil || origin.Weight.Unit() != net.Unit() {
		return quantity.Amount{}, false
	}
	return net.Sub(*origin.Weight), true
}
