package sqlite

import (
	"context"
	"database/sql"
	"errors"
	"tenthpoint/internal/book"
)

// Whoever checks a book needs its lists whole, to hold them against the facts.

// LoadIDs are the ids of all loads in the lists, in order.
func (b *Book) LoadIDs(ctx context.Context) ([]string, error) {
	return b.texts(ctx, "SELECT id FROM loads ORDER BY id")
}

// Owners are the growers who share in a load, in their order.
func (b *Book) Owners(ctx context.Context, load string) ([]string, error) {
	return b.texts(ctx, "SELECT grower FROM owners WHERE load = ? ORDER BY place", load)
}

// Ownerships are the ids of all loads that have owners in the lists.
func (b *Book) Ownerships(ctx context.Context) ([]string, error) {
	return b.texts(ctx, "SELECT DISTINCT load FROM owners ORDER BY load")
}

// AllRecords are the records of every kind, by kind and id.
func (b *Book) AllRecords(ctx context.Context) ([]book.Record, error) {
	return b.standing(ctx, "SELECT kind, id, seq, body FROM standing ORDER BY kind, id")
}

// LastNumber is the last number a series has given out; 0 for a series that
// has not begun.
func (b *Book) LastNumber(ctx context.Context, series string) (int64, error) {
	var last int64
	err := b.read.QueryRowContext(ctx, "SELECT last FROM series WHERE name = ?", series).Scan(&last)
	if errors.Is(err, sql.ErrNoRows) {
		return 0, nil
	}
	return last, b.sentence(err)
}
