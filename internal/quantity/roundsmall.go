package quantity

import (
	"cmp"
	"math"
	"math/bits"

	"github.com/shopspring/decimal"
)

// Rounding is what a settlement does most. Nearly all figures of a scale house
// fit into a machine word with their decimal point taken away; they are rounded
// here by the same rules, without the big numbers that the others need.

// applySmall rounds a figure whose parts fit into a machine word; false when
// they do not.
func (r Rounding) applySmall(a Amount) (Amount, bool) {
	num, numOK := smallOf(a.num)
	den, denOK := smallOf(a.denominator())
	step, stepOK := smallOf(r.Step)
	if !numOK || !denOK || !stepOK {
		return Amount{}, false
	}
	// a/step = num.digits / (den.digits x step.digits) x 10^shift
	size, per := magnitude(num.digits), magnitude(den.digits)
	shift := num.exp - den.exp - step.exp
	perStep, ok1 := product64(per, magnitude(step.digits))
	size, ok2 := scaled(size, shift)
	perStep, ok3 := scaled(perStep, -shift)
	if !ok1 || !ok2 || !ok3 {
		return Amount{}, false
	}
	whole, rest := size/perStep, size%perStep
	if r.smallGoesUp(whole, rest, perStep) {
		whole++
	}
	out, ok := product64(whole, magnitude(step.digits))
	if !ok || out > math.MaxInt64 {
		return Amount{}, false
	}
	digits := int64(out)
	if num.digits < 0 {
		digits = -digits
	}
	return New(decimal.New(digits, int32(step.exp)), a.unit), true
}

// smallGoesUp is [Rounding.goesUp] in machine words.
func (r Rounding) smallGoesUp(whole, rest, per uint64) bool {
	return rest > 0 && r.Rule.goesUp(cmp.Compare(rest, per-rest), whole%2 == 1)
}

// small is a decimal as digits x 10^exp.
type small struct {
	digits int64
	exp    int
}

// smallOf takes a decimal apart; false when its digits may not fit.
func smallOf(d decimal.Decimal) (small, bool) {
	return small{d.CoefficientInt64(), int(d.Exponent())}, d.NumDigits() <= 18
}

func magnitude(n int64) uint64 {
	if n < 0 {
		return uint64(-n)
	}
	return uint64(n)
}

// product64 is a x b; false when it does not fit.
func product64(a, b uint64) (uint64, bool) {
	over, product := bits.Mul64(a, b)
	return product, over == 0
}

// scaled is n x 10^places for places above zero, and n for others; false when
// it does not fit.
func scaled(n uint64, places int) (uint64, bool) {
	if places <= 0 {
		return n, true
	}
	if places >= len(powersOfTen) {
		return 0, false
	}
	return product64(n, uint64(powersOfTen[places]))
}

// powersOfTen are those that fit into a machine word.
var powersOfTen = func() (out [19]int64) {
	out[0] = 1
	for i := 1; i < len(out); i++ {
		out[i] = 10 * out[i-1]
	}
	return out
}()
