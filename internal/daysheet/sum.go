package daysheet

import "tenthpoint/internal/quantity"

// Sum is the total of a list of tickets. Every figure is the sum of the tickets' own lines, as
// printed.
type Sum struct {
	Loads    int
	Net      quantity.Amount
	Dockage  quantity.Amount
	Water    quantity.Amount
	Handling quantity.Amount
	Quality  quantity.Amount // weight taken off by discounts
	Settled  quantity.Amount
	Quantity quantity.Amount // bu, cwt or t
	Money
	// LaterQuantity is the total of the loads without a price.
	LaterQuantity quantity.Amount

	moisture, moistureNet quantity.Amount // net × moisture, and that net
	pounds, poundsNet     quantity.Amount // likewise of test weights in lb/bu
	metric, metricNet     quantity.Amount // and of those in kg/hL
}

// Money is the money of a list of tickets.
type Money struct {
	Drying, Discounts, Premiums, Charges quantity.Amount
	Value, Payable                       quantity.Amount
	// Later are the loads of which all or a part has no price, LaterCharges what that
	// part is charged: it is in Charges, and nothing of it in Value and Payable.
	Later        int
	LaterCharges quantity.Amount
}

func noMoney() Money {
	none := quantity.Zero(quantity.Dollar)
	return Money{Drying: none, Discounts: none, Premiums: none, Charges: none, Value: none, Payable: none, LaterCharges: none}
}

func newSum(u units) Sum {
	w, q := quantity.Zero(u.weight), quantity.Zero(u.per)
	return Sum{
		Net: w, Dockage: w, Water: w, Handling: w, Quality: w, Settled: w, Quantity: q, Money: noMoney(), LaterQuantity: q,
		moisture: quantity.Zero(u.weight.Times(quantity.Percent)), moistureNet: w,
		pounds: quantity.Zero(u.weight.Times(quantity.LbPerBushel)), poundsNet: w,
		metric: quantity.Zero(u.weight.Times(quantity.KgPerHL)), metricNet: w,
	}
}

// sumOfOne is a single ticket's lines.
func sumOfOne(t Ticket) Sum {
	s := newSum(t.units())
	s.Loads, s.Net = 1, t.Net
	s.Dockage, s.Water, s.Handling, s.Quality = t.Dockage, t.Water, t.Handling, t.Quality
	s.Settled, s.Quantity = t.Settled, t.Quantity
	s.Money = moneyOfOne(t)
	if s.Later > 0 {
		s.LaterQuantity, _, _ = t.Unpriced()
	}
	if t.Moisture != nil {
		s.moisture, s.moistureNet = s.Net.Mul(*t.Moisture), s.Net
	}
	switch {
	case t.TestWeight == nil:
	case t.TestWeight.Unit() == quantity.LbPerBushel:
		s.pounds, s.poundsNet = s.Net.Mul(*t.TestWeight), s.Net
	default:
		s.metric, s.metricNet = s.Net.Mul(*t.TestWeight), s.Net
	}
	return s
}

func moneyOfOne(t Ticket) Money {
	m := noMoney()
	m.Drying, m.Discounts, m.Premiums, m.Charges = t.Drying, t.Discounts, t.Premiums, t.Charges
	if t.Outbound {
		return m
	}
	if t.Priced() {
		m.Value, m.Payable = t.Value, t.Payable
	}
	if _, charges, some := t.Unpriced(); some {
		m.Later, m.LaterCharges = 1, charges
	}
	return m
}

// join adds another sum of the same units.
func (s *Sum) join(o Sum) {
	s.Loads += o.Loads
	s.Money.join(o.Money)
	addEach(s.lines(), o.lines())
}

func (m *Money) join(o Money) {
	m.Later += o.Later
	addEach(m.lines(), o.lines())
}

// negative returns the sum with its sign reversed.
func (s Sum) negative() Sum {
	s.Loads, s.Later = -s.Loads, -s.Later
	for _, a := range append(s.lines(), s.Money.lines()...) {
		*a = a.Neg()
	}
	return s
}

func addEach(to, add []*quantity.Amount) {
	for i := range to {
		*to[i] = to[i].Add(*add[i])
	}
}

// lines are the figures that are not money.
func (s *Sum) lines() []*quantity.Amount {
	return []*quantity.Amount{&s.Net, &s.Dockage, &s.Water, &s.Handling, &s.Quality, &s.Settled, &s.Quantity, &s.LaterQuantity,
		&s.moisture, &s.moistureNet, &s.pounds, &s.poundsNet, &s.metric, &s.metricNet}
}

func (m *Money) lines() []*quantity.Amount {
	return []*quantity.Amount{&m.Drying, &m.Discounts, &m.Premiums, &m.Charges, &m.Value, &m.Payable, &m.LaterCharges}
}

func (s Sum) units() units { return units{s.Net.Unit(), s.Quantity.Unit()} }

// averaged is the rounding of averages: a hundredth, half-up (common practice).
var averaged = quantity.To("0.01", quantity.HalfUp)

// Moisture is the average moisture weighed by net weight; known is false where
// no load was tested.
func (s Sum) Moisture() (a quantity.Amount, known bool) {
	return mean(s.moisture, s.moistureNet, quantity.Percent)
}

// TestWeight is the average of the test weights in a unit, lb/bu or kg/hL, weighed by net weight;
// known is false where no load was tested in it.
func (s Sum) TestWeight(in quantity.Unit) (a quantity.Amount, known bool) {
	if in == quantity.LbPerBushel {
		return mean(s.pounds, s.poundsNet, in)
	}
	return mean(s.metric, s.metricNet, in)
}

func mean(weighed, net quantity.Amount, unit quantity.Unit) (a quantity.Amount, known bool) {
	if net.Sign() <= 0 {
		return quantity.Zero(unit), false
	}
	return averaged.Apply(weighed.Div(net)), true
}
