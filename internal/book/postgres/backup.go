package postgres

import (
	"context"

	"tenthpoint/internal/book"
	"tenthpoint/internal/book/sqlite"
	"tenthpoint/internal/book/transfer"
)

// Backup writes the book, as it is at one moment, into a new file: a book of one computer, that opens
// and verifies without any server. It is checked whole, and never written over another file.
func (b *Book) Backup(ctx context.Context, path string) error {
	return b.snapshot(ctx, func(r reader) error {
		return sqlite.Build(ctx, path, func(tx book.Tx) error { return transfer.Into(ctx, tx, viewOf(r)) })
	})
}
