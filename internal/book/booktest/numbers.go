package booktest

import (
	"errors"
	"testing"

	"tenthpoint/internal/book"
)

// Numbers is the part of the suite about numbers: from 1, one after another, with
// no gap where a write was given up.
func Numbers[B Store](t *testing.T, e Engine[B]) {
	b := e.New(t)
	if last, err := b.LastNumber(ctx, "ticket"); last != 0 || err != nil {
		t.Fatalf("an empty book gave out %d, %v", last, err)
	}
	takes := func(n int, end error) (got []int64) {
		t.Helper()
		err := b.Write(ctx, func(tx book.Tx) error {
			for range n {
				number, err := tx.NextNumber("ticket")
				if err != nil {
					return err
				}
				got = append(got, number)
			}
			return end
		})
		if !errors.Is(err, end) {
			t.Fatal(err)
		}
		return got
	}
	same(t, "two at once", takes(2, nil), []int64{1, 2})
	same(t, "given up", takes(3, errors.New("torn")), []int64{3, 4, 5})
	same(t, "then", takes(2, nil), []int64{3, 4})
	must(t, b.Write(ctx, func(tx book.Tx) error {
		n, err := tx.NextNumber("load")
		if n != 1 {
			t.Errorf("another series begins with %d", n)
		}
		return err
	}))
	if last, err := b.LastNumber(ctx, "ticket"); last != 4 || err != nil {
		t.Errorf("the last ticket is %d, %v", last, err)
	}
}
