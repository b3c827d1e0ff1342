package sqlite

import (
	"context"
	"errors"
	"os"
	"path/filepath"
	"slices"
	"testing"
	"time"

	"tenthpoint/internal/book"
	"tenthpoint/internal/book/sqlite/filecopy"
	"tenthpoint/internal/journal"
)

func TestBackupIsTheBookAtOneMoment(t *testing.T) {
	b := newBook(t)
	appendTo(t, b, 30)
	write(t, b, func(tx *Tx) error { return everything(tx, "rate") })
	want := contents(t, b)
	target := filepath.Join(t.TempDir(), "stick", "monday.book")
	wantError(t, b.Backup(ctx, target, journal.Head.String), "cannot be made") // no such folder
	if err := os.Mkdir(filepath.Dir(target), 0o755); err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(target+".partial", []byte("killed last time"), 0o644); err != nil {
		t.Fatal(err)
	}
	if err := b.Backup(ctx, target, journal.Head.String); err != nil {
		t.Fatal(err)
	}
	if files := beside(t, target); !slices.Equal(files, []string{"", ".head.txt"}) {
		t.Errorf("left behind: %q", files)
	}
	appendTo(t, b, 1) // the book changes, the copy does not
	for _, o := range []book.Options{{ReadOnly: true}, {}} {
		copied, err := Open(target, o)
		if err != nil {
			t.Fatal(err)
		}
		if got := contents(t, copied); !slices.Equal(got, want) {
			t.Errorf("the copy holds %q, want %q", got, want)
		}
		copied.Close()
	}
}

func TestBackupOfAnEmptyBook(t *testing.T) {
	b := newBook(t)
	if err := b.Backup(ctx, filepath.Join(t.TempDir(), "empty.book"), journal.Head.String); err != nil {
		t.Fatal(err)
	}
}

func TestBackupNeverWritesOverAFile(t *testing.T) {
	b := newBook(t)
	appendTo(t, b, 3)
	target := filepath.Join(t.TempDir(), "monday.book")
	if err := os.WriteFile(target, []byte("last year"), 0o644); err != nil {
		t.Fatal(err)
	}
	for _, taken := range []string{target, b.Path()} {
		wantError(t, b.Backup(ctx, taken, journal.Head.String), "There already is a file "+taken)
	}
	if content, _ := os.ReadFile(target); string(content) != "last year" {
		t.Errorf("the file now holds %q", content)
	}
	wantSound(t, b, 3)
}

func TestBackupOfAnUnsoundBookIsNotKept(t *testing.T) {
	b := newBook(t)
	appendTo(t, b, 3)
	force(t, unguard(t, b), "UPDATE facts SET who = 'B.' WHERE seq = 2")
	target := filepath.Join(t.TempDir(), "monday.book")
	wantError(t, b.Backup(ctx, target, journal.Head.String), "The backup was not kept")
	if files := beside(t, target); len(files) > 0 {
		t.Errorf("left behind: %q", files)
	}
}

func TestBackupGivenUpLeavesNothing(t *testing.T) {
	b := newBook(t)
	appendTo(t, b, 3)
	cancelled, cancel := context.WithCancel(ctx)
	target := filepath.Join(t.TempDir(), "monday.book")
	err := filecopy.Make(cancelled, b.read, target, func(partial string) error {
		cancel()
		_, err := b.verifyCopy(cancelled, partial, journal.Fact{}, headNote{})
		return err
	})
	if !errors.Is(err, context.Canceled) {
		t.Errorf("got %v", err)
	}
	if files := beside(t, target); len(files) > 0 {
		t.Errorf("left behind: %q", files)
	}
}

