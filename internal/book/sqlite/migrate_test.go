package sqlite

import (
	"errors"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"testing/fstest"

	"tenthpoint/internal/book"
	"tenthpoint/internal/book/sqlite/access"
	"tenthpoint/internal/book/steps"
	"tenthpoint/migrations"
)

// stepFiles are the shipped first step with further ones after it.
// steps is the journal's own migration with further ones after it.
func stepFiles(t *testing.T, more ...string) fstest.MapFS {
	t.Helper()
	first, err := fs.ReadFile(migrations.Files, "0001_journal.sql")
	if err != nil {
		t.Fatal(err)
	}
	all := fstest.MapFS{"0001_journal.sql": {Data: first}}
	names := []string{"0002_yard.sql", "0003_pits.sql"}
	for i, text := range more {
		all[names[i]] = &fstest.MapFile{Data: []byte(text)}
	}
	return all
}

const (
	yard = "CREATE TABLE yard (load TEXT) STRICT; INSERT INTO yard SELECT DISTINCT subject FROM facts;"
	pits = "CREATE TABLE pits (pit TEXT) STRICT;"
)

// openWith opens the book as a program with these migrations would.
func openWith(path string, known fs.FS, o book.Options) (*Book, error) {
	return open(path, o, known, access.Scratch)
}

// oldBook is a book with six facts of a program that knew only the first
// migration.
func oldBook(t *testing.T) string {
	t.Helper()
	path := filepath.Join(t.TempDir(), "old.book")
	b, err := openWith(path, stepFiles(t), book.Options{Create: true})
	if err != nil {
		t.Fatal(err)
	}
	defer b.Close()
	appendTo(t, b, 6)
	return path
}

func beside(t *testing.T, path string) []string {
	t.Helper()
	files, err := filepath.Glob(path + "*")
	if err != nil {
		t.Fatal(err)
	}
	for i := range files {
		files[i] = strings.TrimPrefix(files[i], path)
	}
	slices.Sort(files)
	return files
}

func TestShippedMigrationsAreInOrder(t *testing.T) {
	known, err := steps.Read(migrations.Files)
	if err != nil || len(known) == 0 {
		t.Fatal(known, err)
	}
}

func TestOldBookIsCopiedAndBroughtUpToDate(t *testing.T) {
	path := oldBook(t)
	b, err := openWith(path, stepFiles(t, yard, pits), book.Options{})
	if err != nil {
		t.Fatal(err)
	}
	loads, err := texts(ctx, b, "SELECT load FROM yard ORDER BY load")
	if err != nil || !slices.Equal(loads, []string{"load 1", "load 2"}) {
		t.Errorf("the new table has %q, %v", loads, err)
	}
	done, err := texts(ctx, b, "SELECT name FROM migrations ORDER BY number")
	if err != nil || !slices.Equal(done, []string{"0001_journal.sql", "0002_yard.sql", "0003_pits.sql"}) {
		t.Errorf("the book remembers %q, %v", done, err)
	}
	appendTo(t, b, 1)
	wantSound(t, b, 7)
	b.Close()
	if files := beside(t, path); !slices.Equal(files, []string{"", ".before-0002"}) {
		t.Errorf("beside the book: %q", files)
	}
	copied, err := openWith(path+".before-0002", stepFiles(t), book.Options{})
	if err != nil {
		t.Fatal(err)
	}
	wantSound(t, copied, 6)
	copied.Close()

	again, err := openWith(path, stepFiles(t, yard, pits), book.Options{})
	if err != nil {
		t.Fatal(err)
	}
	again.Close()
	if files := beside(t, path); !slices.Equal(files, []string{"", ".before-0002"}) {
		t.Errorf("after opening again: %q", files)
	}
}

func TestNewBookIsNotCopied(t *testing.T) {
	path := filepath.Join(t.TempDir(), "new.book")
	b, err := openWith(path, stepFiles(t, yard), book.Options{Create: true})
	if err != nil {
		t.Fatal(err)
	}
	b.Close()
	if files := beside(t, path); !slices.Equal(files, []string{""}) {
		t.Errorf("beside the book: %q", files)
	}
}

func TestMigrationThatFailsLeavesTheBookAsItWas(t *testing.T) {
	path := oldBook(t)
	for range 2 { // a second attempt keeps the first one's copy
		_, err := openWith(path, stepFiles(t, "CREATE TABLE half (x TEXT) STRICT; INSERT INTO nowhere VALUES (1);"), book.Options{})
		wantError(t, err, "0002_yard.sql failed", "stays as it was", "nowhere")
	}
	if files := beside(t, path); !slices.Equal(files, []string{"", ".before-0002", ".before-0002-2"}) {
		t.Errorf("beside the book: %q", files)
	}
	b, err := openWith(path, stepFiles(t), book.Options{})
	if err != nil {
		t.Fatal(err)
	}
	defer b.Close()
	wantSound(t, b, 6)
	if half, _ := texts(ctx, b, "SELECT name FROM sqlite_schema WHERE name = 'half'"); len(half) > 0 {
		t.Error("half a migration is in the book")
	}
}

