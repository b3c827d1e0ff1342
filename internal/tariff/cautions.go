package tariff

import (
	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
)

// What is looked at twice: figures that are allowed and can hardly be meant. The limits lie
// far above any posted tariff that was read.
var (
	dearestDay   = map[quantity.Unit]quantity.Amount{quantity.Bushel: perUnit("0.01", quantity.Bushel), quantity.Cwt: perUnit("0.02", quantity.Cwt), quantity.Tonne: perUnit("0.40", quantity.Tonne)}
	dearestMonth = map[quantity.Unit]quantity.Amount{quantity.Bushel: perUnit("0.30", quantity.Bushel), quantity.Cwt: perUnit("0.60", quantity.Cwt), quantity.Tonne: perUnit("12", quantity.Tonne)}
	dearestYear  = quantity.Of("24", quantity.Percent)
)

func perUnit(figure string, unit quantity.Unit) quantity.Amount {
	return quantity.Of(figure, quantity.Dollar.Per(unit))
}

// Cautions returns warnings about charges that are allowed but unusual, one sentence each. They
// refuse nothing.
func (e *Edition) Cautions() []message.Text {
	var out []message.Text
	for _, c := range e.Keeping {
		for _, b := range c.Bands {
			if most := dearestDay[e.Settle]; b.How == Daily && b.Posted.Amount.More(most.Mul(quantity.Int(int64(b.Posted.Days), quantity.Plain))) {
				out = append(out, message.New("%s, %s: %s is more than %s a day.", c.Label, b.Label, b.Posted.said(), most))
			}
			if most := dearestMonth[e.Settle]; b.How == Monthly && b.Rate.Amount.More(most) {
				out = append(out, message.New("%s, %s: %s is more than %s a month.", c.Label, b.Label, b.Rate.Amount.Written(), most))
			}
		}
	}
	if e.Interest.Given() && e.Interest.Rate.Amount.More(dearestYear) {
		out = append(out, message.New("Interest of %s a year is more than %s.", e.Interest.Rate.Amount.Written(), dearestYear))
	}
	if e.Corrects == "" && e.Origin.Issued.After(e.From) {
		out = append(out, message.New("The tariff is issued on %s, after its first day, %s.", e.Origin.Issued, e.From))
	}
	return out
}
