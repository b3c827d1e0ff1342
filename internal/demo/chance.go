package demo

import (
	"fmt"
	"math/rand/v2"
	"strings"

	"tenthpoint/internal/quantity"
)

// chance draws the season. Whole numbers only: an amount is never a binary
// fraction, also not an invented one.
type chance struct{ draw *rand.Rand }

// The second half of the number a draw starts from, so that no draw disturbs
// another.
const (
	ofFleet uint64 = iota + 1
	ofPrices
	ofSeason
	ofYard
	ofMeters
	ofStarts
)

func newChance(seed, of uint64) *chance { return &chance{rand.New(rand.NewPCG(seed, of))} }

// between is a whole number from low to high, both included.
func (c *chance) between(low, high int64) int64 { return low + c.draw.Int64N(high-low+1) }

// about returns a random whole number from low to high, near the middle more often than not: the
// mean of three draws.
func (c *chance) about(low, high int64) int64 {
	return (c.between(low, high) + c.between(low, high) + c.between(low, high)) / 3
}

// in1000 is true in so many cases of a thousand.
func (c *chance) in1000(cases int64) bool { return c.draw.Int64N(1000) < cases }

func pick[T any](c *chance, from []T) T { return from[c.draw.IntN(len(from))] }

// figure is a figure of so many hundredths, written as an instrument shows it:
// 1830 is 18.3, 1835 is 18.35.
func figure(hundredths int64, unit quantity.Unit) quantity.Amount {
	text := fmt.Sprintf("%d.%02d", hundredths/100, hundredths%100)
	return quantity.Of(strings.TrimSuffix(text, "0"), unit)
}
