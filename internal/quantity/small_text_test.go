package quantity

import (
	"testing"

	"github.com/shopspring/decimal"
	"pgregory.net/rapid"
)

// A figure in a machine word is written as package decimal writes it, at the limits of a word too.
func TestSmallFiguresAreWrittenAsDecimals(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := decimal.New(rapid.Int64().Draw(t, "digits"), rapid.Int32Range(-25, 25).Draw(t, "exponent"))
		if got, want := shortest(d), d.String(); got != want {
			t.Fatalf("shortest: %q, want %q", got, want)
		}
		places := rapid.Int32Range(0, 25).Draw(t, "places")
		if got, want := fixed(d, places), d.StringFixed(places); got != want {
			t.Fatalf("%d places: %q, want %q", places, got, want)
		}
	})
}

func TestSmallFiguresByHand(t *testing.T) {
	for _, c := range []struct {
		digits   int64
		exp      int32
		places   int32
		fixed    string
		shortest string
	}{
		{0, 0, 2, "0.00", "0"},
		{0, -3, 3, "0.000", "0"},
		{-5, -3, 4, "-0.0050", "-0.005"},
		{150, -1, 1, "15.0", "15"},
		{52300, 0, 0, "52300", "52300"},
		{12, 3, 1, "12000.0", "12000"},
		{-999999999999999999, -18, 18, "-0.999999999999999999", "-0.999999999999999999"},
	} {
		d := decimal.New(c.digits, c.exp)
		if got := fixed(d, c.places); got != c.fixed {
			t.Errorf("%d at 10^%d: %q, want %q", c.digits, c.exp, got, c.fixed)
		}
		if got := shortest(d); got != c.shortest {
			t.Errorf("%d at 10^%d: %q, want %q", c.digits, c.exp, got, c.shortest)
		}
	}
}
