package sqlite

import (
	"database/sql"
	"errors"
	"io/fs"
	"os"
	"path/filepath"
	"time"

	"tenthpoint/internal/book"
	"tenthpoint/internal/book/place"
	"tenthpoint/internal/book/sqlite/access"
	"tenthpoint/internal/book/steps"
	"tenthpoint/internal/message"
	"tenthpoint/migrations"
)

// A Book is an open book. It is safe for use by several goroutines. Its read methods are in the
// embedded types, each the reader of some tables.
type Book struct {
	factReader
	loadReader
	recordReader
	editionReader
	stockReader
	binReader
	draftReader

	file    *file
	write   *writer // nil when open for reading only
	read    *sql.DB
	drafts  *sql.DB // for drafts at the speed of typing; nil when open for reading only
	scratch string  // the folder to remove on Close
}

// readFrom has all of the book's readers read through one pool.
func (b *Book) readFrom(db *sql.DB) {
	r := reader{b.file, db}
	b.read = db
	b.factReader, b.loadReader, b.recordReader = factReader{r}, loadReader{r}, recordReader{r}
	b.editionReader, b.stockReader, b.binReader, b.draftReader = editionReader{r}, stockReader{r}, binReader{r}, draftReader{r}
}

// Open opens the book at path, migrating an older one first (a copy of the unmigrated file is left
// beside it).
func Open(path string, o book.Options) (*Book, error) {
	return open(path, o, migrations.Files, access.Write)
}

// OpenScratch makes an empty book in a temporary folder that Close removes.
// It behaves as any book but does not wait for the disk: for tests and
// try-outs.
func OpenScratch() (*Book, error) {
	folder, err := os.MkdirTemp("", "tenthpoint-scratch-")
	if err != nil {
		return nil, message.Errorf("There is no place for a scratch book: %w", err)
	}
	b, err := open(filepath.Join(folder, "scratch.book"), book.Options{Create: true}, migrations.Files, access.Scratch)
	if err != nil {
		return nil, errors.Join(err, os.RemoveAll(folder))
	}
	b.scratch = folder
	return b, nil
}

func open(path string, o book.Options, files fs.FS, how func(time.Duration) access.Purpose) (*Book, error) {
	path, err := filepath.Abs(path)
	if err != nil {
		return nil, message.Errorf("%q is no place for a book: %w", path, err)
	}
	b := &Book{file: &file{path: path, busy: o.Busy}}
	if o.Busy == 0 {
		b.file.busy = 5 * time.Second
	}
	if err := b.open(o, files, how); err != nil {
		return nil, errors.Join(b.file.sentence(err), b.Close())
	}
	return b, nil
}

func (b *Book) open(o book.Options, files fs.FS, how func(time.Duration) access.Purpose) (err error) {
	known, err := steps.Read(files)
	if err != nil {
		return err
	}
	if err := b.file.find(o); err != nil {
		return err
	}
	path, busy := b.file.path, b.file.busy
	read, err := access.Connect(path, access.Reading(busy), access.MostReaders())
	if err != nil {
		return err
	}
	b.readFrom(read)
	if o.ReadOnly {
		return b.file.refuseOld(read, known, neededFor(o))
	}
	if b.write, err = newWriter(path, how(busy), busy); err != nil {
		return err
	}
	if b.drafts, err = access.Connect(path, access.Draft(), 1); err != nil {
		return err
	}
	if err := b.file.migrate(b.write.conn, known); err != nil {
		return err
	}
	b.file.pinned, err = place.PinOf(path, "-wal")
	return err
}

// Trouble returns why nothing that is entered now would be kept: the file was moved, deleted or
// replaced, or the disk refused the last write. Nil where all is well.
func (b *Book) Trouble() error { return b.file.trouble() }

// Path returns the path of the book.
func (b *Book) Path() string { return b.file.path }

// Close closes the book; running reads end with an error. The writer is closed last, because the
// last connection removes SQLite's files beside the book.
func (b *Book) Close() error {
	var found error
	if b.read != nil {
		found = b.read.Close()
	}
	if b.drafts != nil {
		found = errors.Join(found, b.drafts.Close())
	}
	if b.write != nil {
		found = errors.Join(found, b.write.close())
	}
	if b.scratch != "" {
		found = errors.Join(found, os.RemoveAll(b.scratch))
	}
	return found
}
