package elevator

import (
	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
)

// LargestWeight is more than any truck scale weighs, in lb as in kg: a limit against typing errors
// for weights that no scale of this elevator can be asked about.
const LargestWeight = 9_999_999

// Largest is the most the scale may show: 105 % of its capacity (NIST Handbook
// 44, section 2.20, S.1.7, as quoted).
func (s Scale) Largest() quantity.Amount {
	return s.Capacity.Mul(quantity.Of("1.05", quantity.Plain))
}

// CheckWeight returns why a weight cannot have come from the scale: wrong unit, not above zero,
// over 105 % of capacity, not in whole divisions.
func (s Scale) CheckWeight(w quantity.Amount) error {
	switch {
	case w.Unit() != s.Division.Unit():
		return message.Invalid.Errorf("%s is not a weight from scale %s, which weighs in %s", w, s.ID, s.Division.Unit())
	case w.Sign() <= 0:
		return message.Invalid.Errorf("the weight is %s. See that the truck is on scale %s and weigh again", w, s.ID)
	case w.More(s.Largest()):
		return message.Invalid.Errorf("%s is over %s, which is 105 %% of the capacity of scale %s (%s). Do not use this weight; have the scale seen to", w, s.Largest(), s.ID, s.Capacity)
	}
	if below := s.Below(w); !below.Equal(w) {
		return message.Invalid.Errorf("%s is not a whole number of divisions of %s: it lies between %s and %s. Read the scale again", w, s.Division, below, below.Add(s.Division))
	}
	return nil
}

// Below rounds a weight towards zero to whole divisions of the scale.
func (s Scale) Below(w quantity.Amount) quantity.Amount {
	return quantity.To("1", quantity.Down).Apply(w.Div(s.Division)).Mul(s.Division)
}

// LightNet warns of a net under 50 divisions (NIST Handbook 44, section 2.20,
// UR.3.8, from memory, not confirmed: a warning, never a refusal). It is empty
// when there is nothing to warn of.
func (s Scale) LightNet(net quantity.Amount) message.Text {
	least := s.divisions(50)
	if net.Unit() != least.Unit() || !net.Less(least) {
		return message.Text{}
	}
	return message.New("Net %s is under 50 divisions of the scale (%s); a load this light is better weighed on a smaller scale.", net, least)
}

func (s Scale) divisions(n int64) quantity.Amount {
	return s.Division.Mul(quantity.Int(n, quantity.Plain))
}

// SmallestNet is the smallest net of grain that a scale of the elevator is meant
// for: in Canada 200 divisions at a licensed elevator and 100 of other bulk
// (SI/98-81 s. 62), elsewhere 50 (see [Scale.LightNet]).
func (p Profile) SmallestNet(s Scale) quantity.Amount {
	switch {
	case p.UnderGrainAct():
		return s.divisions(200)
	case p.Rules == "canada":
		return s.divisions(100)
	}
	return s.divisions(50)
}
