package simulation

import (
	"context"

	"tenthpoint/internal/book"
	"tenthpoint/internal/book/sqlite"
	"tenthpoint/internal/journal"
)

// watched is a book whose acknowledged facts are noted, and in which a bug may be planted.
type watched struct {
	*sqlite.Book
	world *world
	desk  string
}

// Write notes what the book acknowledges.
func (b watched) Write(ctx context.Context, act func(book.Tx) error) error {
	var facts []journal.Fact
	err := b.Book.Write(ctx, func(tx book.Tx) error {
		facts = nil
		tx = &noting{tx, &facts}
		if b.world.bug.Tx != nil {
			tx = b.world.bug.Tx(tx)
		}
		return act(tx)
	})
	if err != nil {
		return err
	}
	if b.world.bug.Wrote != nil && !b.world.disk.Struck() {
		b.world.disk.Spare(func() { facts = b.world.bug.Wrote(b.Path(), b.desk, facts) })
	}
	b.world.acknowledged = append(b.world.acknowledged, facts...)
	return nil
}

// noting notes the facts of one write.
type noting struct {
	book.Tx
	facts *[]journal.Fact
}

func (tx *noting) Append(d journal.Entry) (journal.Fact, error) {
	f, err := tx.Tx.Append(d)
	if err == nil {
		*tx.facts = append(*tx.facts, f)
	}
	return f, err
}
