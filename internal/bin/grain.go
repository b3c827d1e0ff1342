package bin

import (
	"maps"
	"tenthpoint/internal/grain"
	"tenthpoint/internal/quantity"
)

// Grain is a weight of grain and what is known of it.
type Grain struct {
	Weight quantity.Amount `json:"weight"`
	// Oldest is the first day on which any of it was received.
	Oldest quantity.Date `json:"oldest"`
	// Measured are the results of its samples by factor, moisture and test weight among them.
	Measured map[grain.FactorID]Measured `json:"measured,omitempty"`
}

// Measured is a factor of grain as a mass. Of is the weight of the grain that was measured; Sum is
// that weight times the result, so that the mean by weight is Sum / Of. Test weight is weight by
// volume, which adds as volumes do: its Sum is the volume, and its mean Of / Sum.
type Measured struct {
	Of  quantity.Amount `json:"of"`
	Sum quantity.Amount `json:"sum"`
}

// kept is the resolution of masses when grain is parted: ten-thousandths of their unit. It is the
// precision of the record, not of a scale.
var kept = quantity.To("0.0001", quantity.HalfUp)

// None is no grain, in a unit of weight.
func None(unit quantity.Unit) Grain { return Grain{Weight: quantity.Zero(unit)} }

// Of is a weight of grain received on a day.
func Of(weight quantity.Amount, day quantity.Date) Grain { return Grain{Weight: weight, Oldest: day} }

// With is the grain with a result that was measured of all of it; of no grain nothing is measured.
func (g Grain) With(factor grain.FactorID, result quantity.Amount) Grain {
	if g.Weight.Sign() == 0 || factor == grain.TestWeight && result.Sign() == 0 {
		return g
	}
	m := Measured{Of: g.Weight, Sum: kept.Apply(g.Weight.Mul(result))}
	if factor == grain.TestWeight {
		m.Sum = kept.Apply(g.Weight.Div(result))
	}
	g.Measured = g.with(factor, m)
	return g
}

// with is a copy of what was measured, with one entry more or another one; an entry of nothing is
// left out.
func (g Grain) with(factor grain.FactorID, m Measured) map[grain.FactorID]Measured {
	out := make(map[grain.FactorID]Measured, len(g.Measured)+1)
	for id, known := range g.Measured {
		out[id] = known
	}
	out[factor] = m
	if m.Of.Sign() == 0 {
		delete(out, factor)
	}
	return out
}

// Without is the grain with nothing known of a factor.
func (g Grain) Without(factor grain.FactorID) Grain {
	g.Measured = g.with(factor, Measured{Of: quantity.Zero(g.Weight.Unit())})
	return g
}

// Mean is the result of a factor, weighted by weight; false where none of the grain was measured.
func (g Grain) Mean(factor grain.FactorID) (quantity.Amount, bool) {
	m, known := g.Measured[factor]
	if !known || m.Of.Sign() <= 0 || m.Sum.Sign() <= 0 {
		return quantity.Amount{}, false
	}
	if factor == grain.TestWeight {
		return m.Of.Div(m.Sum), true
	}
	return m.Sum.Div(m.Of), true
}

// Water is the water in the grain; false where the moisture of a part of it is not known.
func (g Grain) Water() (quantity.Amount, bool) {
	m, known := g.Measured[grain.Moisture]
	if !known || !m.Of.Equal(g.Weight) {
		return quantity.Zero(g.Weight.Unit()), g.Weight.IsZero()
	}
	return m.Sum.Div(quantity.Int(100, quantity.Percent)), true
}

// DryMatter is the grain without its water; false where a moisture is not known.
func (g Grain) DryMatter() (quantity.Amount, bool) {
	water, known := g.Water()
	return g.Weight.Sub(water), known
}

// Mix is two lots of grain together.
func (g Grain) Mix(h Grain) Grain {
	out := Grain{Weight: g.Weight.Add(h.Weight), Oldest: older(g, h)}
	if len(g.Measured)+len(h.Measured) == 0 {
		return out
	}
	out.Measured = make(map[grain.FactorID]Measured, max(len(g.Measured), len(h.Measured)))
	for _, lot := range []Grain{g, h} {
		for id, m := range lot.Measured {
			had, both := out.Measured[id]
			switch {
			case !both:
				out.Measured[id] = m
			case had.Sum.Unit() == m.Sum.Unit(): // one factor in two units has no mean: the first stays
				out.Measured[id] = Measured{had.Of.Add(m.Of), had.Sum.Add(m.Sum)}
			}
		}
	}
	maps.DeleteFunc(out.Measured, func(_ grain.FactorID, m Measured) bool { return m.Of.Sign() == 0 })
	return out
}

// Equal reports whether two lots are the same to the last digit.
func (g Grain) Equal(h Grain) bool {
	return g.Weight.Equal(h.Weight) && g.Oldest == h.Oldest && maps.EqualFunc(g.Measured, h.Measured, func(a, b Measured) bool {
		return a.Of.Equal(b.Of) && a.Sum.Equal(b.Sum)
	})
}

// Neg is the grain taken away again: added to a sum that it is part of, it leaves the rest.
func (g Grain) Neg() Grain {
	out := Grain{Weight: g.Weight.Neg(), Oldest: g.Oldest}
	for id, m := range g.Measured {
		out.Measured = out.with(id, Measured{m.Of.Neg(), m.Sum.Neg()})
	}
	return out
}

// older is the oldest day of two lots; a lot without weight or without a day has none.
func older(g, h Grain) quantity.Date {
	switch {
	case g.Oldest.IsZero() || g.Weight.IsZero():
		return h.Oldest
	case h.Oldest.IsZero() || h.Weight.IsZero() || g.Oldest.Before(h.Oldest):
		return g.Oldest
	}
	return h.Oldest
}

// Part parts grain in two: so much, and the rest. Weight and all masses of both add up to those of
// the whole exactly. A weight beyond that of the grain takes all of it.
func (g Grain) Part(weight quantity.Amount) (taken, left Grain) {
	if !weight.Less(g.Weight) {
		return g, Grain{Weight: quantity.Zero(g.Weight.Unit())}
	}
	taken, left = Grain{Weight: weight, Oldest: g.Oldest}, Grain{Weight: g.Weight.Sub(weight), Oldest: g.Oldest}
	for id, m := range g.Measured {
		t := Measured{share(m.Of, weight, g.Weight), share(m.Sum, weight, g.Weight)}
		switch {
		case m.Of.Equal(g.Weight):
			t.Of = weight // all of it was measured, so all of each part
		case t.Of.Equal(m.Of):
			t.Sum = m.Sum // a part too small to tell from the whole
		}
		taken.Measured = taken.with(id, t)
		left.Measured = left.with(id, Measured{m.Of.Sub(t.Of), m.Sum.Sub(t.Sum)})
	}
	return taken, left
}

// scaled is the grain with the same results at another weight, as after drying.
func (g Grain) scaled(weight quantity.Amount) Grain {
	out := Grain{Weight: weight, Oldest: g.Oldest}
	for id, m := range g.Measured {
		to := Measured{share(m.Of, weight, g.Weight), share(m.Sum, weight, g.Weight)}
		if m.Of.Equal(g.Weight) {
			to.Of = weight
		}
		out.Measured = out.with(id, to)
	}
	return out
}

func share(mass, weight, of quantity.Amount) quantity.Amount {
	return kept.Apply(mass.Mul(weight).Div(of))
}
