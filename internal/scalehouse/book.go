package scalehouse

import (
	"context"

	"tenthpoint/internal/audit"
	"tenthpoint/internal/book"
	"tenthpoint/internal/journal"
)

// Book is the book as this package needs it: reads for queries and checks, writes, and its path for
// copies.
type Book interface {
	audit.Book

	// Write runs act in one transaction: all of it is in the book when Write succeeds, and nothing
	// otherwise.
	Write(ctx context.Context, act func(book.Tx) error) error

	// SaveDraft saves typed text without waiting for the disk.
	SaveDraft(book.Draft) error
	Drafts(context.Context) ([]book.Draft, error)

	Path() string
	// Backup copies the book as it is open, also where its file is no longer in its place. The head
	// of the copy is noted beside it in the words that note finds for it.
	Backup(ctx context.Context, path string, note func(journal.Head) string) error
	// Trouble returns why nothing that is entered now would be kept; nil where all is well.
	Trouble() error
}
