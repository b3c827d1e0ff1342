// Package shipment holds grain that left against what its destination found of it. What the house
// weighed and tested is the origin's; the destination weighs and tests again, and by the contract of
// a sale one of the two counts. The book keeps both and shows the difference: shrink on the way, or
// two scales that do not agree, is seen only over many loads.
package shipment

import (
	"fmt"
	"maps"
	"slices"

	"tenthpoint/internal/grain"
	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
)

// Arrived is what the destination found of the load of a ticket.
type Arrived struct {
	Ticket int64                              `json:"ticket,string"`
	Day    quantity.Date                      `json:"day"`
	Weight quantity.Amount                    `json:"weight"`          // net
	Paper  string                             `json:"paper,omitempty"` // number of the destination's ticket or certificate
	Scale  string                             `json:"scale,omitempty"` // where it was weighed
	Grade  string                             `json:"grade,omitempty"`
	Found  map[grain.FactorID]quantity.Amount `json:"found,omitempty"`
	Remark string                             `json:"remark,omitempty"`
}

// Kind names the fact in the journal.
func (Arrived) Kind() string { return "shipment.arrived" }

// ID is the id of its record: one to a ticket, the last one written counts.
func (a Arrived) ID() string { return fmt.Sprintf("%012d", a.Ticket) }

// Check returns what is wrong with it, or nil.
func (a Arrived) Check() error {
	switch {
	case a.Ticket < 1:
		return message.Incomplete.Errorf("name the ticket of the load that arrived")
	case a.Day.IsZero():
		return message.Incomplete.Errorf("say on which day the load arrived")
	case !a.Weight.Unit().IsMass() || a.Weight.Sign() <= 0:
		return message.Invalid.Errorf("the weight at the destination is %s; it is a weight above zero", a.Weight)
	}
	return nil
}

// Origin is what the house knows of a load that left. Estimated tells that Found is not of a sample of
// the load, but the mean of what the bin held where it was drawn.
type Origin struct {
	Weight    quantity.Amount // net
	Grade     string
	Found     map[grain.FactorID]quantity.Amount
	Estimated bool
}

// Factor is one result at both ends; a result that only one of them has is recorded there alone.
type Factor struct {
	ID                              grain.FactorID
	Origin, Destination, Difference quantity.Amount
}

// Difference is the destination's figures less the origin's.
type Difference struct {
	Weight  quantity.Amount
	Percent quantity.Amount // of the origin's weight
	Factors []Factor
}

// toHundredths rounds a difference in percent (practice).
var toHundredths = quantity.To("0.01", quantity.HalfUp)

// Compare sets what arrived against what left. Weights in different units cannot be compared, which is
// an error.
func Compare(o Origin, a Arrived) (Difference, error) {
	if o.Weight.Unit() != a.Weight.Unit() {
		return Difference{}, message.Invalid.Errorf("the load left with %s and arrived with %s; give the weight at the destination in %s", o.Weight, a.Weight, o.Weight.Unit().String())
	}
	d := Difference{Weight: a.Weight.Sub(o.Weight)}
	d.Percent = toHundredths.Apply(d.Weight.Div(o.Weight).Mul(quantity.Int(100, quantity.Percent)))
	ids := maps.Clone(o.Found)
	if ids == nil {
		ids = map[grain.FactorID]quantity.Amount{}
	}
	maps.Copy(ids, a.Found)
	for _, id := range slices.Sorted(maps.Keys(ids)) {
		f := Factor{ID: id}
		was, known := o.Found[id]
		is, found := a.Found[id]
		if known {
			f.Origin = was
		}
		if found {
			f.Destination = is
		}
		if known && found && was.Unit() == is.Unit() {
			f.Difference = is.Sub(was)
		}
		d.Factors = append(d.Factors, f)
	}
	return d, nil
}
