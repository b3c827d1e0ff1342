package quantity

import (
	"fmt"
	"math/big"

	"github.com/shopspring/decimal"
)

// Sqrt is the square root of a, rounded once under r from the exact root: the figure is right in
// every place of r, however close the root comes to a tie. The unit is the root of a's unit, so a
// variance in pt·pt gives points. It panics for a figure below zero, for a unit without a root, and
// when r is exact, because few roots terminate.
func Sqrt(a Amount, r Rounding) Amount {
	unit, ok := a.unit.root()
	if !ok || a.num.Sign() < 0 {
		panic(fmt.Sprintf("quantity: %s has no square root here", a))
	}
	if r.IsExact() {
		panic("quantity: a square root needs a rounding")
	}
	square := a.denominator().Mul(r.Step).Mul(r.Step)
	whole := rootOfWhole(a.num, square)
	below := whole.Mul(whole).Mul(square)
	if below.Cmp(a.num) != 0 && r.rootGoesUp(whole, a.num, square) {
		whole = whole.Add(oneDecimal)
	}
	return New(whole.Mul(r.Step), unit)
}

// rootOfWhole is the largest whole number whose square is not more than
// num/den, found by Newton's iteration on whole numbers.
func rootOfWhole(num, den decimal.Decimal) decimal.Decimal {
	exact := new(big.Rat).Quo(num.Rat(), den.Rat())
	floor := new(big.Int).Quo(exact.Num(), exact.Denom())
	return decimal.NewFromBigInt(floor.Sqrt(floor), 0)
}

// rootGoesUp decides whether a root between two steps is rounded up. The middle between two steps
// is compared by its square: (2w+1)² against 4x.
func (r Rounding) rootGoesUp(whole, num, square decimal.Decimal) bool {
	odd := whole.Add(whole).Add(oneDecimal)
	four := decimal.NewFromInt(4)
	return r.Rule.goesUp(num.Mul(four).Cmp(odd.Mul(odd).Mul(square)), isOdd(whole))
}

// root is the unit whose square is u.
func (u Unit) root() (Unit, bool) {
	for i, n := range u.exp {
		if n%2 != 0 {
			return Unit{}, false
		}
		u.exp[i] = n / 2
	}
	return u, true
}
