package sqlite

import (
	"context"
	"database/sql"
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"tenthpoint/internal/book"
	"tenthpoint/internal/book/sqlite/access"
	"tenthpoint/internal/journal"
	"tenthpoint/internal/message"
	"tenthpoint/migrations"
)

var ctx = context.Background()

// newBook makes an empty book that is closed with the test.
func newBook(t testing.TB) *Book {
	t.Helper()
	path := filepath.Join(t.TempDir(), "elevator.book")
	b, err := open(path, book.Options{Create: true}, migrations.Files, access.Scratch)
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { b.Close() })
	return b
}

// draft is the i-th act of an invented season: three acts to a load.
func draft(i int) journal.Entry {
	kinds := []string{"gross weighed", "sample tested", "tare weighed"}
	start := time.Date(2025, 10, 4, 12, 0, 0, 0, time.UTC)
	return journal.Entry{
		At: journal.Stamp(start.Add(time.Duration(i) * time.Minute)), Who: "A. Clerk", Desk: "scale house",
		Kind: kinds[i%3], Subject: fmt.Sprintf("load %d", i/3+1),
		Body: fmt.Appendf(nil, `{"figure":"%d","note":"Körner ½"}`, 20000+i),
	}
}

// appendTo enters n facts in one write, going on from the first not entered.
func appendTo(t testing.TB, b *Book, n int) {
	t.Helper()
	last, _, err := b.Head(ctx)
	if err != nil {
		t.Fatal(err)
	}
	write(t, b, func(tx *Tx) error {
		for i := range n {
			if _, err := tx.Append(draft(int(last.Seq) + i)); err != nil {
				return err
			}
		}
		return nil
	})
}

func write(t testing.TB, b *Book, act func(*Tx) error) {
	t.Helper()
	if err := b.inWrite(ctx, act); err != nil {
		t.Fatal(err)
	}
}

func wantSound(t testing.TB, b *Book, facts int64) {
	t.Helper()
	problems, count, err := b.VerifyChain(ctx)
	if err != nil || len(problems) > 0 || count != facts {
		t.Fatalf("want %d sound facts, got %d, %q, %v", facts, count, problems, err)
	}
}

func wantError(t testing.TB, err error, says ...string) {
	t.Helper()
	if err == nil {
		t.Fatal("no error")
	}
	for _, want := range says {
		if !strings.Contains(err.Error(), want) {
			t.Errorf("%q does not say %q", err, want)
		}
	}
}

// bare is a connection as any other program would make it: no settings of
// ours.
func bare(t testing.TB, path string) *sql.DB {
	t.Helper()
	db, err := sql.Open("sqlite", path)
	if err != nil {
		t.Fatal(err)
	}
	db.SetMaxOpenConns(1)
	t.Cleanup(func() { db.Close() })
	return db
}

func TestBookIsThereAgainAfterClosing(t *testing.T) {
	path := filepath.Join(t.TempDir(), "new folder", "100% käse? #1.book")
	b, err := Open(path, book.Options{Create: true})
	if err != nil {
		t.Fatal(err)
	}
	appendTo(t, b, 5)
	if err := b.Close(); err != nil {
		t.Fatal(err)
	}
	files, _ := filepath.Glob(filepath.Dir(path) + "/*")
	if len(files) != 1 || files[0] != path {
		t.Errorf("after closing there are %q", files)
	}
	b, err = Open(path, book.Options{})
	if err != nil {
		t.Fatal(err)
	}
	defer b.Close()
	appendTo(t, b, 2)
	wantSound(t, b, 7)
	if b.Path() != path {
		t.Errorf("the book says it lies at %s", b.Path())
	}
}

func TestOpenRefusesWhatIsNoBook(t *testing.T) {
	place := func(t *testing.T, content string) string {
		path := filepath.Join(t.TempDir(), "thing")
		if err := os.WriteFile(path, []byte(content), 0o644); err != nil {
			t.Fatal(err)
		}
		return path
	}
	cases := map[string]struct {
		path    func(*testing.T) string
		options book.Options
		want    string
	}{
		"nothing":             {func(t *testing.T) string { return filepath.Join(t.TempDir(), "typo") }, book.Options{}, "There is no book at"},
		"nothing, read only":  {func(t *testing.T) string { return filepath.Join(t.TempDir(), "typo") }, book.Options{ReadOnly: true}, "There is no book at"},
		"a folder":            {func(t *testing.T) string { return t.TempDir() }, book.Options{Create: true}, "is a folder"},
		"an empty file":       {func(t *testing.T) string { return place(t, "") }, book.Options{}, "is empty, not a book"},
		"a letter":            {func(t *testing.T) string { return place(t, strings.Repeat("Dear Sir, ", 99)) }, book.Options{Create: true}, "is not a book"},
		"another database":    {otherDatabase, book.Options{Create: true}, "not a Tenthpoint book"},
		"another, read only":  {otherDatabase, book.Options{ReadOnly: true}, "not a Tenthpoint book"},
		"a folder in a file":  {func(t *testing.T) string { return filepath.Join(place(t, "x"), "b") }, book.Options{Create: true}, "The book"},
		"an empty, read only": {func(t *testing.T) string { return place(t, "") }, book.Options{ReadOnly: true}, "is empty"},
	}
	for name, c := range cases {
		t.Run(name, func(t *testing.T) {
			path := c.path(t)
			before, _ := os.ReadFile(path)
			b, err := Open(path, c.options)
			if err == nil {
				b.Close()
			}
			wantError(t, err, c.want)
			if after, _ := os.ReadFile(path); string(after) != string(before) {
				t.Error("the file was changed")
			}
			if _, err := os.Stat(path); c.want == "There is no book at" && err == nil {
				t.Error("a file was made")
			}
		})
	}
}

