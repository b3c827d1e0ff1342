package postgres

import (
	"context"

	"tenthpoint/internal/book"
	"tenthpoint/internal/book/copying"
	"tenthpoint/internal/book/sqlite"
	"tenthpoint/internal/journal"
)

// Backup writes the book, as it is at one moment, into a new file: a book of one computer, that opens
// and verifies without any server. It is checked whole, and never written over another file. Its head
// is noted beside it in the words that note finds for it.
func (b *Book) Backup(ctx context.Context, path string, note func(journal.Head) string) error {
	return b.snapshot(ctx, func(r reader) error {
		return sqlite.Build(ctx, path, note, func(tx book.Tx) error { return copying.Into(ctx, tx, viewOf(r)) })
	})
}
