package sqlite

import (
	"errors"
	"os"
	"path/filepath"
	"slices"
	"testing"

	"tenthpoint/internal/book"
	"tenthpoint/internal/book/sqlite/faultdisk"
	"tenthpoint/internal/journal"
	"tenthpoint/internal/message"
)

// A book whose file is deleted, moved or replaced under it takes nothing more in, and all that it took
// is in the copy saved from the open book.
func TestABookThatIsGoneKeepsNothingAndIsSaved(t *testing.T) {
	for name, change := range map[string]func(path string) error{
		"deleted": func(path string) error {
			return errors.Join(os.Remove(path), os.Remove(path+"-wal"), os.Remove(path+"-shm"))
		},
		"moved": func(path string) error { return os.Rename(path, path+".old") },
		"replaced": func(path string) error {
			return errors.Join(os.WriteFile(path+".new", nil, 0o600), os.Rename(path+".new", path))
		},
	} {
		path := filepath.Join(t.TempDir(), "house.book")
		b, err := Open(path, book.Options{Create: true})
		must(t, err)
		appendTo(t, b, 5)
		want := contents(t, b)
		must(t, b.Trouble())
		must(t, change(path))
		if err := b.Trouble(); !errors.Is(err, message.Storage) {
			t.Errorf("%s: the book says %v", name, err)
		}
		if err := b.Write(ctx, func(tx book.Tx) error { _, err := tx.Append(draft(6)); return err }); !errors.Is(err, message.Storage) {
			t.Errorf("%s: a fact was taken: %v", name, err)
		}
		target := filepath.Join(t.TempDir(), "saved.book")
		must(t, b.Backup(ctx, target, journal.Head.String))
		must(t, b.Close())
		saved, err := Open(target, book.Options{})
		must(t, err)
		if got := contents(t, saved); !slices.Equal(got, want) {
			t.Errorf("%s: the copy holds %q, want %q", name, got, want)
		}
		must(t, saved.Close())
	}
}

// A full disk is told as long as it is full.
func TestAFullDiskIsToldUntilThereIsRoom(t *testing.T) {
	d := faultdisk.New(t)
	b, err := Open(filepath.Join(t.TempDir(), "house.book"), book.Options{Create: true})
	must(t, err)
	defer b.Close()
	enter := func() error {
		return b.Write(ctx, func(tx book.Tx) error { _, err := tx.Append(draft(1)); return err })
	}
	must(t, enter())
	d.Fail(1, faultdisk.Full)
	if enter() == nil || b.Trouble() == nil {
		t.Errorf("on a full disk the book says %v", b.Trouble())
	}
	d.Fail(0, faultdisk.Once)
	must(t, enter())
	must(t, b.Trouble())
}

func must(t testing.TB, err error) {
	t.Helper()
	if err != nil {
		t.Fatal(err)
	}
}

// A book opened on a disk that is full already needs room for the file that programs share, and says
// that there is none.
func TestABookOpenedOnAFullDiskSaysSo(t *testing.T) {
	d := faultdisk.New(t)
	path := filepath.Join(t.TempDir(), "house.book")
	b, err := Open(path, book.Options{Create: true})
	must(t, err)
	must(t, b.Close())
	d.Fail(1, faultdisk.Full)
	again, err := Open(path, book.Options{})
	if err == nil {
		_, _, err = again.Head(ctx)
		must(t, again.Close())
	}
	wantError(t, err, "is full", "4874")
	d.Fail(0, faultdisk.Once)
	again, err = Open(path, book.Options{})
	must(t, err)
	must(t, again.Close())
}
