package sqlite

import (
	"context"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"

	"tenthpoint/internal/atomicfile"
	"tenthpoint/internal/message"
)

// taken is the name of a copy that is there already.
type taken string

// Error names it.
func (t taken) Error() string {
	return fmt.Sprintf("There already is a file %s; a copy never writes over one. Choose another name.", string(t))
}

// copyTo writes the book as it is at one moment to a new file. The copy is
// made under another name, brought to the disk and looked over by check before
// it gets its own, so a file under that name is always whole.
func (f *file) copyTo(ctx context.Context, target string, check func(partial string) error) error {
	place, err := os.OpenFile(target, os.O_WRONLY|os.O_CREATE|os.O_EXCL, 0o644)
	if errors.Is(err, fs.ErrExist) {
		return taken(target)
	}
	if err != nil {
		return message.Errorf("The copy %s cannot be made: %w", target, err)
	}
	partial := target + ".partial"
	err = errors.Join(place.Close(), f.writeCopy(ctx, partial))
	if err == nil {
		err = check(partial)
	}
	if err == nil {
		err = os.Rename(partial, target)
	}
	if err != nil {
		return errors.Join(err, discard(partial), discard(target))
	}
	return atomicfile.SyncFolder(filepath.Dir(target))
}

// writeCopy copies the book and waits for the disk, which VACUUM INTO does
// not. It reads through a connection of its own, so weighing goes on.
func (f *file) writeCopy(ctx context.Context, partial string) error {
	if err := discard(partial); err != nil { // left over from a copy that was killed
		return err
	}
	db, err := connect(f.path, probeAccess(f.busy), 1)
	if err != nil {
		return err
	}
	_, err = db.ExecContext(ctx, "VACUUM INTO ?", partial)
	if err := errors.Join(err, db.Close()); err != nil {
		return err
	}
	written, err := os.OpenFile(partial, os.O_RDWR, 0)
	if err != nil {
		return err
	}
	return errors.Join(written.Sync(), written.Close())
}

// copyBefore keeps the book as it was before a migration, beside it. A name
// already taken belongs to an earlier attempt, or to another program that does
// the same just now, and is kept as well.
func (f *file) copyBefore(step migration) error {
	target := fmt.Sprintf("%s.before-%04d", f.path, step.number)
	var already taken
	err := f.copyTo(context.Background(), target, func(string) error { return nil })
	for n := 2; errors.As(err, &already); n++ {
		next := fmt.Sprintf("%s-%d", target, n)
		err = f.copyTo(context.Background(), next, func(string) error { return nil })
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
