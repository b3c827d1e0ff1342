// Package copying writes a book into another one, fact by fact, whatever engines the two are kept
// in. The copy has the same chain to the last hash, the same numbers and editions, and read models
// worked out anew from the rows of the loads.
package copying

import (
	"context"
	"iter"
	"maps"
	"slices"

	"tenthpoint/internal/bin"
	"tenthpoint/internal/book"
	"tenthpoint/internal/journal"
	"tenthpoint/internal/message"
)

// From is the book that is copied, at one moment.
type From interface {
	Facts(context.Context, book.FactFilter) iter.Seq2[journal.Fact, error]
	Series(context.Context) ([]string, error)
	LastNumber(ctx context.Context, series string) (int64, error)
	EditionHashes(context.Context) (map[string][]string, error)
	Edition(ctx context.Context, sha string) (id, text string, err error)
	EachLoad(context.Context) iter.Seq2[book.LoadRow, error]
	AllRecords(context.Context) ([]book.Record, error)
}

// Into copies a book into an empty one, within a write of it.
func Into(ctx context.Context, tx book.Tx, from From) error {
	for _, part := range []func(context.Context, book.Tx, From) error{facts, numbers, editions, loads, records} {
		if err := part(ctx, tx, from); err != nil {
			return err
		}
	}
	return nil
}

// facts copies the chain. Each fact has to come out with the hash it went in with.
func facts(ctx context.Context, tx book.Tx, from From) error {
	for f, err := range from.Facts(ctx, book.FactFilter{}) {
		if err != nil {
			return err
		}
		copied, err := tx.Append(journal.Entry{At: f.At, Who: f.Who, Desk: f.Desk, Kind: f.Kind, Subject: f.Subject, Body: f.Body})
		if err != nil {
			return err
		}
		if copied.Seq != f.Seq || copied.Hash != f.Hash {
			return message.Storage.Errorf("fact %d (%.12s) cannot be copied as it is: it would become fact %d (%.12s). Verify the book", f.Seq, f.Hash, copied.Seq, copied.Hash)
		}
	}
	return nil
}

func numbers(ctx context.Context, tx book.Tx, from From) error {
	all, err := from.Series(ctx)
	if err != nil {
		return err
	}
	for _, series := range all {
		last, err := from.LastNumber(ctx, series)
		if err != nil {
			return err
		}
		for range last {
			if _, err := tx.NextNumber(series); err != nil {
				return err
			}
		}
	}
	return nil
}

func editions(ctx context.Context, tx book.Tx, from From) error {
	all, err := from.EditionHashes(ctx)
	if err != nil {
		return err
	}
	for _, sha := range slices.Sorted(slices.Values(slices.Concat(slices.Collect(maps.Values(all))...))) {
		id, text, err := from.Edition(ctx, sha)
		if err != nil {
			return err
		}
		if err := tx.KeepEdition(id, sha, text); err != nil {
			return err
		}
	}
	return nil
}

func loads(ctx context.Context, tx book.Tx, from From) error {
	for row, err := range from.EachLoad(ctx) {
		if err != nil {
			return err
		}
		if err := tx.PutLoad(row); err != nil {
			return err
		}
	}
	return nil
}

// records copies the master data, and with them the movements of grain.
func records(ctx context.Context, tx book.Tx, from From) error {
	all, err := from.AllRecords(ctx)
	if err != nil {
		return err
	}
	for _, r := range all {
		if err := tx.PutRecord(r); err != nil {
			return err
		}
		if err := moved(tx, r); err != nil {
			return err
		}
	}
	return nil
}

// moved brings the grain up to date with a record that moves some.
func moved(tx book.Tx, r book.Record) error {
	switch r.Kind {
	case bin.Movement{}.Kind():
		m, err := journal.ReadBody[bin.Movement](r.Body)
		if err != nil {
			return err
		}
		return tx.MoveGrain(m)
	}
	owned, err := book.ReadOwner(r)
	if err != nil || owned == nil {
		return err
	}
	return tx.MoveOwners(nil, owned)
}
