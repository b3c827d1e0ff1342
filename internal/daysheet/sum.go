package daysheet

import "tenthpoint/internal/quantity"

// Sum is what a list of tickets of one commodity adds up to. Every figure is
// the sum of the tickets' printed lines.
type Sum struct {
	Loads    int
	Net      quantity.Amount
	Dockage  quantity.Amount
	Water    quantity.Amount
	Handling quantity.Amount
	Settled  quantity.Amount
	Quantity quantity.Amount // bu, cwt or t
	Drying   quantity.Amount
	// Adjusted is charges less drying: discounts less premiums, in money.
	Adjusted quantity.Amount
	Charges  quantity.Amount
	Value    quantity.Amount
	Payable  quantity.Amount
	// Later is how many of the loads have no price yet.
	Later int

	moisture, moistureWeight     quantity.Amount // net x moisture, and that net
	testWeight, testWeightWeight quantity.Amount
}

// NewSum is a sum of nothing, in the units of a ticket.
func NewSum(weight, per quantity.Unit) Sum {
	w, money := quantity.Zero(weight), quantity.Zero(quantity.Dollar)
	return Sum{
		Net: w, Dockage: w, Water: w, Handling: w, Settled: w, Quantity: quantity.Zero(per),
		Drying: money, Adjusted: money, Charges: money, Value: money, Payable: money,
		moisture: quantity.Zero(weight.Times(quantity.Percent)), moistureWeight: w,
		testWeight: quantity.Zero(weight.Times(quantity.LbPerBushel)), testWeightWeight: w,
	}
}

// Add counts a ticket in.
func (s *Sum) Add(t Ticket) { s.count(t, 1) }

// Take counts a ticket out again: it was voided or corrected.
func (s *Sum) Take(t Ticket) { s.count(t, -1) }

func (s *Sum) count(t Ticket, way int) {
	signed := func(a quantity.Amount) quantity.Amount {
		if way < 0 {
			return a.Neg()
		}
		return a
	}
	weight, per := s.Net.Unit(), s.Quantity.Unit()
	net := t.net()
	s.Loads += way
	s.Net = s.Net.Add(signed(net))
	s.Dockage = s.Dockage.Add(signed(t.figure("dockage", weight)))
	s.Water = s.Water.Add(signed(t.figure("shrink.water", weight)))
	s.Handling = s.Handling.Add(signed(t.figure("handling", weight)))
	s.Settled = s.Settled.Add(signed(t.figure("settled", weight)))
	s.Quantity = s.Quantity.Add(signed(t.figure("quantity", per)))
	s.money(t, signed, way)
	if m, ok := t.Figures["moisture"]; ok {
		s.moisture, s.moistureWeight = s.moisture.Add(signed(net.Mul(m))), s.moistureWeight.Add(signed(net))
	}
	if w, ok := t.Figures["factor.test-weight"]; ok && w.Unit() == quantity.LbPerBushel {
		s.testWeight, s.testWeightWeight = s.testWeight.Add(signed(net.Mul(w))), s.testWeightWeight.Add(signed(net))
	}
}

func (s *Sum) money(t Ticket, signed func(quantity.Amount) quantity.Amount, way int) {
	drying, charges := t.figure("drying", quantity.Dollar), t.figure("charges", quantity.Dollar)
	s.Drying = s.Drying.Add(signed(drying))
	s.Charges = s.Charges.Add(signed(charges))
	s.Adjusted = s.Adjusted.Add(signed(charges.Sub(drying)))
	s.Value = s.Value.Add(signed(t.figure("value", quantity.Dollar)))
	if _, priced := t.Figures["price"]; !priced {
		s.Later += way
		return
	}
	s.Payable = s.Payable.Add(signed(t.figure("payable", quantity.Dollar)))
}

// averaged is how averages are printed: a hundredth, half-up (common practice).
var averaged = quantity.To("0.01", quantity.HalfUp)

// Moisture is the average moisture weighed by net weight; known is false where
// no load was tested.
func (s Sum) Moisture() (a quantity.Amount, known bool) {
	if s.moistureWeight.Sign() <= 0 {
		return quantity.Zero(quantity.Percent), false
	}
	return averaged.Apply(s.moisture.Div(s.moistureWeight)), true
}

// TestWeight is the average test weight weighed by net weight; known is false
// where no load was tested.
func (s Sum) TestWeight() (a quantity.Amount, known bool) {
	if s.testWeightWeight.Sign() <= 0 {
		return quantity.Zero(quantity.LbPerBushel), false
	}
	return averaged.Apply(s.testWeight.Div(s.testWeightWeight)), true
}
