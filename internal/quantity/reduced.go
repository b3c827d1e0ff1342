package quantity

import "github.com/shopspring/decimal"

// Reduced is the same amount as a fraction of whole numbers in lowest terms. Long chains
// of exact arithmetic need it: their fractions would grow with every step.
func (a Amount) Reduced() Amount {
	r := a.Rat()
	return Amount{num: decimal.NewFromBigInt(r.Num(), 0), den: decimal.NewFromBigInt(r.Denom(), 0), unit: a.unit}
}
