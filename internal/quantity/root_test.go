package quantity

import (
	"math/big"
	"testing"

	"pgregory.net/rapid"
)

func TestSqrt(t *testing.T) {
	points2 := Point.Times(Point)
	for _, c := range []struct {
		a     Amount
		r     Rounding
		want  string
		where string
	}{
		{Int(0, points2), To("0.01", HalfUp), "0.00 pt", "zero"},
		{Int(4, points2), To("0.0001", HalfUp), "2.0000 pt", "a square"},
		// 1.41421356237309504880168872420969807856967…, OEIS A002193
		{Int(2, points2), To("0.00000000000000000001", HalfUp), "1.41421356237309504880 pt", "root of two"},
		{Int(2, points2), To("0.0001", Up), "1.4143 pt", "up"},
		{Int(2, points2), To("0.0001", Down), "1.4142 pt", "down"},
		{Of("0.0625", points2), To("0.1", HalfUp), "0.3 pt", "0.25, a tie, away from zero"},
		{Of("0.0625", points2), To("0.1", HalfEven), "0.2 pt", "0.25, a tie, to even"},
		{Of("0.0624999999999999", points2), To("0.1", HalfUp), "0.2 pt", "just under the tie"},
		{Of("0.0625000000000001", points2), To("0.1", HalfEven), "0.3 pt", "just over the tie"},
		{Int(1, Point).Mul(Int(1, Point)).Div(Int(3, Plain)), To("0.000001", HalfUp), "0.577350 pt", "a third"},
		{Int(9, Plain), To("0.5", HalfUp), "3.0", "no unit"},
	} {
		got := Sqrt(c.a, c.r)
		if got.FixedString(c.r.Places()) != c.want {
			t.Errorf("%s: root of %s to %s is %s, want %s", c.where, c.a, c.r, got, c.want)
		}
	}
}

func TestSqrtRefusesNonsense(t *testing.T) {
	for name, call := range map[string]func(){
		"below zero":  func() { Sqrt(Int(-1, Plain), To("1", Down)) },
		"odd unit":    func() { Sqrt(Int(1, Point), To("1", Down)) },
		"no rounding": func() { Sqrt(Int(1, Plain), Unrounded) },
	} {
		func() {
			defer func() {
				if recover() == nil {
					t.Errorf("%s: no panic", name)
				}
			}()
			call()
		}()
	}
}

// A root rounded down and the next step above it hold the figure between
// their squares; the half-up root is one of the two, and the nearer.
func TestSqrtHoldsTheFigureBetweenSquares(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		num := rapid.Int64Range(0, 1<<40).Draw(t, "num")
		den := rapid.Int64Range(1, 1<<20).Draw(t, "den")
		a := Int(num, Plain).Div(Int(den, Plain))
		step := rapid.SampledFrom([]string{"1", "0.5", "0.01", "0.000001"}).Draw(t, "step")
		low := Sqrt(a, To(step, Down)).Rat()
		s, _ := new(big.Rat).SetString(step)
		high := new(big.Rat).Add(low, s)
		x := a.Rat()
		if new(big.Rat).Mul(low, low).Cmp(x) > 0 || new(big.Rat).Mul(high, high).Cmp(x) <= 0 {
			t.Fatalf("root of %s down to %s is %s", a, step, low)
		}
		middle := new(big.Rat).Add(low, new(big.Rat).Quo(s, big.NewRat(2, 1)))
		want := low
		if new(big.Rat).Mul(middle, middle).Cmp(x) <= 0 {
			want = high
		}
		if got := Sqrt(a, To(step, HalfUp)).Rat(); got.Cmp(want) != 0 {
			t.Fatalf("root of %s half-up to %s is %s, want %s", a, step, got, want)
		}
	})
}
