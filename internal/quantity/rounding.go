package quantity

import (
	"strings"

	"github.com/shopspring/decimal"

	"tenthpoint/internal/message"
)

// Rounding is a step and a rule: to 0.01 half-up, to 20 lb down, to half a
// point up. The zero Rounding is Exact.
type Rounding struct {
	Step decimal.Decimal
	Rule Rule
}

// To makes a rounding from the program's own text: To("0.01", HalfUp).
func To(step string, rule Rule) Rounding {
	return Rounding{Step: decimal.RequireFromString(step), Rule: rule}
}

// Unrounded leaves figures as they are.
var Unrounded = Rounding{Rule: Exact}

// IsExact reports whether the rounding changes nothing.
func (r Rounding) IsExact() bool { return r.Rule == Exact || r.Rule == "" }

// CoarserThan reports whether the steps of r are larger than those of o. Exact figures are the finest.
func (r Rounding) CoarserThan(o Rounding) bool {
	return !r.IsExact() && (o.IsExact() || r.Step.GreaterThan(o.Step))
}

// Apply rounds a to a whole number of steps. The figure is rounded once, from
// its exact fraction: 0.4449 to 0.01 half-up is 0.44, never 0.45 by way of
// 0.445.
func (r Rounding) Apply(a Amount) Amount {
	if r.IsExact() {
		return a
	}
	if out, ok := r.applySmall(a); ok {
		return out
	}
	return r.applyBig(a)
}

// applyBig rounds a figure of any size.
func (r Rounding) applyBig(a Amount) Amount {
	size := a.num.Abs()
	per := times(r.Step, a.den)
	whole, rest := size.QuoRem(per, 0)
	if r.goesUp(whole, rest, per) {
		whole = whole.Add(oneDecimal)
	}
	out := whole.Mul(r.Step)
	if a.num.Sign() < 0 {
		out = out.Neg()
	}
	return New(out, a.unit)
}

// goesUp decides whether a figure of whole steps and a rest moves to the next
// step away from zero.
func (r Rounding) goesUp(whole, rest, per decimal.Decimal) bool {
	return !rest.IsZero() && r.Rule.goesUp(rest.Add(rest).Cmp(per), isOdd(whole))
}

func isOdd(d decimal.Decimal) bool { return d.BigInt().Bit(0) == 1 }

// Places returns the number of decimals a figure rounded this way is printed with: 2 for 0.01, 1
// for 0.5, 0 for 20.
func (r Rounding) Places() int32 {
	if r.IsExact() || r.Step.Exponent() >= 0 {
		return 0
	}
	return -r.Step.Exponent()
}

// String is the rounding as an edition writes it: "0.01 half-up".
func (r Rounding) String() string {
	if r.IsExact() {
		return string(Exact)
	}
	return r.Step.String() + " " + string(r.Rule)
}

// Message is the rounding for people.
func (r Rounding) Message() message.Text {
	if r.IsExact() {
		return message.Words(string(Exact))
	}
	return message.New("%s %s", r.Step.String(), string(r.Rule))
}

// ParseRounding reads "0.01 half-up", "20 down" or "exact".
func ParseRounding(text string) (Rounding, error) {
	words := strings.Fields(text)
	if len(words) == 1 && words[0] == string(Exact) {
		return Unrounded, nil
	}
	if len(words) != 2 {
		return Rounding{}, message.Invalid.Errorf("rounding %q is not a step and a rule; write it like \"0.01 half-up\", or \"exact\"", text)
	}
	step, err := bounded(words[0])
	if err != nil || step.Sign() <= 0 {
		return Rounding{}, message.Invalid.Errorf("rounding step %q is not a number above zero, such as 0.01 or 20", words[0])
	}
	if !Rule(words[1]).known() {
		return Rounding{}, message.Invalid.Errorf("rounding rule %q is not one of %s", words[1], strings.Join(RuleNames(), ", "))
	}
	return Rounding{Step: step, Rule: Rule(words[1])}, nil
}

// Permille returns a part of a whole in thousandths, rounded by a rule to the nearest. Positions in
// drawings are given so, independent of their size.
func Permille(part Amount, rule Rule) int {
	d, _ := To("1", rule).Apply(part.Mul(Int(1000, Plain))).Decimal()
	return int(d.IntPart())
}