// otherDatabase is somebody else's data.
func otherDatabase(t *testing.T) string {
	path := filepath.Join(t.TempDir(), "photos")
	db := bare(t, path)
	if _, err := db.Exec("CREATE TABLE photos (name TEXT)"); err != nil {
		t.Fatal(err)
	}
	db.Close()
	return path
}

func TestCreateTakesAnEmptyFile(t *testing.T) {
	path := filepath.Join(t.TempDir(), "touched.book")
	if err := os.WriteFile(path, nil, 0o644); err != nil {
		t.Fatal(err)
	}
	b, err := Open(path, book.Options{Create: true})
	if err != nil {
		t.Fatal(err)
	}
	defer b.Close()
	appendTo(t, b, 1)
}

func TestReadOnlyBookReadsAndRefusesToWrite(t *testing.T) {
	b := newBook(t)
	appendTo(t, b, 3)
	reader, err := Open(b.Path(), book.Options{ReadOnly: true})
	if err != nil {
		t.Fatal(err)
	}
	defer reader.Close()
	wantSound(t, reader, 3)
	wantError(t, reader.inWrite(ctx, func(*Tx) error { return nil }), "open for reading only")
	for _, db := range []*sql.DB{reader.read, b.read} {
		if _, err := db.Exec("INSERT INTO series (name, last) VALUES ('ticket', 1)"); err == nil {
			t.Error("the reading pool wrote")
		}
	}
}

// What the settings promise, asked of the connections themselves.
func TestConnectionsHaveTheirSettings(t *testing.T) {
	path := filepath.Join(t.TempDir(), "elevator.book")
	b, err := Open(path, book.Options{Create: true, Busy: 1234 * time.Millisecond})
	if err != nil {
		t.Fatal(err)
	}
	defer b.Close()
	common := map[string]string{
		"journal_mode": "wal", "foreign_keys": "1", "recursive_triggers": "1", "busy_timeout": "1234",
		"trusted_schema": "0",
	}
	for name, db := range map[string]connection{"write": b.write.conn, "read": b.read} {
		for setting, want := range common {
			wantSetting(t, name, db, setting, want)
		}
	}
	wantSetting(t, "write", b.write.conn, "synchronous", "2") // FULL
	wantSetting(t, "write", b.write.conn, "fullfsync", "1")
	wantSetting(t, "read", b.read, "query_only", "1")
}

// connection is the writer's, or any of a pool.
type connection interface {
	QueryRowContext(context.Context, string, ...any) *sql.Row
	ExecContext(context.Context, string, ...any) (sql.Result, error)
}

func wantSetting(t *testing.T, name string, db connection, setting, want string) {
	t.Helper()
	var got string
	if err := db.QueryRowContext(ctx, "PRAGMA "+setting).Scan(&got); err != nil || got != want {
		t.Errorf("%s: %s is %q, want %q (%v)", name, setting, got, want, err)
	}
}

func TestTablesAreStrict(t *testing.T) {
	b := newBook(t)
	loose, err := texts(ctx, b, "SELECT name FROM pragma_table_list WHERE schema = 'main' AND NOT strict AND name NOT LIKE 'sqlite_%'")
	if err != nil || len(loose) > 0 {
		t.Errorf("not STRICT: %q, %v", loose, err)
	}
}

func TestScratchBookLeavesNothing(t *testing.T) {
	b, err := OpenScratch()
	if err != nil {
		t.Fatal(err)
	}
	appendTo(t, b, 3)
	wantSound(t, b, 3)
	folder := filepath.Dir(b.Path())
	if err := b.Close(); err != nil {
		t.Fatal(err)
	}
	if _, err := os.Stat(folder); !os.IsNotExist(err) {
		t.Errorf("%s is still there: %v", folder, err)
	}
}

// texts reads a query's single column.
func texts(ctx context.Context, b *Book, query string, args ...any) ([]string, error) {
	return list(reader{b.file, b.read}.during(ctx), scanText, query, args...)
}

// A book in a synced folder or on a network drive is read, and written only by who
// insists.
func TestBookInASyncedFolderIsNotWritten(t *testing.T) {
	for _, name := range []string{"Dropbox", "OneDrive - House", "Google Drive"} {
		path := filepath.Join(t.TempDir(), name, "books", "house.book")
		if _, err := Open(path, book.Options{Create: true}); !errors.Is(err, message.Refused) {
			t.Fatalf("%s: %v", name, err)
		}
		b, err := Open(path, book.Options{Create: true, AnyPlace: true})
		if err != nil {
			t.Fatal(err)
		}
		b.Close()
		if _, err := Open(path, book.Options{}); !errors.Is(err, message.Refused) {
			t.Errorf("%s: opened for writing: %v", name, err)
		}
		read, err := Open(path, book.Options{ReadOnly: true})
		if err != nil {
			t.Fatalf("%s: not read: %v", name, err)
		}
		read.Close()
	}
}
