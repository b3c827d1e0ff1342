package sqlite

import (
	"context"
	"errors"
	"tenthpoint/internal/book"
	"tenthpoint/internal/message"

	"modernc.org/sqlite"
	sqlite3 "modernc.org/sqlite/lib"
)

// sentence translates an error of the file system or SQLite into one that says what happened to the
// book and what to do. Other errors pass unchanged.
func (f *file) sentence(err error) error {
	var sqliteErr *sqlite.Error
	if err == nil || errors.Is(err, context.Canceled) || errors.Is(err, book.ErrBusy) || !errors.As(err, &sqliteErr) {
		return err
	}
	if isBusy(err) {
		return message.Storage.Errorf("Another program is writing in the book %s and did not finish within %s. "+
			"Nothing was entered. Wait for it or close it, then try again: %w", f.path, f.busy, book.ErrBusy)
	}
	code := sqliteErr.Code() & 0xff
	if sqliteErr.Code() == sqlite3.SQLITE_IOERR_SHMSIZE {
		code = sqlite3.SQLITE_FULL // the file of shared memory beside the book could not grow
	}
	switch code {
	case sqlite3.SQLITE_FULL:
		return f.because("The disk that holds the book %s is full. Nothing was entered. Make room, then try again", err)
	case sqlite3.SQLITE_READONLY, sqlite3.SQLITE_PERM:
		return f.because("The book %s may not be written to. Check the rights of the file and its folder", err)
	case sqlite3.SQLITE_CANTOPEN:
		return f.because("The book %s cannot be opened. Check the path and the rights of the file and its folder", err)
	case sqlite3.SQLITE_NOTADB:
		return f.because("%s is not a book. Check the path", err)
	case sqlite3.SQLITE_CORRUPT:
		return f.because("The file of the book %s is damaged. Copy it as it is, then go back to a backup", err)
	case sqlite3.SQLITE_IOERR:
		return f.because("The disk failed while the book %s was in use. Nothing was entered. Check the disk", err)
	}
	return f.because("The book %s refused", err)
}

// onlyRead says why nothing can be entered in a book open for reading.
func (f *file) onlyRead() error {
	return message.Storage.Errorf("The book %s is open for reading only. Nothing was entered.", f.path)
}

// isBusy reports whether another program holds the lock.
func isBusy(err error) bool {
	var sqliteErr *sqlite.Error
	if !errors.As(err, &sqliteErr) {
		return false
	}
	code := sqliteErr.Code() & 0xff
	return code == sqlite3.SQLITE_BUSY || code == sqlite3.SQLITE_LOCKED
}

// isDiskFault reports whether the disk or the rights of the file are at fault, so that the next write
// fails the same way.
func isDiskFault(err error) bool {
	var sqliteErr *sqlite.Error
	if !errors.As(err, &sqliteErr) {
		return false
	}
	switch sqliteErr.Code() & 0xff {
	case sqlite3.SQLITE_FULL, sqlite3.SQLITE_READONLY, sqlite3.SQLITE_PERM, sqlite3.SQLITE_CANTOPEN, sqlite3.SQLITE_CORRUPT, sqlite3.SQLITE_IOERR:
		return true
	}
	return false
}

func (f *file) because(sentence string, err error) error {
	return message.Storage.Errorf(sentence+": %w", f.path, err)
}
