// Package engines opens a book with the storage engine that keeps it. It is the one place where
// programs name an engine: a further one is a package beside [sqlite] and a line in [Open].
package engines

import (
	"context"
	"io"
	"time"

	"tenthpoint/internal/book"
	"tenthpoint/internal/book/place"
	"tenthpoint/internal/book/postgres"
	"tenthpoint/internal/book/sqlite"
	"tenthpoint/internal/message"
	"tenthpoint/internal/scalehouse"
)

// Book is an open book, whatever keeps it: a desk works in it, and a check reads all of it.
type Book interface {
	scalehouse.Book
	io.Closer
}

// Open opens the book at a place, which is the path of a file or the address of a server.
func Open(at string, o book.Options) (Book, error) {
	if place.OnServer(at) {
		return opened(postgres.Open(context.Background(), at, o))
	}
	return opened(sqlite.Open(at, o))
}

// opened keeps the nil of an engine's type from becoming a book that is not nil.
func opened[B Book](b B, err error) (Book, error) {
	if err != nil {
		return nil, err
	}
	return b, nil
}

// HoldsBook reports whether a file that starts like this is a book of some engine.
func HoldsBook(start []byte) bool { return sqlite.HoldsBook(start) }

// Clock is the clock that a book goes by: the server's, where it is on one, so that all its desks have
// the same time; else the computer's own.
func Clock(ctx context.Context, b Book, own func() time.Time) (func() time.Time, error) {
	if own == nil {
		own = time.Now
	}
	served, is := b.(interface {
		Ahead(context.Context) (time.Duration, error)
	})
	if !is {
		return own, nil
	}
	ahead, err := served.Ahead(ctx)
	return func() time.Time { return own().Add(ahead) }, err
}

// LetIn lets a user of a server work in a book, or only read it. It is for who owns the book.
func LetIn(ctx context.Context, b Book, user string, appends bool) error {
	served, is := b.(interface {
		LetIn(ctx context.Context, user string, appends bool) error
	})
	if !is {
		return message.Refused.Errorf("the book %s is a file: who may open it is decided by the rights of the file. Only a book on a server lets users in", b.Path())
	}
	return served.LetIn(ctx, user, appends)
}

// Watch calls changed soon after another desk has written in a book on a server, until ctx ends; it
// does nothing for a book in a file, which is one computer's.
func Watch(ctx context.Context, b scalehouse.Book, changed func()) {
	if served, is := b.(interface {
		Watch(ctx context.Context, changed func())
	}); is {
		served.Watch(ctx, changed)
	}
}
