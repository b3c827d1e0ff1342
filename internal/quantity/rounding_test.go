package quantity

import (
	"math/big"
	"testing"

	"github.com/shopspring/decimal"
	"pgregory.net/rapid"
)

// TestRoundingRules: 2.45 and 0.35 are the examples of 7 CFR 810.104; 0.385 is
// the tie on which half-up and half-even part; 0.4449 must not become 0.45 by
// way of 0.445.
func TestRoundingRules(t *testing.T) {
	for _, c := range []struct {
		figure, step string
		rule         Rule
		want         string
	}{
		{"2.45", "0.1", HalfUp, "2.5"},
		{"0.35", "0.1", HalfUp, "0.4"},
		{"0.385", "0.01", HalfUp, "0.39"},
		{"0.385", "0.01", HalfEven, "0.38"},
		{"0.375", "0.01", HalfEven, "0.38"},
		{"0.3850000000000000001", "0.01", HalfEven, "0.39"},
		{"0.4449", "0.01", HalfUp, "0.44"},
		{"0.4449", "0.1", HalfUp, "0.4"},
		{"0.445", "0.01", HalfUp, "0.45"},
		{"-0.385", "0.01", HalfUp, "-0.39"},
		{"-0.385", "0.01", HalfEven, "-0.38"},
		{"-0.389", "0.01", Down, "-0.38"},
		{"-0.381", "0.01", Up, "-0.39"},
		{"0.389", "0.01", Down, "0.38"},
		{"0.381", "0.01", Up, "0.39"},
		{"0.38", "0.01", Up, "0.38"},
		{"-0.004", "0.01", HalfUp, "0"},
		{"0", "0.01", Up, "0"},
		{"52310", "20", HalfUp, "52320"},
		{"52310", "20", HalfEven, "52320"}, // 2615.5 steps, to 2616
		{"52290", "20", HalfEven, "52280"}, // 2614.5 steps, to 2614
		{"52319.999", "20", Down, "52300"},
		{"52300.001", "20", Up, "52320"},
		{"0.99", "0.5", Down, "0.5"},
		{"14.75", "0.5", HalfUp, "15"},
		{"1.2345", "0.01", Exact, "1.2345"},
		{"1.2345", "0.01", "", "1.2345"},
	} {
		r := Rounding{Step: decimal.RequireFromString(c.step), Rule: c.rule}
		got := r.Apply(Of(c.figure, Percent))
		if !got.Equal(Of(c.want, Percent)) {
			t.Errorf("%s to %s %s is %s, want %s", c.figure, c.step, c.rule, got, c.want)
		}
	}
}

// TestFractionsRoundFromTheirExactValue: 100/84.5 is 1.1834319526627..., and a
// third of a cent under a half never becomes a cent.
func TestFractionsRoundFromTheirExactValue(t *testing.T) {
	factor := Int(100, Percent).Div(Of("84.5", Percent))
	for step, want := range map[string]string{"0.01": "1.18", "0.00001": "1.18343", "0.0000000001": "1.1834319527"} {
		if got := To(step, HalfUp).Apply(factor); !got.Equal(Of(want, Plain)) {
			t.Errorf("100/84.5 to %s: %s, want %s", step, got, want)
		}
	}
	almost := Int(1, Dollar).Div(Int(3, Plain)).Mul(Of("1.335", Plain)) // 0.445
	if got := To("0.01", HalfUp).Apply(almost); !got.Equal(Of("0.45", Dollar)) {
		t.Errorf("1.335/3 is a tie and became %s", got)
	}
	under := almost.Sub(Int(1, Dollar).Div(Int(1<<50, Plain)))
	if got := To("0.01", HalfUp).Apply(under); !got.Equal(Of("0.44", Dollar)) {
		t.Errorf("just under the tie became %s", got)
	}
}

// roundOracle rounds by big.Rat, written apart from the package: the nearest
// whole number of steps as the rule says, from |x|, sign put back.
func roundOracle(x, step *big.Rat, rule Rule) *big.Rat {
	steps := new(big.Rat).Quo(new(big.Rat).Abs(x), step)
	n, rest := new(big.Int).QuoRem(steps.Num(), steps.Denom(), new(big.Int))
	twice := new(big.Int).Lsh(rest, 1).Cmp(steps.Denom())
	up := map[Rule]bool{
		Down:     false,
		Up:       rest.Sign() > 0,
		HalfUp:   twice >= 0,
		HalfEven: twice > 0 || twice == 0 && n.Bit(0) == 1,
	}[rule]
	if up {
		n.Add(n, big.NewInt(1))
	}
	out := new(big.Rat).Mul(new(big.Rat).SetInt(n), step)
	if x.Sign() < 0 {
		out.Neg(out)
	}
	return out
}

