package scalehouse

import (
	"context"

	"tenthpoint/internal/audit"
	"tenthpoint/internal/book"
)

// Book is a book to work on: what answers and checks read, what acts write, and
// where it lies for those who copy it.
type Book interface {
	audit.Book

	// Write does an act in one transaction: all of it is in the book when Write
	// ends well, and nothing otherwise.
	Write(ctx context.Context, act func(book.Tx) error) error

	// SaveDraft keeps what was typed without waiting for the disk.
	SaveDraft(book.Draft) error
	Drafts(context.Context) ([]book.Draft, error)

	Path() string
	Backup(ctx context.Context, path string) error
}
