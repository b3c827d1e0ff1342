package meter

import (
	"errors"
	"math/big"
	"os"
	"testing"

	"github.com/google/go-cmp/cmp"

	"tenthpoint/internal/message/errortest"
	"tenthpoint/internal/quantity"
)

func pct(text string) quantity.Amount  { return quantity.Of(text, quantity.Percent) }
func pt(text string) quantity.Amount   { return quantity.Of(text, quantity.Point) }
func degC(text string) quantity.Amount { return quantity.Of(text, quantity.Celsius) }
func degF(text string) quantity.Amount { return quantity.Of(text, quantity.Fahrenheit) }

func hundredths(n int64, unit quantity.Unit) quantity.Amount {
	return quantity.Int(n, unit).Div(quantity.Int(100, quantity.Plain))
}

// expectErrors compares a list of errors with what each must be, in order.
func expectErrors(t *testing.T, name string, got []error, want ...errortest.Want) {
	t.Helper()
	if len(got) != len(want) {
		t.Errorf("%s: %d errors, want %d: %v", name, len(got), len(want), errors.Join(got...))
		return
	}
	for i, err := range got {
		if !want[i].Met(err) {
			t.Errorf("%s: %v; want %v", name, err, want[i])
		}
	}
}

func ratio(text string) *big.Rat {
	r, ok := new(big.Rat).SetString(text)
	if !ok {
		panic(text)
	}
	return r
}

func TestWorkingOfABias(t *testing.T) {
	_, s := biasOf(t, 0, "0.3", "0.5", "0.1", "0.4", "0.2")
	want, err := os.ReadFile("../../../testdata/bench/bias.txt")
	if err != nil {
		t.Fatal(err)
	}
	if diff := cmp.Diff(string(want), s.Text(78)); diff != "" {
		t.Errorf("bias.txt differs (-kept +now):\n%s", diff)
	}
}
