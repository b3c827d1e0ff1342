package bins

import (
	"slices"
	"tenthpoint/internal/bin/shape"
	"tenthpoint/internal/grain/look"
	"tenthpoint/internal/office/binlog"
	"tenthpoint/internal/quantity"
	"tenthpoint/ui/model"
)

// ordinary is the size at which a bin that nobody measured is drawn, in feet.
const ordinary = 20

// Pictures are the bins drawn to one scale, in the order of the list of the house.
func (b *Bins) Pictures() []model.BinPicture {
	tallest := quantity.Int(ordinary, quantity.Foot)
	for _, one := range b.all {
		if h := heightOf(one.Shape); h.More(tallest) {
			tallest = h
		}
	}
	out := make([]model.BinPicture, 0, len(b.all))
	for _, one := range b.all {
		out = append(out, b.picture(one, tallest))
	}
	return out
}

func (b *Bins) picture(one binlog.Bin, tallest quantity.Amount) model.BinPicture {
	p := model.BinPicture{Key: one.ID, Label: one.ID, Under: b.under(one), State: stateOf(one), Chosen: one.ID == b.chosen, Look: lookOf(one)}
	if one.Shape.IsZero() {
		side := permille(quantity.Int(ordinary, quantity.Foot), tallest)
		p.Width, p.Wall, p.Unmeasured = side, side, true
		return p
	}
	width := one.Shape.Diameter
	if one.Shape.Form == shape.Flat {
		width = one.Shape.Width
	}
	p.Width, p.Wall = permille(width, tallest), permille(one.Shape.Wall, tallest)
	p.Cone, p.Peak = permille(one.Shape.Cone, tallest), permille(one.Shape.Peak, tallest)
	p.Pile = one.Shape.Form == shape.Pile
	p.Level, _ = one.Level()
	return p
}

// lookOf is the look of the grain that a bin has most of.
func lookOf(one binlog.Bin) look.Look {
	if len(one.Grain) == 0 {
		return look.Other
	}
	most := slices.MaxFunc(one.Grain, func(a, b binlog.Held) int { return inPounds(a).Cmp(inPounds(b)) })
	return look.Of(most.Commodity)
}

// inPounds is the weight of a grain in lb, to be compared with others.
func inPounds(h binlog.Held) quantity.Amount {
	factor, err := quantity.MassFactor(h.Unit, quantity.Lb)
	if err != nil {
		return quantity.Zero(quantity.Lb)
	}
	return h.Lies().Mul(factor)
}

// under is the caption of a bin: its fill level, or that it is empty.
func (b *Bins) under(one binlog.Bin) string {
	switch {
	case one.Short():
		return b.session.Say("below empty")
	case len(one.Grain) == 0:
		return b.session.Say("empty")
	}
	return b.full(one)
}

// heightOf is the height of a bin with hopper and roof, in feet.
func heightOf(s shape.Shape) quantity.Amount {
	total := quantity.Zero(quantity.Foot)
	for _, part := range []quantity.Amount{s.Wall, s.Cone, s.Peak} {
		total = total.Add(inFeet(part))
	}
	return total
}

func inFeet(length quantity.Amount) quantity.Amount {
	if !quantity.Recorded(length) {
		return quantity.Zero(quantity.Foot)
	}
	if length.Unit() == quantity.Metre {
		return length.Mul(feetPerMetre)
	}
	return length
}

// feetPerMetre is 1 / 0.3048, the foot of 1959.
var feetPerMetre = quantity.Int(1, quantity.Foot).Div(quantity.Of("0.3048", quantity.Metre))

func permille(length, of quantity.Amount) int {
	return quantity.Permille(inFeet(length).Div(of), quantity.HalfUp)
}
