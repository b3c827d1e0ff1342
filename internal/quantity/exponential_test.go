package quantity

import (
	"testing"

	"pgregory.net/rapid"
)

// Printed in tables of constants: e, ln 2, ln 10 and e^-1.
func TestExponentialConstants(t *testing.T) {
	to20 := To("0.00000000000000000001", HalfUp)
	for _, c := range []struct {
		got  Amount
		want string
	}{
		{Exp(Int(1, Plain), to20), "2.71828182845904523536"},
		{Exp(Int(-1, Plain), to20), "0.36787944117144232160"},
		{Exp(Int(0, Plain), to20), "1"},
		{Exp(Int(10, Plain), to20), "22026.46579480671651695790"},
		{Ln(Int(2, Plain), to20), "0.69314718055994530942"},
		{Ln(Int(10, Plain), to20), "2.30258509299404568402"},
		{Ln(Of("0.1", Plain), to20), "-2.30258509299404568402"},
		{Ln(Int(1, Plain), to20), "0"},
	} {
		if !c.got.Equal(Of(c.want, Plain)) {
			t.Errorf("%s, want %s", c.got, c.want)
		}
	}
}

func TestExpAndLnInvertEachOther(t *testing.T) {
	to20 := To("0.00000000000000000001", HalfUp)
	near := Of("0.000000000000001", Plain)
	rapid.Check(t, func(t *rapid.T) {
		x := Int(rapid.Int64Range(1_000, 1_000_000_000).Draw(t, "x"), Plain).Div(Int(rapid.Int64Range(1, 1_000_000).Draw(t, "parts"), Plain))
		back := Exp(Ln(x, to20), to20)
		if off := back.Sub(x).Div(x); off.More(near) || off.Less(near.Neg()) {
			t.Fatalf("%s came back as %s", x, back)
		}
		y := Int(rapid.Int64Range(-600, 600).Draw(t, "y"), Plain).Div(Int(100, Plain))
		if again := Ln(Exp(y, to20), to20); again.Sub(y).More(near) || again.Sub(y).Less(near.Neg()) {
			t.Fatalf("%s came back as %s", y, again)
		}
	})
}

func TestExponentialsRefuseWhatTheyCannotWork(t *testing.T) {
	for name, f := range map[string]func(){
		"a unit":       func() { Exp(Int(1, Percent), To("0.1", HalfUp)) },
		"out of reach": func() { Exp(Int(61, Plain), To("0.1", HalfUp)) },
		"no rounding":  func() { Exp(Int(1, Plain), Unrounded) },
		"zero":         func() { Ln(Int(0, Plain), To("0.1", HalfUp)) },
		"below zero":   func() { Ln(Int(-1, Plain), To("0.1", HalfUp)) },
	} {
		t.Run(name, func(t *testing.T) {
			defer func() {
				if recover() == nil {
					t.Error("it was worked out all the same")
				}
			}()
			f()
		})
	}
}

func TestReducedIsTheSameAmount(t *testing.T) {
	a := Of("1.50", Lb).Div(Of("4.5", Plain)).Mul(Int(6, Plain))
	if r := a.Reduced(); !r.Equal(a) || r.String() != "2 lb" {
		t.Errorf("%s is %s in lowest terms", a, r)
	}
	if r := Of("-0.25", Percent).Reduced(); !r.Equal(Of("-0.25", Percent)) {
		t.Errorf("%s", r)
	}
}
