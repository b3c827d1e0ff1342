package daysheet

import (
	"cmp"
	"slices"

	"tenthpoint/internal/quantity"
)

// Position is the grain in the house by commodity and bin: what was settled
// coming in, less what was weighed going out. It counts dry-equivalent weight,
// which is what the house owes for; what lies in the bin is heavier by the
// water not yet dried out and lighter by what handling really lost.
type Position []Stock

// Stock is one commodity in one bin.
type Stock struct {
	Commodity, Name, Bin string
	Weight               quantity.Amount
}

// With is the position after the parts of a day.
func (p Position) With(parts []Part) Position {
	out := slices.Clone(p)
	for _, part := range parts {
		for _, t := range part.Tickets {
			out = out.move(t, false)
		}
		for _, t := range part.Against {
			out = out.move(t, true)
		}
	}
	slices.SortFunc(out, func(a, b Stock) int { return cmp.Or(cmp.Compare(a.Name, b.Name), cmp.Compare(a.Bin, b.Bin)) })
	return out
}

// move counts a ticket in or, going back, out again.
func (p Position) move(t Ticket, back bool) Position {
	weight := t.figure("settled", t.weightUnit())
	if t.Outbound {
		weight = t.net().Neg()
	}
	if back {
		weight = weight.Neg()
	}
	for i := range p {
		if p[i].Commodity == t.Commodity && p[i].Bin == t.Bin && p[i].Weight.Unit() == weight.Unit() {
			p[i].Weight = p[i].Weight.Add(weight)
			return p
		}
	}
	return append(p, Stock{Commodity: t.Commodity, Name: t.Name, Bin: t.Bin, Weight: weight})
}

// Of is what the house has of a commodity over all its bins, in the unit.
func (p Position) Of(commodity string, unit quantity.Unit) quantity.Amount {
	total := quantity.Zero(unit)
	for _, s := range p {
		if s.Commodity == commodity && s.Weight.Unit() == unit {
			total = total.Add(s.Weight)
		}
	}
	return total
}
