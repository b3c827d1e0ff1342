// Package engines opens a book with the storage engine that keeps it. It is the one place where
// programs name an engine: a further one is a package beside [sqlite] and a line in [Open].
package engines

import (
	"io"

	"tenthpoint/internal/book"
	"tenthpoint/internal/book/sqlite"
	"tenthpoint/internal/scalehouse"
)

// Book is an open book, whatever keeps it: a desk works in it, and a check reads all of it.
type Book interface {
	scalehouse.Book
	io.Closer
}

// Open opens the book at a place, which is the path of a file.
func Open(at string, o book.Options) (Book, error) {
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
