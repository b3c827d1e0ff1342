package sqlite

import (
	"database/sql"
	"errors"
	"io/fs"
	"os"
	"path/filepath"
	"time"

	"tenthpoint/internal/message"
	"tenthpoint/migrations"
)

// Options say how a book is opened. The zero value opens an existing book for
// reading and writing.
type Options struct {
	Create   bool          // make the book, and its folder, if it is not there
	ReadOnly bool          // never write; a book too old to be read is refused
	Busy     time.Duration // how long to wait for another program's write; 0 means 5 s
}

// A Book is an open book. It is safe for use by several goroutines.
type Book struct {
	path    string
	busy    time.Duration
	write   *writer // nil when open for reading only
	read    *sql.DB
	jots    *sql.DB // for drafts at the speed of typing; nil when open for reading only
	scratch string  // the folder to remove on Close
}

// Open opens the book at path, bringing an older one up to date first (a copy
// of the file as it was is left beside it).
func Open(path string, o Options) (*Book, error) {
	return open(path, o, migrations.Files, writing)
}

// OpenScratch makes an empty book in a temporary folder that Close removes.
// It behaves as any book but does not wait for the disk: for tests and
// try-outs.
func OpenScratch() (*Book, error) {
	folder, err := os.MkdirTemp("", "tenthpoint-scratch-")
	if err != nil {
		return nil, message.Errorf("There is no place for a scratch book: %w", err)
	}
	b, err := open(filepath.Join(folder, "scratch.book"), Options{Create: true}, migrations.Files, fleeting)
	if err != nil {
		return nil, errors.Join(err, os.RemoveAll(folder))
	}
	b.scratch = folder
	return b, nil
}

func open(path string, o Options, steps fs.FS, how func(time.Duration) access) (*Book, error) {
	path, err := filepath.Abs(path)
	if err != nil {
		return nil, message.Errorf("%q is no place for a book: %w", path, err)
	}
	b := &Book{path: path, busy: o.Busy}
	if b.busy == 0 {
		b.busy = 5 * time.Second
	}
	if err := b.open(o, steps, how); err != nil {
		return nil, errors.Join(b.sentence(err), b.Close())
	}
	return b, nil
}

func (b *Book) open(o Options, steps fs.FS, how func(time.Duration) access) (err error) {
	known, err := readMigrations(steps)
	if err != nil {
		return err
	}
	if err := b.find(o); err != nil {
		return err
	}
	if b.read, err = connect(b.path, reading(b.busy), mostReaders()); err != nil {
		return err
	}
	if o.ReadOnly {
		return b.refuseOld(known)
	}
	if b.write, err = newWriter(b.path, how(b.busy), b.busy); err != nil {
		return err
	}
	if b.jots, err = connect(b.path, jotting(), 1); err != nil {
		return err
	}
	return b.migrate(known)
}

// Path is where the book lies.
func (b *Book) Path() string { return b.path }

// Close closes the book; running reads end with an error. The writer goes
// last, because the last one out tidies the files beside the book.
func (b *Book) Close() error {
	var found error
	if b.read != nil {
		found = b.read.Close()
	}
	if b.jots != nil {
		found = errors.Join(found, b.jots.Close())
	}
	if b.write != nil {
		found = errors.Join(found, b.write.close())
	}
	if b.scratch != "" {
		found = errors.Join(found, os.RemoveAll(b.scratch))
	}
	return found
}
