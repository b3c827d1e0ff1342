package audit_test

import (
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"tenthpoint/internal/audit"
	"tenthpoint/internal/book"
	"tenthpoint/internal/book/sqlite"
	"tenthpoint/internal/book/sqlite/sqlitetest"
	"tenthpoint/internal/journal"
	"tenthpoint/internal/message"
	"tenthpoint/internal/scalehouse"
	"tenthpoint/internal/scalehouse/housetest"
)

// onDisk is a scene whose book is a file that waits for the disk.
func onDisk(t *testing.T) *scene {
	b, err := sqlite.Open(filepath.Join(t.TempDir(), "house.book"), book.Options{Create: true})
	must(t, err)
	return housetest.On(t, b)
}

// wantRolledBack requires that the book verifies, but does not hold a head that was noted of it.
func wantRolledBack(t *testing.T, b *sqlite.Book, noted journal.Head, want string) {
	t.Helper()
	d, err := scalehouse.Open(ctx, b, scalehouse.Options{Rates: housetest.Rates(t)})
	must(t, err)
	sound, err := audit.Verify(ctx, d, b, nil)
	must(t, err)
	if len(sound.Problems) > 0 {
		t.Errorf("by itself the book is not sound: %q", sound.Problems)
	}
	err = audit.HoldsHead(ctx, b, noted)
	if !errors.Is(err, message.Storage) || !strings.Contains(err.Error(), want) {
		t.Errorf("held against %s: %v, want %q", noted, err, want)
	}
}

// copyOf is a copy of a file opened as a book, with what is to lie beside it.
func copyOf(t *testing.T, text, wal []byte) *sqlite.Book {
	t.Helper()
	path := filepath.Join(t.TempDir(), "copy.book")
	must(t, os.WriteFile(path, text, 0o644))
	if wal != nil {
		must(t, os.WriteFile(path+"-wal", wal, 0o644))
	}
	b, err := sqlite.Open(path, book.Options{})
	must(t, err)
	t.Cleanup(func() { _ = b.Close() })
	return b
}

func read(t *testing.T, path string) []byte {
	t.Helper()
	text, err := os.ReadFile(path)
	must(t, err)
	return text
}

const shorter = "no longer holds"

func TestHeadTellsOfAnOldCopy(t *testing.T) {
	s := onDisk(t)
	s.Ticket()
	old := filepath.Join(t.TempDir(), "old.book")
	must(t, s.Store.Backup(ctx, old, journal.Head.String))
	s.Ticket()
	wantRolledBack(t, copyOf(t, read(t, old), nil), s.Noted(), shorter)
	if err := audit.HoldsHead(ctx, s.Store, journal.FindHeads(string(read(t, old+".head.txt")))[0]); err != nil {
		t.Errorf("the book does not hold the head beside its own backup: %v", err)
	}
}

func TestHeadTellsOfALostLog(t *testing.T) {
	s := onDisk(t)
	s.Ticket()
	text, wal := read(t, s.Store.Path()), read(t, s.Store.Path()+"-wal")
	if len(wal) == 0 {
		t.Fatal("there is no write-ahead log to lose")
	}
	// The set-up is in the file itself; what was written since is in the log alone.
	whole := copyOf(t, text, wal)
	if err := audit.HoldsHead(ctx, whole, s.Noted()); err != nil {
		t.Fatalf("with its log the copy is whole: %v", err)
	}
	flipped := append([]byte{}, wal...)
	flipped[len(flipped)*3/4] ^= 1
	wantRolledBack(t, copyOf(t, text, flipped), s.Noted(), shorter)
	wantRolledBack(t, copyOf(t, text, wal[:len(wal)/2]), s.Noted(), shorter)
}

func TestHeadTellsOfACutOffEnd(t *testing.T) {
	s := housetest.New(t)
	s.Ticket()
	back := []string{"DELETE FROM facts WHERE subject = 'load L2'", "DELETE FROM loads WHERE id = 'L2'", "UPDATE series SET last = 1 WHERE last = 2"}
	for table, format := range map[string]string{
		"stock":    "format('(%Q,%Q,%Q,%Q,%Q,%Q,%Q,%Q)', commodity, bin, unit, day, inward, outward, back, balance)",
		"owned":    "format('(%Q,%Q,%Q,%Q,%Q,%Q,%Q,%Q)', commodity, line, unit, day, inward, outward, back, balance)",
		"bin_days": "format('(%Q,%Q,%Q,%Q,%Q)', bin, commodity, unit, day, body)",
	} {
		rows := names(t, sqlitetest.Open(t, s.Store.Path()), "SELECT "+format+" FROM "+table)
		back = append(back, "DELETE FROM "+table, "INSERT INTO "+table+" VALUES "+strings.Join(rows, ", "))
	}
	s.Ticket()
	noted := s.Noted()
	sqlitetest.Unguarded(t, s.Store.Path(), back...)
	wantRolledBack(t, s.Store, noted, shorter)
}

func TestHeadTellsOfARewrittenChain(t *testing.T) {
	s := housetest.Season(t)
	noted := s.Noted()
	var statements []string
	var last *journal.Fact
	for f, err := range s.Store.Facts(ctx, book.FactFilter{}) {
		must(t, err)
		if f.Kind == "load.weighed" {
			f.Who = "Somebody Else"
		}
		again := journal.Link(last, journal.Entry{At: f.At, Who: f.Who, Desk: f.Desk, Kind: f.Kind, Subject: f.Subject, Body: f.Body})
		last = &again
		statements = append(statements, fmt.Sprintf("UPDATE facts SET who = '%s', prev = '%s', hash = '%s' WHERE seq = %d", again.Who, again.Prev, again.Hash, again.Seq))
	}
	sqlitetest.Unguarded(t, s.Store.Path(), statements...)
	wantRolledBack(t, s.Store, noted, "written again")
}

// Since a head only what came after it is looked at, but all of that.
func TestVerifySinceAHead(t *testing.T) {
	s := housetest.New(t)
	s.Ticket()
	noted := s.Noted()
	since := func() audit.Soundness {
		found, err := audit.VerifySince(ctx, s.Desk, s.Store, noted)
		must(t, err)
		return found
	}
	if found := since(); found.Facts != 0 || found.Loads != 0 || len(found.Problems) > 0 {
		t.Errorf("nothing came since: %+v", found)
	}
	s.Ticket()
	must(t, scalehouse.CloseDay(ctx, s.As(housetest.Manager).Desk, s.Today(), ""))
	if found := since(); found.Facts == 0 || found.Loads != 1 || found.Tickets != 1 || len(found.Problems) > 0 {
		t.Errorf("one ticket came since: %+v", found)
	}
	sqlitetest.Unguarded(t, s.Store.Path(), "UPDATE loads SET grower_name = 'Ida' WHERE ticket = 2")
	if found := since(); len(found.Problems) == 0 {
		t.Error("a changed row was not found")
	}
	noted.Hash = strings.Repeat("0", 64)
	if found := since(); len(found.Problems) == 0 {
		t.Error("another head was not told")
	}
}