// A copy that ends before what had been entered, or with another book's fact,
// is no backup.
func TestBackupMustEndWithOurFact(t *testing.T) {
	b, other := newBook(t), newBook(t)
	appendTo(t, b, 4)
	write(t, other, func(tx *Tx) error {
		d := draft(0)
		d.Who = "B. Clerk"
		_, err := tx.Append(d)
		return err
	})
	last, _, err := b.Head(ctx)
	if err != nil {
		t.Fatal(err)
	}
	_, err = b.verifyCopy(ctx, other.Path(), journal.Fact{}, headNote{})
	wantError(t, err, "ends with fact 1", "not the book's")
	short := newBook(t)
	appendTo(t, short, 3)
	_, err = b.verifyCopy(ctx, short.Path(), last, headNote{})
	wantError(t, err, "ends with fact 3")
	if _, err := b.verifyCopy(ctx, short.Path(), journal.Fact{}, headNote{}); err != nil {
		t.Errorf("a copy from a moment before: %v", err)
	}
}

// A copy that is killed leaves nothing under its name, so it can be made again, and
// what it left goes once nobody can still be writing it.
func TestKilledCopyLeavesItsNameFree(t *testing.T) {
	b := newBook(t)
	appendTo(t, b, 3)
	target := filepath.Join(t.TempDir(), "monday.book")
	killed := errors.New("killed")
	func() {
		defer func() { _ = recover() }()
		_ = filecopy.Make(ctx, b.read, target, func(partial string) error {
			if _, err := os.Lstat(target); err == nil {
				t.Error("the name is taken before the copy is whole")
			}
			panic(killed) // nothing is tidied up, as after a kill
		})
	}()
	left := beside(t, target)
	if len(left) != 1 {
		t.Fatalf("left behind: %q", left)
	}
	long := time.Now().Add(-2 * filecopy.Longest)
	if err := os.Chtimes(target+left[0], long, long); err != nil {
		t.Fatal(err)
	}
	if err := b.Backup(ctx, target, journal.Head.String); err != nil {
		t.Fatal(err)
	}
	if files := beside(t, target); len(files) != 2 { // the copy and its head
		t.Errorf("beside the copy: %q", files)
	}
}

// After the first copy in a folder only what came since is checked; what was there
// before is vouched for by the head, so that even a book written again with new hashes
// is found. After a week all of it is checked again.
func TestBackupChecksWhatCameSince(t *testing.T) {
	folder := t.TempDir()
	b := newBook(t)
	appendTo(t, b, 5)
	copyTo := func(name string) (headNote, error) {
		err := b.Backup(ctx, filepath.Join(folder, name), journal.Head.String)
		return readNote(filepath.Join(folder, name) + noteEnding), err
	}
	first, err := copyTo("one.book")
	if err != nil || first.head.Seq != 5 || first.isDue() {
		t.Fatalf("%+v, %v", first, err)
	}
	appendTo(t, b, 2)
	second, err := copyTo("two.book")
	if err != nil || second.head.Seq != 7 || !second.whole.Equal(first.whole) {
		t.Fatalf("%+v after %+v, %v", second, first, err)
	}
	if last := b.lastChecked(ctx, folder); last.head != second.head {
		t.Errorf("last checked %+v", last)
	}
	appendTo(t, b, 2)
	force(t, unguard(t, b), "UPDATE facts SET who = 'B.' WHERE seq = 8")
	_, err = copyTo("three.book")
	wantError(t, err, "The backup was not kept")
}

func TestBackupChecksAllOfItWhereTheHeadIsNotTheBooks(t *testing.T) {
	for name, note := range map[string]headNote{
		"of another book": {journal.Head{Seq: 2, Hash: "0123456789abcdef"}, time.Now()},
		"eight days old":  {journal.Head{}, time.Now().Add(-8 * 24 * time.Hour)},
		"to come":         {journal.Head{}, time.Now().Add(time.Hour)},
	} {
		t.Run(name, func(t *testing.T) {
			folder := t.TempDir()
			b := newBook(t)
			appendTo(t, b, 5)
			if note.head.Seq == 0 {
				last, _, err := b.Head(ctx)
				if err != nil {
					t.Fatal(err)
				}
				note.head = journal.HeadOf(last)
			}
			if err := note.write(filepath.Join(folder, "older.book"), note.head.String()); err != nil {
				t.Fatal(err)
			}
			force(t, unguard(t, b), "UPDATE facts SET who = 'B.' WHERE seq = 2")
			wantError(t, b.Backup(ctx, filepath.Join(folder, "monday.book"), journal.Head.String), "The backup was not kept")
		})
	}
}
