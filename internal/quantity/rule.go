package quantity

import "slices"

// Rule is the treatment of a figure between two steps of a [Rounding].
type Rule string

const (
	// HalfUp takes the nearer step, and on a tie the one away from zero:
	// 2.45 -> 2.5, 0.35 -> 0.4 (7 CFR 810.104). A charge of -0.385 becomes
	// -0.39, so a charge and its refund are the same size.
	HalfUp Rule = "half-up"
	// HalfEven takes the nearer step, and on a tie the even one: 0.385 -> 0.38.
	HalfEven Rule = "half-even"
	// Down truncates towards zero.
	Down Rule = "down"
	// Up goes to the next step away from zero.
	Up Rule = "up"
	// Exact rounds nothing.
	Exact Rule = "exact"
)

// deciders are the rules that round, in the order they are listed for people. Each decides whether
// a figure that lies between two steps goes to the one farther from zero: half is -1, 0 or +1 as
// the rest is less than, exactly or more than half a step, odd whether the whole steps are an odd
// number. A new rule is a line here; every rounding, in machine words, big numbers and square
// roots, uses this table, and [ParseRounding] its names.
var deciders = []struct {
	rule   Rule
	goesUp func(half int, odd bool) bool
}{
	{HalfUp, func(half int, _ bool) bool { return half >= 0 }},
	{HalfEven, func(half int, odd bool) bool { return half > 0 || half == 0 && odd }},
	{Down, func(int, bool) bool { return false }},
	{Up, func(int, bool) bool { return true }},
}

// goesUp decides for a figure between two steps. An unknown rule, which no file can contain, is a
// programming error.
func (r Rule) goesUp(half int, odd bool) bool {
	for i := range deciders {
		if deciders[i].rule == r {
			return deciders[i].goesUp(half, odd)
		}
	}
	panic("quantity: no rounding rule " + string(r))
}

func (r Rule) known() bool { return slices.Contains(RuleNames(), string(r)) }

// RuleNames are the rules that round, as an edition writes them.
func RuleNames() []string {
	names := make([]string, len(deciders))
	for i, d := range deciders {
		names[i] = string(d.rule)
	}
	return names
}