func TestOtherHistoriesAreRefused(t *testing.T) {
	altered := stepFiles(t, yard, pits)
	altered["0001_journal.sql"] = &fstest.MapFile{Data: append(slices.Clone(altered["0001_journal.sql"].Data), ' ')}
	renamed := stepFiles(t, "", pits)
	delete(renamed, "0002_yard.sql")
	renamed["0002_barn.sql"] = &fstest.MapFile{Data: []byte(yard)}
	gap := stepFiles(t, yard, pits)
	delete(gap, "0002_yard.sql")
	cases := map[string]struct {
		known fs.FS
		want  []string
	}{
		"a newer book":        {stepFiles(t, yard), []string{"belongs to a newer program", "0003_pits.sql", "knows 2 migrations"}},
		"an altered step":     {altered, []string{"another history", "migration 1 is 0001_journal.sql", "Nothing was touched"}},
		"a renamed step":      {renamed, []string{"another history", "is 0002_yard.sql", "here it is 0002_barn.sql"}},
		"a gap in the steps":  {gap, []string{"0003_pits.sql stands where number 0002 is due"}},
		"a step without name": {fstest.MapFS{"first.sql": {}}, []string{"first.sql is not named"}},
	}
	for name, c := range cases {
		for how, o := range map[string]book.Options{"writing": {}, "reading": {ReadOnly: true}} {
			t.Run(name+", "+how, func(t *testing.T) {
				path := oldBook(t)
				b, err := openWith(path, stepFiles(t, yard, pits), book.Options{})
				if err != nil {
					t.Fatal(err)
				}
				b.Close()
				before, _ := os.ReadFile(path)
				_, err = openWith(path, c.known, o)
				wantError(t, err, c.want...)
				if after, _ := os.ReadFile(path); string(after) != string(before) {
					t.Error("the book was touched")
				}
				if files := beside(t, path); len(files) != 2 { // the book and the copy from above
					t.Errorf("beside the book: %q", files)
				}
			})
		}
	}
}

// A history that lost an entry in the middle is not mistaken for a short one.
func TestHistoryWithAHoleIsRefused(t *testing.T) {
	path := oldBook(t)
	b, err := openWith(path, stepFiles(t, yard, pits), book.Options{})
	if err != nil {
		t.Fatal(err)
	}
	b.Close()
	force(t, bare(t, path), "DELETE FROM migrations WHERE number = 2")
	_, err = openWith(path, stepFiles(t, yard, pits), book.Options{})
	wantError(t, err, "another history", "its migration 3 is 0003_pits.sql", "here it is 0002_yard.sql")
}

func TestOldBookIsRefusedForReadingOnly(t *testing.T) {
	_, err := openWith(oldBook(t), stepFiles(t, yard), book.Options{ReadOnly: true})
	wantError(t, err, "older than this program", "Open it once for writing")
	if !errors.Is(err, book.ErrOld) {
		t.Errorf("%v is not known for an older book", err)
	}
}

// A book that only lacks what reading does without is read as it is: nothing is
// added to it, not even beside it.
func TestBookOfTheVersionBeforeIsRead(t *testing.T) {
	path := filepath.Join(t.TempDir(), "before.book")
	before := fstest.MapFS{}
	names, err := fs.Glob(migrations.Files, "*.sql")
	if err != nil {
		t.Fatal(err)
	}
	for _, name := range names[:migrations.NeededToRead] {
		text, err := fs.ReadFile(migrations.Files, name)
		if err != nil {
			t.Fatal(err)
		}
		before[name] = &fstest.MapFile{Data: text}
	}
	old, err := openWith(path, before, book.Options{Create: true})
	if err != nil {
		t.Fatal(err)
	}
	appendTo(t, old, 6)
	old.Close()
	was, _ := os.ReadFile(path)
	b, err := Open(path, book.Options{ReadOnly: true})
	if err != nil {
		t.Fatal(err)
	}
	wantSound(t, b, 6)
	if _, err := b.Loads(ctx, book.LoadFilter{}); err != nil {
		t.Error(err)
	}
	if _, err := b.StockBefore(ctx, "2027-01-01"); err != nil {
		t.Error(err)
	}
	b.Close()
	if is, _ := os.ReadFile(path); string(is) != string(was) {
		t.Error("the book was touched")
	}
	if files := beside(t, path); !slices.Equal(files, []string{""}) {
		t.Errorf("beside the book: %q", files)
	}
}
