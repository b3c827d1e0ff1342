package quantity

import (
	"github.com/shopspring/decimal"
	"pgregory.net/rapid"
)

// drawDecimal draws a figure such as people or editions write: up to 15 digits
// with up to 8 decimals, of either sign.
func drawDecimal(t *rapid.T, label string, unit Unit) Amount {
	digits := rapid.OneOf(rapid.Int64Range(-999, 999), rapid.Int64Range(-999999999999999, 999999999999999)).Draw(t, label)
	return New(decimal.New(digits, -rapid.Int32Range(0, 8).Draw(t, label+" places")), unit)
}

// drawFraction draws a decimal, or a quotient of two.
func drawFraction(t *rapid.T, label string, unit Unit) Amount {
	a := drawDecimal(t, label, unit)
	if rapid.Bool().Draw(t, label+" is whole") {
		return a
	}
	below := drawDecimal(t, label+" below", Plain)
	if below.IsZero() {
		below = Int(3, Plain)
	}
	return a.Div(below)
}

func drawRounding(t *rapid.T) Rounding {
	step := rapid.SampledFrom([]string{"0.0001", "0.01", "0.1", "0.25", "0.5", "1", "5", "20", "0.3"}).Draw(t, "step")
	rule := rapid.SampledFrom([]Rule{HalfUp, HalfEven, Down, Up}).Draw(t, "rule")
	return To(step, rule)
}

// drawUnit draws a product of up to four base units over up to four others.
func drawUnit(t *rapid.T) Unit {
	some := rapid.SliceOfN(rapid.IntRange(0, int(bases)-1), 0, 4)
	var u Unit
	for _, b := range some.Draw(t, "over") {
		u = u.Times(one(base(b)))
	}
	for _, b := range some.Draw(t, "under") {
		u = u.Per(one(base(b)))
	}
	return u
}
