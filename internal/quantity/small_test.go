package quantity

import (
	"testing"

	"github.com/shopspring/decimal"
	"pgregory.net/rapid"
)

// In machine words and in big numbers a figure is rounded to the same digits,
// ties and signs and all.
func TestSmallAndBigRoundTheSame(t *testing.T) {
	small := 0
	rapid.Check(t, func(t *rapid.T) {
		a, r := drawFraction(t, "a", Lb), drawRounding(t)
		if rapid.Bool().Draw(t, "near a tie") {
			half := New(r.Step, Lb).Div(Int(2, Plain))
			a = r.applyBig(a).Add(half).Add(Of(rapid.SampledFrom([]string{"-0.000001", "0", "0.000001"}).Draw(t, "beside"), Lb))
		}
		got, ok := r.applySmall(a)
		if !ok {
			return
		}
		small++
		want := r.applyBig(a)
		if got.num.Exponent() != want.num.Exponent() || got.num.Cmp(want.num) != 0 || got.unit != want.unit || !got.isWhole() {
			t.Fatalf("%s by %s is %s in words and %s in big numbers", a, r, got, want)
		}
	})
	if small < 20 {
		t.Errorf("only %d figures were small", small)
	}
}

// The largest figures that fit, and the first that do not.
func TestSmallKnowsItsLimits(t *testing.T) {
	for digits, fits := range map[string]bool{
		"999999999999999999": true, "-999999999999999999": true, "1000000000000000000": false, "18446744073709551617": false,
	} {
		a := New(decimal.RequireFromString(digits), Lb)
		if got, ok := To("1", HalfUp).applySmall(a); ok != fits || ok && !got.Equal(a) {
			t.Errorf("%s fits into a word: %v, as %s", digits, ok, got)
		}
		if !To("1", HalfUp).Apply(a).Equal(a) {
			t.Errorf("%s is not itself when rounded to 1", digits)
		}
	}
	if _, ok := To("0.0001", Up).applySmall(Of("999999999999999.5", Lb)); ok {
		t.Error("a figure times ten thousand fits where it does not")
	}
	if got := To("0.0001", Up).Apply(Of("999999999999999.5", Lb)); got.String() != "999,999,999,999,999.5 lb" {
		t.Errorf("a figure beyond a word: %s", got)
	}
}
