package booktest

import (
	"testing"

	"tenthpoint/internal/book"
	"tenthpoint/internal/journal"
)

// Old is the part of the suite for a book made by an earlier version: its chain verifies to the
// last hash, its position follows from its loads, and it can be written.
func Old[B PositionStore](t *testing.T, b B) {
	before := facts(t, b)
	if len(before) == 0 {
		t.Fatal("the book is empty")
	}
	sound(t, b)
	last, err := b.LastNumber(ctx, "ticket")
	must(t, err)
	must(t, b.Write(ctx, func(tx book.Tx) error {
		n, err := tx.NextNumber("ticket")
		if n != last+1 {
			t.Errorf("after ticket %d comes %d", last, n)
		}
		if err != nil {
			return err
		}
		_, err = tx.Append(entry(0))
		return err
	}))
	after := facts(t, b)
	if len(after) != len(before)+1 || journal.Link(&before[len(before)-1], entry(0)).Hash != after[len(before)].Hash {
		t.Errorf("%d facts went on to %d", len(before), len(after))
	}
}
