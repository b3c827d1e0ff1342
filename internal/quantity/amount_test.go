package quantity

import (
	"math/big"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

// panics runs the call and returns what it panicked with.
func panics(call func()) (message string) {
	defer func() {
		if r := recover(); r != nil {
			message = r.(string)
		}
	}()
	call()
	return ""
}

func TestUnlikeUnitsDoNotMix(t *testing.T) {
	pounds, percent := Int(5, Lb), Int(5, Percent)
	for act, call := range map[string]func(){
		"add":      func() { pounds.Add(percent) },
		"subtract": func() { pounds.Sub(percent) },
		"compare":  func() { pounds.Cmp(percent) },
	} {
		want := "quantity: cannot " + act + ` 5 lb and 5 %: unlike units "lb" and "%"`
		if got := panics(call); got != want {
			t.Errorf("%s: %q, want %q", act, got, want)
		}
	}
	for name, call := range map[string]func(){
		"less":       func() { pounds.Less(percent) },
		"more":       func() { pounds.More(percent) },
		"min":        func() { Min(pounds, percent) },
		"max":        func() { Max(pounds, percent) },
		"zero mixes": func() { Zero(Lb).Add(Zero(Kg)) },
	} {
		if panics(call) == "" {
			t.Errorf("%s mixed pounds and percents", name)
		}
	}
	if pounds.Equal(percent) {
		t.Error("5 lb equals 5 %")
	}
}

func TestDivisionByZeroPanics(t *testing.T) {
	if got := panics(func() { Int(5, Lb).Div(Zero(Bushel)) }); got != "quantity: 5 lb divided by zero (0 bu)" {
		t.Error(got)
	}
	if got := panics(func() { Of("five", Lb) }); !strings.HasPrefix(got, `quantity.Of("five")`) {
		t.Error(got)
	}
}

// TestWaterShrinkIsExact: 52,300 lb from 25 % to 15.5 % loses 9.5/84.5 of its
// weight, and weight and loss add up to the last place.
func TestWaterShrinkIsExact(t *testing.T) {
	net, from, to := Int(52300, Lb), Int(25, Percent), Of("15.5", Percent)
	loss := net.Mul(from.Sub(to)).Div(Int(100, Percent).Sub(to))
	if want := big.NewRat(52300*95, 845); loss.Rat().Cmp(want) != 0 || loss.Unit() != Lb {
		t.Errorf("%s, want %s lb", loss, want)
	}
	if left := net.Sub(loss); !left.Add(loss).Equal(net) {
		t.Error("weight and loss are not the whole")
	}
	if !net.Sub(loss).Mul(Of("84.5", Plain)).Equal(net.Mul(Int(75, Plain))) {
		t.Error("the dry matter changed")
	}
}

// TestArithmeticAgreesWithRationalNumbers compares the four operations and the comparison with
// big.Rat.
func TestArithmeticAgreesWithRationalNumbers(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a, b := drawFraction(t, "a", Lb), drawFraction(t, "b", Lb)
		x, y := a.Rat(), b.Rat()
		same := func(what string, got Amount, want *big.Rat, unit Unit) {
			if got.Rat().Cmp(want) != 0 || got.Unit() != unit {
				t.Fatalf("%s of %s and %s is %s, want %s %s", what, a, b, got, want, unit)
			}
		}
		same("sum", a.Add(b), new(big.Rat).Add(x, y), Lb)
		same("difference", a.Sub(b), new(big.Rat).Sub(x, y), Lb)
		same("product", a.Mul(b), new(big.Rat).Mul(x, y), Lb.Times(Lb))
		same("negative", a.Neg(), new(big.Rat).Neg(x), Lb)
		if !b.IsZero() {
			same("quotient", a.Div(b), new(big.Rat).Quo(x, y), Plain)
		}
		if a.Cmp(b) != x.Cmp(y) || a.Equal(b) != (x.Cmp(y) == 0) || a.Less(b) != (x.Cmp(y) < 0) || a.More(b) != (x.Cmp(y) > 0) {
			t.Fatalf("%s and %s compare as %d", a, b, a.Cmp(b))
		}
		if a.Sign() != x.Sign() || a.IsZero() != (x.Sign() == 0) {
			t.Fatalf("the sign of %s is %d", a, a.Sign())
		}
		if Min(a, b).More(Max(a, b)) || !Min(a, b).Add(Max(a, b)).Equal(a.Add(b)) {
			t.Fatalf("the lower of %s and %s is %s, the higher %s", a, b, Min(a, b), Max(a, b))
		}
	})
}

func TestZeroAmountIsPlainZero(t *testing.T) {
	var a Amount
	if !a.IsZero() || a.Unit() != Plain || a.String() != "0" || !a.Add(Int(1, Plain)).Equal(Int(1, Plain)) {
		t.Errorf("%#v", a)
	}
	if d, whole := a.Decimal(); !whole || !d.IsZero() {
		t.Error(d, whole)
	}
	if _, whole := Int(1, Lb).Div(Int(3, Plain)).Decimal(); whole {
		t.Error("a third is no decimal")
	}
}

// Dividing by 1, however it is written, leaves a decimal, not a fraction.
func TestDividingByOneLeavesADecimal(t *testing.T) {
	for text, whole := range map[string]bool{
		"1": true, "1.00": true, "-1.0": true, "10": false, "0.1": false, "1.01": false, "18446744073709551617": false,
	} {
		if _, ok := Of("15.5", Percent).Div(Of(text, Plain)).Decimal(); ok != whole {
			t.Errorf("15.5 divided by %s is a decimal: %v", text, ok)
		}
	}
}
