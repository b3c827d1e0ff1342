package housetest

import (
	"testing"

	"tenthpoint/internal/message/errortest"
	"tenthpoint/internal/quantity"
)

// Must fails the test on an error.
func Must(t testing.TB, err error) {
	t.Helper()
	if err != nil {
		t.Fatal(err)
	}
}

// Refused wants an act refused by an error of a kind that gives figures and names.
func Refused(t *testing.T, err error, want errortest.Want) {
	t.Helper()
	if err == nil || !want.Met(err) {
		t.Errorf("got %v; want %v", err, want)
	}
}

// Amount parses an amount that a fact may leave out.
func Amount(text string) *quantity.Amount {
	var a quantity.Amount
	if err := a.UnmarshalText([]byte(text)); err != nil {
		panic(err)
	}
	return &a
}

// AmountOf parses an amount.
func AmountOf(t testing.TB, text string) quantity.Amount {
	t.Helper()
	var a quantity.Amount
	Must(t, a.UnmarshalText([]byte(text)))
	return a
}

// Plain is a number without a unit.
func Plain(n int64) quantity.Amount { return quantity.Int(n, quantity.Plain) }

// Lb is a weight in pounds.
func Lb(n int64) quantity.Amount { return quantity.Int(n, quantity.Lb) }