func TestRoundingAgreesWithRationalNumbers(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r := drawRounding(t)
		a := drawFraction(t, "figure", Lb)
		if rapid.Bool().Draw(t, "tie") { // put it on a half step
			halves := rapid.Int64Range(-9999, 9999).Draw(t, "halves")
			a = New(r.Step, Lb).Mul(Int(halves, Plain)).Div(Int(2, Plain))
		}
		got, want := r.Apply(a).Rat(), roundOracle(a.Rat(), r.Step.Rat(), r.Rule)
		if got.Cmp(want) != 0 {
			t.Fatalf("%s to %s is %s, want %s", a, r, got, want)
		}
	})
}

// TestRoundingTwiceIsRoundingOnce, for one and the same rounding.
func TestRoundingTwiceIsRoundingOnce(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r, a := drawRounding(t), drawFraction(t, "figure", Dollar)
		once := r.Apply(a)
		if twice := r.Apply(once); !twice.Equal(once) {
			t.Fatalf("%s to %s: %s, then %s", a, r, once, twice)
		}
		if refund := r.Apply(a.Neg()); !refund.Equal(once.Neg()) {
			t.Fatalf("a charge of %s and its refund %s differ", once, refund)
		}
	})
}

func TestParseRounding(t *testing.T) {
	for text, want := range map[string]string{
		"0.01 half-up":  "0.01 half-up",
		"  20   down ":  "20 down",
		"0.5 half-even": "0.5 half-even",
		"1 up":          "1 up",
		"exact":         "exact",
		"":              `rounding "" is not a step and a rule; write it like "0.01 half-up", or "exact"`,
		"0.01":          `rounding "0.01" is not a step and a rule; write it like "0.01 half-up", or "exact"`,
		"0.01 half up":  `rounding "0.01 half up" is not a step and a rule; write it like "0.01 half-up", or "exact"`,
		"0 half-up":     `rounding step "0" is not a number above zero, such as 0.01 or 20`,
		"-0.01 half-up": `rounding step "-0.01" is not a number above zero, such as 0.01 or 20`,
		"1e-2 half-up":  `rounding step "1e-2" is not a number above zero, such as 0.01 or 20`,
		"0.01 nearest":  `rounding rule "nearest" is not one of half-up, half-even, down, up`,
		"0.01 exact":    `rounding rule "exact" is not one of half-up, half-even, down, up`,
	} {
		got, err := ParseRounding(text)
		said := got.String()
		if err != nil {
			said = err.Error()
		}
		if said != want {
			t.Errorf("%q: %s, want %s", text, said, want)
		}
	}
}

func TestRoundingReadsBackAsWritten(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r := drawRounding(t)
		back, err := ParseRounding(r.String())
		if err != nil || back.Rule != r.Rule || !back.Step.Equal(r.Step) {
			t.Fatalf("%s came back as %s, %v", r, back, err)
		}
	})
}

func TestPlaces(t *testing.T) {
	for text, want := range map[string]int32{"0.01 half-up": 2, "0.5 down": 1, "20 down": 0, "1 up": 0, "exact": 0} {
		r, err := ParseRounding(text)
		if err != nil || r.Places() != want {
			t.Errorf("%s is printed with %d decimals, want %d", text, r.Places(), want)
		}
	}
}

func TestCoarser(t *testing.T) {
	tenth, five, exact := To("0.1", HalfUp), To("5", Up), Unrounded
	for _, c := range []struct {
		a, b Rounding
		want bool
	}{{five, tenth, true}, {tenth, five, false}, {tenth, tenth, false}, {tenth, exact, true}, {exact, exact, false}, {exact, five, false}} {
		if got := c.a.CoarserThan(c.b); got != c.want {
			t.Errorf("%s coarser than %s: %v", c.a, c.b, got)
		}
	}
}
