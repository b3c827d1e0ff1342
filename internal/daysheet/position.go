package daysheet

import (
	"cmp"
	"slices"

	"tenthpoint/internal/grain"
	"tenthpoint/internal/quantity"
)

// Position is the stock by commodity and bin: settled weight in, less weighed net out. It counts
// the weight that was paid for, which the elevator owes for; the grain in the bin is heavier by the
// water not yet dried out and lighter by the real handling loss.
type Position []Stock

// Stock is one commodity in one bin.
type Stock struct {
	Commodity, Name, Bin string
	Weight               quantity.Amount
}

// Move is the change of one day in one commodity and bin: Before + In − Out − Back = After.
type Move struct {
	Commodity, Name, Bin string
	Before               quantity.Amount
	In, Out              quantity.Amount
	// Back is the weight brought in by tickets of earlier days that were voided or corrected on
	// this day; negative for weight carried away.
	Back  quantity.Amount
	After quantity.Amount
}

// moves takes a position through a day.
func (p Position) moves(parts []Part) []Move {
	var out []Move
	for _, s := range p {
		m := findMove(&out, Ticket{Commodity: s.Commodity, Name: s.Name, Bin: s.Bin}, s.Weight.Unit())
		m.Before = s.Weight
	}
	for _, part := range parts {
		for _, t := range part.Tickets {
			m := findMove(&out, t, t.units().weight)
			if t.Outbound {
				m.Out = m.Out.Add(t.Net)
			} else {
				m.In = m.In.Add(t.moves())
			}
		}
		for _, t := range part.Against {
			m := findMove(&out, t, t.units().weight)
			m.Back = m.Back.Add(t.moves())
		}
	}
	for i, m := range out {
		out[i].After = m.Before.Add(m.In).Sub(m.Out).Sub(m.Back)
	}
	slices.SortFunc(out, func(a, b Move) int {
		return cmp.Or(cmp.Compare(a.Name, b.Name), cmp.Compare(a.Bin, b.Bin), cmp.Compare(a.After.Unit().String(), b.After.Unit().String()))
	})
	return out
}

func findMove(all *[]Move, t Ticket, unit quantity.Unit) *Move {
	for i := range *all {
		m := &(*all)[i]
		if m.Commodity == t.Commodity && m.Bin == t.Bin && m.Before.Unit() == unit {
			return m
		}
	}
	none := quantity.Zero(unit)
	*all = append(*all, Move{Commodity: t.Commodity, Name: t.Name, Bin: t.Bin, Before: none, In: none, Out: none, Back: none, After: none})
	return &(*all)[len(*all)-1]
}

// byLegalWeight rounds bushels that are counted and not settled (practice).
var byLegalWeight = quantity.To("0.01", quantity.HalfUp)

// bushels returns the closing balance in bushels of legal weight; false where the law names no
// bushel of the grain or the weight is not in pounds.
func (m Move) bushels() (quantity.Amount, bool) {
	c, err := grain.ByID(m.Commodity)
	if err != nil || c.Bushel.IsZero() || m.After.Unit() != quantity.Lb {
		return quantity.Zero(quantity.Bushel), false
	}
	return byLegalWeight.Apply(m.After.Div(c.Bushel)), true
}

// After is the position at the end of the day, without empty bins.
func (s Sheet) After() Position {
	var out Position
	for _, m := range s.Moves {
		if !m.After.IsZero() {
			out = append(out, Stock{m.Commodity, m.Name, m.Bin, m.After})
		}
	}
	return out
}

// Of returns the stock of a commodity over all bins, in the unit.
func (p Position) Of(commodity string, unit quantity.Unit) quantity.Amount {
	total := quantity.Zero(unit)
	for _, s := range p {
		if s.Commodity == commodity && s.Weight.Unit() == unit {
			total = total.Add(s.Weight)
		}
	}
	return total
}
