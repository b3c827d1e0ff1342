package worksheet

import "tenthpoint/internal/quantity"

// Root is the square root of a, rounded once under r: a root seldom ends, so
// unlike other expressions it cannot be kept exact. See [quantity.Sqrt].
func Root(a Operand, r quantity.Rounding) Expr {
	return Expr{prefix: "√", binding: tight, args: []Operand{a}, value: quantity.Sqrt(a.amount(), r)}
}
