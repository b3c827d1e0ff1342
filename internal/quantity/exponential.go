package quantity

import (
	"fmt"

	"github.com/shopspring/decimal"
)

// workingPlaces are the decimals that Exp and Ln carry on the way, 20 more than
// mostExponentialPlaces: what each step drops cannot reach the result.
const (
	workingPlaces         = 45
	mostExponentialPlaces = 25
	mostExponent          = 60
)

var (
	smallExponent = decimal.New(1, -1)
	halfDecimal   = decimal.New(5, -1)
	twoDecimal    = decimal.NewFromInt(2)
)

// Exp is e raised to the plain number a, worked with 45 decimals and rounded once under r, of at
// most 25 decimals. It panics where a has a unit or lies beyond 60 either way, and
// when r is exact: callers bound their data first.
func Exp(a Amount, r Rounding) Amount {
	mustRoundExponential("Exp", a, r)
	x := a.num.DivRound(a.denominator(), workingPlaces)
	if x.Abs().Cmp(decimal.NewFromInt(mostExponent)) > 0 {
		panic(fmt.Sprintf("quantity.Exp: %s is out of reach", a))
	}
	if x.Sign() < 0 {
		return r.Apply(New(oneDecimal.DivRound(expOf(x.Neg()), workingPlaces), Plain))
	}
	return r.Apply(New(expOf(x), Plain))
}

// expOf halves x until its series is short, and squares the sum as often.
func expOf(x decimal.Decimal) decimal.Decimal {
	halved := 0
	for x.Cmp(smallExponent) > 0 {
		x, halved = x.Mul(halfDecimal), halved+1
	}
	sum, term := oneDecimal, oneDecimal
	for i := int64(1); !term.IsZero(); i++ {
		term = term.Mul(x).DivRound(decimal.NewFromInt(i), workingPlaces+mostExponent/2)
		sum = sum.Add(term)
	}
	for range halved {
		sum = sum.Mul(sum).Round(workingPlaces + mostExponent/2)
	}
	return sum
}

// Ln is the natural logarithm of the plain number a above zero, worked with 45 decimals and
// rounded once under r, of at most 25 decimals. It panics for any other a and when r is exact.
func Ln(a Amount, r Rounding) Amount {
	mustRoundExponential("Ln", a, r)
	if a.num.Sign() <= 0 {
		panic(fmt.Sprintf("quantity.Ln: %s has no logarithm", a))
	}
	x, twos := a.num.DivRound(a.denominator(), workingPlaces), int64(0)
	for x.Cmp(oneDecimal) > 0 {
		x, twos = x.Mul(halfDecimal), twos+1
	}
	for x.Cmp(halfDecimal) < 0 {
		x, twos = x.Add(x), twos-1
	}
	out := lnNearOne(x).Sub(lnNearOne(halfDecimal).Mul(decimal.NewFromInt(twos)))
	return r.Apply(New(out, Plain))
}

// lnNearOne is the series 2 (z + z^3/3 + z^5/5 + ...) with z = (x-1)/(x+1).
func lnNearOne(x decimal.Decimal) decimal.Decimal {
	z := x.Sub(oneDecimal).DivRound(x.Add(oneDecimal), workingPlaces)
	square, power, sum := z.Mul(z).Round(workingPlaces), z, decimal.Zero
	for i := int64(1); !power.IsZero(); i += 2 {
		sum = sum.Add(power.DivRound(decimal.NewFromInt(i), workingPlaces))
		power = power.Mul(square).Round(workingPlaces)
	}
	return sum.Mul(twoDecimal)
}

func mustRoundExponential(name string, a Amount, r Rounding) {
	if a.unit != Plain || r.IsExact() || r.Places() > mostExponentialPlaces {
		panic(fmt.Sprintf("quantity.%s: %s to %s", name, a, r))
	}
}
