package dryness

import (
	"errors"
	"strings"
	"testing"

	"tenthpoint/internal/quantity"
)

func pct(text string) quantity.Amount { return quantity.Of(text, quantity.Percent) }
func pt(text string) quantity.Amount  { return quantity.Of(text, quantity.Point) }

// expectErrors compares a list of errors with words each must have, in order.
func expectErrors(t *testing.T, name string, got []error, want ...string) {
	t.Helper()
	if len(got) != len(want) {
		t.Errorf("%s: %d errors, want %d: %v", name, len(got), len(want), errors.Join(got...))
		return
	}
	for i, err := range got {
		if !strings.Contains(err.Error(), want[i]) {
			t.Errorf("%s: %q is not in %q", name, want[i], err)
		}
	}
}
