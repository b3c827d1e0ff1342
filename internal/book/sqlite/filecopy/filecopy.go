// Package filecopy copies the database of a book while it is in use. The copy is of one moment, and it
// is under its name whole and looked at, or not at all.
package filecopy

import (
	"context"
	"database/sql"
	"errors"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"time"

	"modernc.org/sqlite"

	"tenthpoint/internal/atomicfile"
	"tenthpoint/internal/book/sqlite/access"
	"tenthpoint/internal/message"
)

// Exists is the name of a copy that already exists.
type Exists string

// Error names it in English.
func (t Exists) Error() string { return t.Message().String() }

// Message names it.
func (t Exists) Message() message.Text {
	return message.New("There already is a file %v; a copy never writes over one. Choose another name.", string(t))
}

// Make writes a snapshot of a book to a new file, verified by check, as [New] does.
func Make(ctx context.Context, from *sql.DB, target string, check func(partial string) error) error {
	return New(target, func(partial string) error {
		if err := writeCopy(ctx, from, partial); err != nil {
			return err
		}
		return check(partial)
	})
}

// New makes a new file. It is written by fill under another name, beginning empty, and only then
// renamed: if that fails, or the program ends earlier, there is no file of that name.
func New(target string, fill func(partial string) error) error {
	if _, err := os.Lstat(target); err == nil {
		return Exists(target)
	}
	if err := discardPartials(target); err != nil {
		return err
	}
	place, err := os.CreateTemp(filepath.Dir(target), filepath.Base(target)+partialMark+"-*")
	if err != nil {
		return message.Storage.Errorf("The copy %s cannot be made: %w", target, err)
	}
	partial := place.Name()
	err = errors.Join(place.Chmod(atomicfile.Rights(filepath.Dir(target))), place.Close())
	if err == nil {
		err = fill(partial)
	}
	if err == nil {
		err = claim(partial, target)
	}
	return errors.Join(err, discard(partial))
}

// partialMark is in the name of a copy that is not complete yet.
const partialMark = ".partial"

// Longest is the time a copy may go without a byte written before it counts as left over from a
// program that was killed.
const Longest = 15 * time.Minute

// discardPartials removes partial copies left by killed programs.
func discardPartials(target string) error {
	entries, err := os.ReadDir(filepath.Dir(target))
	if err != nil {
		return message.Storage.Errorf("The copy %s cannot be made: %w", target, err)
	}
	for _, entry := range entries {
		if !strings.HasPrefix(entry.Name(), filepath.Base(target)+partialMark) {
			continue
		}
		info, err := entry.Info()
		ours := strings.HasPrefix(entry.Name(), filepath.Base(target)+partialMark+"-") // earlier programs had one name for all
		if err != nil || ours && time.Since(info.ModTime()) < Longest {
			continue // gone meanwhile, or being written by another program
		}
		if err := discard(filepath.Join(filepath.Dir(target), entry.Name())); err != nil {
			return err
		}
	}
	return nil
}

// claim renames a complete copy to its name, which must be free: by a link, which replaces nothing,
// or on a disk without links by a name reserved just before.
func claim(partial, target string) error {
	err := os.Link(partial, target)
	if errors.Is(err, fs.ErrExist) {
		return Exists(target)
	}
	if err != nil {
		err = claimWithoutLink(partial, target)
	}
	if err != nil {
		return err
	}
	return atomicfile.SyncFolder(filepath.Dir(target))
}

func claimWithoutLink(partial, target string) error {
	place, err := os.OpenFile(target, os.O_WRONLY|os.O_CREATE|os.O_EXCL, 0o600)
	if errors.Is(err, fs.ErrExist) {
		return Exists(target)
	}
	if err != nil {
		return err
	}
	if err := errors.Join(place.Close(), os.Rename(partial, target)); err != nil {
		return errors.Join(err, discard(target))
	}
	return nil
}

// writeCopy copies the book page by page, as it is at one moment, and waits for the
// disk. It reads through a connection that is open already: a book that was deleted
// or moved meanwhile is copied all the same.
func writeCopy(ctx context.Context, from *sql.DB, partial string) error {
	if err := copyPages(ctx, from, partial); err != nil {
		return err
	}
	written, err := os.OpenFile(partial, os.O_RDWR, 0)
	if err != nil {
		return err
	}
	return errors.Join(written.Sync(), written.Close())
}

// pageCopier is the backup interface of the driver's connection.
type pageCopier interface {
	NewBackup(to string) (*sqlite.Backup, error)
}

func copyPages(ctx context.Context, db *sql.DB, to string) error {
	conn, err := db.Conn(ctx)
	if err != nil {
		return err
	}
	defer conn.Close()
	return conn.Raw(func(driver any) error {
		copying, err := driver.(pageCopier).NewBackup(access.FileName(to, access.Purpose{"mode": {"rw"}}))
		if err != nil {
			return err
		}
		// All in one step, which holds one moment of the book: between steps another
		// program's write would begin the copy anew.
		_, err = copying.Step(-1)
		return errors.Join(err, copying.Finish(), ctx.Err())
	})
}

// discard removes a file that may not be there.
func discard(path string) error {
	if err := os.Remove(path); err != nil && !errors.Is(err, fs.ErrNotExist) {
		return err
	}
	return nil
}
