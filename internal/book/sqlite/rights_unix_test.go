//go:build unix

package sqlite

import (
	"os"
	"path/filepath"
	"tenthpoint/internal/book"
	"tenthpoint/internal/journal"
	"testing"
)

// A book, the files beside it and its backups are readable by their owner alone.
func TestBookIsItsOwnersAlone(t *testing.T) {
	path := filepath.Join(t.TempDir(), "new folder", "house.book")
	b, err := Open(path, book.Options{Create: true})
	if err != nil {
		t.Fatal(err)
	}
	defer b.Close()
	appendTo(t, b, 1)
	copied := filepath.Join(t.TempDir(), "monday.book")
	if err := b.Backup(ctx, copied, journal.Head.String); err != nil {
		t.Fatal(err)
	}
	for _, name := range []string{path, path + "-wal", copied, filepath.Dir(path)} {
		info, err := os.Stat(name)
		if err != nil {
			t.Fatal(err)
		}
		if others := info.Mode().Perm() & 0o077; others != 0 {
			t.Errorf("%s has the rights %s", name, info.Mode())
		}
	}
}
