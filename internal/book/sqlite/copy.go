package sqlite

import (
	"context"
	"database/sql"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"time"

	"modernc.org/sqlite"

	"tenthpoint/internal/atomicfile"
	"tenthpoint/internal/message"
)

// taken is the name of a copy that already exists.
type taken string

// Error names it in English.
func (t taken) Error() string { return t.Message().String() }

// Message names it.
func (t taken) Message() message.Text {
	return message.New("There already is a file %v; a copy never writes over one. Choose another name.", string(t))
}

// copyTo writes a snapshot of the book to a new file. The copy is made under another name, synced
// and verified by check, and only then renamed: if the program ends earlier, there is no file of
// that name.
func (f *file) copyTo(ctx context.Context, from *sql.DB, target string, check func(partial string) error) error {
	if _, err := os.Lstat(target); err == nil {
		return taken(target)
	}
	if err := discardPartials(target); err != nil {
		return err
	}
	place, err := os.CreateTemp(filepath.Dir(target), filepath.Base(target)+partialMark+"-*")
	if err != nil {
		return message.Errorf("The copy %s cannot be made: %w", target, err)
	}
	partial := place.Name()
	err = errors.Join(place.Close(), writeCopy(ctx, from, partial))
	if err == nil {
		err = check(partial)
	}
	if err == nil {
		err = claim(partial, target)
	}
	return errors.Join(err, discard(partial))
}

// partialMark is in the name of a copy that is not complete yet.
const partialMark = ".partial"

// longestCopy is how long a copy may go without a byte written before it counts as left over from a
// program that was killed.
const longestCopy = 15 * time.Minute

// discardPartials removes partial copies left by killed programs.
func discardPartials(target string) error {
	entries, err := os.ReadDir(filepath.Dir(target))
	if err != nil {
		return message.Errorf("The copy %s cannot be made: %w", target, err)
	}
	for _, entry := range entries {
		if !strings.HasPrefix(entry.Name(), filepath.Base(target)+partialMark) {
			continue
		}
		info, err := entry.Info()
		ours := strings.HasPrefix(entry.Name(), filepath.Base(target)+partialMark+"-") // earlier programs had one name for all
		if err != nil || ours && time.Since(info.ModTime()) < longestCopy {
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
		return taken(target)
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
	place, err := os.OpenFile(target, os.O_WRONLY|os.O_CREATE|os.O_EXCL, 0o644)
	if errors.Is(err, fs.ErrExist) {
		return taken(target)
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

// pageCopier is what the driver's connection can do beyond SQL.
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
		copying, err := driver.(pageCopier).NewBackup(fileName(to, access{"mode": {"rw"}}))
		if err != nil {
			return err
		}
		// All in one step, which holds one moment of the book: between steps another
		// program's write would begin the copy anew.
		_, err = copying.Step(-1)
		return errors.Join(err, copying.Finish(), ctx.Err())
	})
}

// copyBefore keeps the book as it was before a migration, beside it. A name
// already taken belongs to an earlier attempt, or to another program that does
// the same just now, and is kept as well.
func (f *file) copyBefore(step migration) error {
	target := fmt.Sprintf("%s.before-%04d", f.path, step.number)
	var already taken
	from, err := connect(f.path, probeAccess(f.busy), 1)
	if err != nil {
		return err
	}
	defer from.Close()
	err = f.copyTo(context.Background(), from, target, func(string) error { return nil })
	for n := 2; errors.As(err, &already); n++ {
		next := fmt.Sprintf("%s-%d", target, n)
		err = f.copyTo(context.Background(), from, next, func(string) error { return nil })
	}
	if err != nil {
		return message.Errorf("The book %s was not brought up to date, because it could not be copied first: %w", f.path, err)
	}
	return nil
}

// discard removes a file that may not be there.
func discard(path string) error {
	if err := os.Remove(path); err != nil && !errors.Is(err, fs.ErrNotExist) {
		return err
	}
	return nil
}
