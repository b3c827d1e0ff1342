package quantity

import (
	"cmp"
	"math"
	"math/bits"
	"slices"
	"strconv"

	"github.com/shopspring/decimal"
)

// Nearly all figures of a scale house fit into a machine word without their decimal point. They are
// rounded, added and multiplied here by the same rules, without big integers. The results have the
// exponent that package decimal would produce, so that they print the same.

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

// text writes a figure with exactly so many decimals, and no fewer than it has; false when it does
// not fit or has more.
func (n small) text(places int) (string, bool) {
	digits, ok := scaled(magnitude(n.digits), n.exp+places)
	if !ok || places < 0 || n.exp+places < 0 {
		return "", false
	}
	var room [32]byte
	out := strconv.AppendUint(room[:1], digits, 10) // the first is for a sign
	for len(out) <= places+1 {
		out = slices.Insert(out, 1, '0')
	}
	if places > 0 {
		out = slices.Insert(out, len(out)-places, '.')
	}
	if n.digits < 0 {
		out[0] = '-'
		return string(out), true
	}
	return string(out[1:]), true
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

// added is a + b.
func added(a, b decimal.Decimal) decimal.Decimal {
	if sum, ok := addSmall(a, b, 1); ok {
		return sum
	}
	return a.Add(b)
}

// subtracted is a - b.
func subtracted(a, b decimal.Decimal) decimal.Decimal {
	if difference, ok := addSmall(a, b, -1); ok {
		return difference
	}
	return a.Sub(b)
}

// addSmall is a + sign x b, with the decimals of whichever has more.
func addSmall(a, b decimal.Decimal, sign int64) (decimal.Decimal, bool) {
	x, okX := smallOf(a)
	y, okY := smallOf(b)
	exp := min(x.exp, y.exp)
	left, ok1 := x.at(exp)
	right, ok2 := y.at(exp)
	if !okX || !okY || !ok1 || !ok2 {
		return decimal.Decimal{}, false
	}
	return decimal.New(left+sign*right, int32(exp)), true
}

// at is the digits with a smaller exponent; false where two of them might no longer
// be added.
func (s small) at(exp int) (int64, bool) {
	size, ok := scaled(magnitude(s.digits), s.exp-exp)
	if !ok || size > math.MaxInt64/2 {
		return 0, false
	}
	if s.digits < 0 {
		return -int64(size), true
	}
	return int64(size), true
}

// multiplied is a x b.
func multiplied(a, b decimal.Decimal) decimal.Decimal {
	x, okX := smallOf(a)
	y, okY := smallOf(b)
	product, ok := product64(magnitude(x.digits), magnitude(y.digits))
	if !okX || !okY || !ok || product > math.MaxInt64 {
		return a.Mul(b)
	}
	digits := int64(product)
	if (x.digits < 0) != (y.digits < 0) {
		digits = -digits
	}
	return decimal.New(digits, a.Exponent()+b.Exponent())
}
