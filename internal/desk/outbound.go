package desk

import (
	"tenthpoint/internal/grain"
	"tenthpoint/internal/load"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/settle"
)

// Grain that leaves takes the same way over the scale, but is only weighed:
// what it is sold on is the buyer's test. Its settlement is a sheet of weights,
// with bushels by legal weight, under no edition; every other line is nil.

// byLegalWeight rounds bushels that are counted and not settled (practice).
var byLegalWeight = quantity.To("0.01", quantity.HalfUp)

// weighOnly writes down the weights of a load that leaves.
func weighOnly(l *load.Load, by settle.Engine) (*settle.Settlement, error) {
	w, err := by.WeighOnly(l.SettleFacts().Drafts, countedIn(l))
	if err != nil {
		return nil, err
	}
	return &settle.Settlement{Engine: by.Number(), Sheet: w.Sheet, Gross: w.Gross, Tare: w.Tare, Net: w.Net, Bushels: w.Bushels}, nil
}

// countedIn asks for bushels where the law knows a bushel of the grain and the
// scale weighs in pounds.
func countedIn(l *load.Load) settle.Outbound {
	out := settle.Outbound{Place: quantity.Unrounded, Bushels: byLegalWeight}
	gross, ok := l.Weight(load.Gross, l.Drafts()[0])
	c, err := grain.ByID(l.Details.Commodity)
	if ok && err == nil && !c.Bushel.IsZero() && gross.Weight.Unit() == quantity.Lb {
		out.Bushel, out.BushelSource = c.Bushel, c.BushelSource
	}
	return out
}

func isOutbound(l *load.Load) bool { return l.Details.Direction == load.Outbound }
