package sqlite

import (
	"bytes"
	"context"
	"database/sql"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"sync"
	"time"

	"tenthpoint/internal/atomicfile"
	"tenthpoint/internal/book"
	"tenthpoint/internal/book/place"
	"tenthpoint/internal/book/sqlite/access"
	"tenthpoint/internal/message"
)

// applicationID marks a SQLite file as a Tenthpoint book: "10pt" in ASCII.
const applicationID = 0x31307074

// fileHead is the first bytes of every SQLite file.
const fileHead = "SQLite format 3"

// HoldsBook reports whether a file that starts like this is one of SQLite, as a book is.
func HoldsBook(start []byte) bool { return bytes.HasPrefix(start, []byte(fileHead)) }

// file is the path of the book, and how long to wait for other programs there.
type file struct {
	path string
	busy time.Duration

	pinned place.Pin // once it is open for writing
	mu     sync.Mutex
	failed error // of the disk, at the last write
}

// trouble returns why nothing that is entered now would be kept: the file is no longer in its
// place, or the disk refused the last write.
func (f *file) trouble() error {
	if err := f.pinned.Lost(); err != nil {
		return err
	}
	f.mu.Lock()
	defer f.mu.Unlock()
	return f.failed
}

// wrote notes how a write ended, and returns it as a sentence.
func (f *file) wrote(err error) error {
	said := f.sentence(err)
	f.mu.Lock()
	defer f.mu.Unlock()
	switch {
	case err == nil:
		f.failed = nil
	case isDiskFault(err):
		f.failed = said
	}
	return said
}

// find makes sure that there is a book at the path, creating one if that was asked for. A file that
// is something else is left unchanged.
func (f *file) find(o book.Options) error {
	if !o.ReadOnly && !o.AnyPlace {
		if err := place.Check(f.path); err != nil {
			return err
		}
	}
	info, err := os.Stat(f.path)
	switch {
	case errors.Is(err, fs.ErrNotExist) && !o.Create:
		return message.NotFound.Errorf("There is no book at %s. Check the path, or create a book there.", f.path)
	case errors.Is(err, fs.ErrNotExist):
		if err := f.claimPath(); err != nil {
			return err
		}
	case err != nil:
		return message.Storage.Errorf("The book %s cannot be looked at: %w", f.path, err)
	case info.IsDir():
		return message.Storage.Errorf("%s is a folder, not a book. Name a file in it.", f.path)
	}
	how := access.Probe
	if o.ReadOnly {
		how = access.Reading
	} else if o.Create {
		how = access.Create
	}
	db, err := access.Connect(f.path, how(f.busy), 1)
	if err != nil {
		return err
	}
	found := f.recognise(db, o)
	return errors.Join(found, db.Close())
}

// claimPath makes the file of a new book, and its folder, for the owner alone, or for the group that
// the folder was given to. SQLite gives the files beside it the same rights.
func (f *file) claimPath() error {
	folder := filepath.Dir(f.path)
	if err := atomicfile.MakeFolder(folder); err != nil {
		return message.Errorf("The folder for the book %s cannot be made: %w", f.path, err)
	}
	empty, err := os.OpenFile(f.path, os.O_RDWR|os.O_CREATE|os.O_EXCL, 0o600)
	if errors.Is(err, fs.ErrExist) { // another program makes it just now
		return nil
	}
	if err != nil {
		return message.Errorf("The book %s cannot be made: %w", f.path, err)
	}
	return errors.Join(empty.Chmod(atomicfile.Rights(folder)), empty.Close())
}

// recognise distinguishes a book from an empty file and from other data.
func (f *file) recognise(db *sql.DB, o book.Options) error {
	var mark, tables int64
	err := db.QueryRow(`SELECT application_id, (SELECT count(*) FROM sqlite_schema)
		FROM pragma_application_id`).Scan(&mark, &tables)
	switch {
	case err != nil:
		return err
	case mark == applicationID:
		return nil
	case tables > 0 || mark != 0:
		return message.Storage.Errorf("%s is a database, but not a Tenthpoint book. Nothing in it was touched; check the path.", f.path)
	case !o.Create || o.ReadOnly:
		return message.Storage.Errorf("The file %s is empty, not a book. Check the path, or create a book there.", f.path)
	}
	return begin(db)
}

// begin turns an empty file into a book without any history yet.
func begin(db *sql.DB) error {
	tx, err := db.BeginTx(context.Background(), nil)
	if err != nil {
		return err
	}
	_, err = tx.Exec(fmt.Sprintf("PRAGMA application_id = %d;", applicationID) + createHistory)
	if err != nil {
		return errors.Join(err, tx.Rollback())
	}
	return tx.Commit()
}
