package dryness

import (
	"errors"
	"testing"

	"tenthpoint/internal/message/errortest"
	"tenthpoint/internal/quantity"
)

func pct(text string) quantity.Amount { return quantity.Of(text, quantity.Percent) }
func pt(text string) quantity.Amount  { return quantity.Of(text, quantity.Point) }

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
