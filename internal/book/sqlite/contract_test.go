package sqlite

import (
	"compress/gzip"
	"database/sql"
	"io"
	"os"
	"path/filepath"
	"testing"

	"tenthpoint/internal/book"
	"tenthpoint/internal/book/booktest"
)

// The engine in use does all that is asked of one.
func TestContract(t *testing.T) {
	e := engine()
	t.Run("journal", func(t *testing.T) { booktest.Journal(t, e) })
	t.Run("numbers", func(t *testing.T) { booktest.Numbers(t, e) })
	t.Run("position", func(t *testing.T) { booktest.Position(t, e) })
	t.Run("bins", func(t *testing.T) { booktest.Bins(t, e) })
	t.Run("lists", func(t *testing.T) { booktest.Lists(t, e) })
}

// TestBookSurvivesBeingKilled is the part of the suite that a soak repeats with other seeds.
func TestBookSurvivesBeingKilled(t *testing.T) { booktest.Killed(t, engine(), *faultSeed) }

func engine() booktest.Engine[*Book] {
	return booktest.Engine[*Book]{
		New: func(t testing.TB) *Book { return newBook(t) },
		Reopen: func(t testing.TB, b *Book) *Book {
			t.Helper()
			again, err := Open(b.Path(), book.Options{})
			if err != nil {
				t.Fatal(err)
			}
			t.Cleanup(func() { _ = again.Close() })
			if problems, err := again.Verify(ctx); err != nil || len(problems) > 0 {
				t.Errorf("opened again: %q, %v", problems, err)
			}
			return again
		},
		Place: (*Book).Path,
		Raw: func(t testing.TB, b *Book, statement string) error {
			t.Helper()
			db, err := sql.Open("sqlite", b.Path())
			if err != nil {
				t.Fatal(err)
			}
			defer db.Close()
			_, err = db.Exec(statement)
			return err
		},
	}
}

// Books of earlier versions, as they were made then, can be opened and written.
func TestContractOnOldBooks(t *testing.T) {
	packed, err := filepath.Glob("../../../testdata/books/*.book.gz")
	if err != nil || len(packed) < 10 {
		t.Fatalf("%d books, %v", len(packed), err)
	}
	for _, path := range packed {
		t.Run(filepath.Base(path), func(t *testing.T) {
			b, err := Open(unpacked(t, path), book.Options{})
			if err != nil {
				t.Fatal(err)
			}
			defer b.Close()
			booktest.Old(t, b)
		})
	}
}

func unpacked(t *testing.T, path string) string {
	t.Helper()
	packed, err := os.Open(path)
	if err != nil {
		t.Fatal(err)
	}
	defer packed.Close()
	text, err := gzip.NewReader(packed)
	if err != nil {
		t.Fatal(err)
	}
	whole, err := io.ReadAll(text)
	if err != nil {
		t.Fatal(err)
	}
	out := filepath.Join(t.TempDir(), "old.book")
	if err := os.WriteFile(out, whole, 0o600); err != nil {
		t.Fatal(err)
	}
	return out
}
