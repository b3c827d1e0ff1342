package quantity

import (
	"fmt"
	"math/big"

	"github.com/shopspring/decimal"
)

// Amount is an exact value with its unit. The value is the fraction num/den of two decimals with
// den above zero; most amounts are plain decimals and keep den at zero, which means 1. The zero
// Amount is the plain number 0.
//
// Adding or comparing amounts of different units is a programming error and panics with both units
// named.
type Amount struct {
	num, den decimal.Decimal
	unit     Unit
}

// New makes an amount of d units.
func New(d decimal.Decimal, unit Unit) Amount { return Amount{num: d, unit: unit} }

// Of makes an amount from a decimal written in the program's own text, such as Of("15.5", Percent).
// It panics when the text is not a decimal: user text goes through [Parse].
func Of(text string, unit Unit) Amount {
	d, err := decimal.NewFromString(text)
	if err != nil {
		panic(fmt.Sprintf("quantity.Of(%q): %v", text, err))
	}
	return New(d, unit)
}

// Int makes a whole number of units.
func Int(n int64, unit Unit) Amount { return New(decimal.NewFromInt(n), unit) }

// Zero is zero of the unit.
func Zero(unit Unit) Amount { return Amount{unit: unit} }

// Unit returns the unit of the amount.
func (a Amount) Unit() Unit { return a.unit }

// In replaces the unit and keeps the figure. It converts nothing: use it where the meaning changes
// and the figure does not, as when a difference of two percents becomes points.
func (a Amount) In(unit Unit) Amount {
	a.unit = unit
	return a
}

// isWhole reports whether a has no denominator.
func (a Amount) isWhole() bool { return a.den.IsZero() }

func (a Amount) denominator() decimal.Decimal {
	if a.isWhole() {
		return oneDecimal
	}
	return a.den
}

var oneDecimal = decimal.NewFromInt(1)

func (a Amount) mustMatch(b Amount, act string) {
	if a.unit != b.unit {
		panic(fmt.Sprintf("quantity: cannot %s %s and %s: unlike units %q and %q", act, a, b, a.unit, b.unit))
	}
}

// Add is a + b; both in one unit.
func (a Amount) Add(b Amount) Amount {
	a.mustMatch(b, "add")
	if a.isWhole() && b.isWhole() {
		return New(added(a.num, b.num), a.unit)
	}
	return fraction(times(a.num, b.den).Add(times(b.num, a.den)), bothUnder(a.den, b.den), a.unit)
}

// Neg is -a.
func (a Amount) Neg() Amount {
	a.num = a.num.Neg()
	return a
}

// Sub is a - b; both in one unit.
func (a Amount) Sub(b Amount) Amount {
	a.mustMatch(b, "subtract")
	if a.isWhole() && b.isWhole() {
		return New(subtracted(a.num, b.num), a.unit)
	}
	return a.Add(b.Neg())
}

// Mul is a x b, in the product of their units.
func (a Amount) Mul(b Amount) Amount {
	unit := a.unit.Times(b.unit)
	if a.isWhole() && b.isWhole() {
		return New(multiplied(a.num, b.num), unit)
	}
	return fraction(multiplied(a.num, b.num), bothUnder(a.den, b.den), unit)
}

// Div is a / b, exact, in the quotient of their units. It panics when b is
// zero: a divisor that data can make zero is refused where the data is read.
func (a Amount) Div(b Amount) Amount {
	if b.num.IsZero() {
		panic(fmt.Sprintf("quantity: %s divided by zero (%s)", a, b))
	}
	return fraction(times(a.num, b.den), times(b.num, a.den), a.unit.Per(b.unit))
}

// times multiplies by a denominator, where zero means 1.
func times(d, den decimal.Decimal) decimal.Decimal {
	if den.IsZero() {
		return d
	}
	return multiplied(d, den)
}

// bothUnder returns the denominator of a product, where zero means 1.
func bothUnder(a, b decimal.Decimal) decimal.Decimal {
	if a.IsZero() {
		return b
	}
	return times(a, b)
}

// fraction normalizes a fraction: the denominator is positive, and dropped when it is 1.
func fraction(num, den decimal.Decimal, unit Unit) Amount {
	if den.Sign() < 0 {
		num, den = num.Neg(), den.Neg()
	}
	if den.IsZero() || isOne(den) {
		return New(num, unit)
	}
	return Amount{num: num, den: den, unit: unit}
}

// isOne reports whether d is 1 or 1.00. The last digit alone rules out most others, which avoids
// rescaling.
func isOne(d decimal.Decimal) bool {
	places := -int(d.Exponent())
	if places >= 0 && places < len(powersOfTen) && d.CoefficientInt64() != powersOfTen[places] {
		return false
	}
	return d.Equal(oneDecimal)
}

// Cmp is -1, 0 or +1 as a is less than, equal to or more than b; both in one
// unit.
func (a Amount) Cmp(b Amount) int {
	a.mustMatch(b, "compare")
	if a.isWhole() && b.isWhole() {
		return a.num.Cmp(b.num)
	}
	return times(a.num, b.den).Cmp(times(b.num, a.den))
}

// Equal reports whether a and b are the same figure in the same unit. Unlike
// units are not equal and do not panic.
func (a Amount) Equal(b Amount) bool { return a.unit == b.unit && a.Cmp(b) == 0 }

// Less, AtLeast and the like read better than signs in a rule.
func (a Amount) Less(b Amount) bool { return a.Cmp(b) < 0 }

// More reports a > b.
func (a Amount) More(b Amount) bool { return a.Cmp(b) > 0 }

// Sign is -1, 0 or +1.
func (a Amount) Sign() int { return a.num.Sign() }

// IsZero reports whether the figure is zero.
func (a Amount) IsZero() bool { return a.num.IsZero() }

// Min is the smaller of two amounts in one unit.
func Min(a, b Amount) Amount {
	if b.Less(a) {
		return b
	}
	return a
}

// Max is the larger of two amounts in one unit.
func Max(a, b Amount) Amount {
	if b.More(a) {
		return b
	}
	return a
}

// Rat is the exact figure as a rational number, for checks written apart from
// this package.
func (a Amount) Rat() *big.Rat {
	return new(big.Rat).Quo(a.num.Rat(), a.denominator().Rat())
}

// Decimal is the figure as a decimal, and whether it is one: a fraction such
// as 100/84.5 is not until it has been rounded.
func (a Amount) Decimal() (decimal.Decimal, bool) {
	return a.num, a.isWhole()
}
