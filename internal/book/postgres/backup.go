package postgres

import (
	"context"

	"tenthpoint/internal/book"
	"tenthpoint/internal/book/copying"
	"tenthpoint/internal/book/sqlite"
)

// Backup writes the book, as it is at one moment, into a new file: a book of one computer, that opens
// and verifies without any server. It is checked whole, and never written over another file.
func (b *Book) Backup(ctx context.Context, path string) error {
	return b.snapshot(ctx, func(r reader) error {
		return sqlite.Build(ctx, path, func(tx book.Tx) error { return copying.Into(ctx, tx, viewOf(r)) })
	})
}
