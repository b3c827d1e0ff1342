//go:build postgres

package engines_test

import (
	"context"
	"encoding/json"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"tenthpoint/internal/audit"
	"tenthpoint/internal/book"
	"tenthpoint/internal/book/engines"
	"tenthpoint/internal/demo"
	"tenthpoint/internal/journal"
	"tenthpoint/internal/message"
	"tenthpoint/internal/scalehouse"
	"tenthpoint/schedules"
)

var ctx = context.Background()

// address is a book on the server that go run ./cmd/task postgres has started.
func address(user, schema string) string {
	for _, setting := range strings.Fields(os.Getenv("TENTHPOINT_POSTGRES")) {
		if folder, is := strings.CutPrefix(setting, "host="); is {
			return fmt.Sprintf("postgres://%s@/postgres?host=%s&schema=%s", user, folder, schema)
		}
	}
	return ""
}

func must(t testing.TB, err error) {
	t.Helper()
	if err != nil {
		t.Fatal(err)
	}
}

// noon of a day on which the shipped rates are in force.
var noon = time.Date(2026, 11, 3, 12, 0, 0, 0, time.UTC)

func options(t testing.TB) demo.Options {
	t.Helper()
	editions, err := schedules.Editions()
	must(t, err)
	return demo.Options{Loads: 80, Seed: 7, Now: noon, Rates: editions}
}

// contents is all that a desk or a check reads of a book.
func contents(t testing.TB, b engines.Book) string {
	t.Helper()
	var out strings.Builder
	say := func(what any, err error) {
		t.Helper()
		must(t, err)
		text, err := json.Marshal(what)
		must(t, err)
		fmt.Fprintf(&out, "%s\n", text)
	}
	for f, err := range b.Facts(ctx, book.FactFilter{}) {
		say(f, err)
	}
	for row, err := range b.EachLoad(ctx) {
		say(row, err)
	}
	series, err := b.Series(ctx)
	must(t, err)
	for _, name := range series {
		last, err := b.LastNumber(ctx, name)
		say([]any{name, last}, err)
	}
	records, err := b.AllRecords(ctx)
	say(records, err)
	editions, err := b.EditionHashes(ctx)
	say(editions, err)
	stock, err := b.StockDays(ctx, "", "")
	say(stock, err)
	lines, err := b.LineDays(ctx, "", "")
	say(lines, err)
	bins, err := b.BinDays(ctx, "", "", "")
	say(bins, err)
	before, err := b.BinsBefore(ctx, "2026-10-20")
	say(before, err)
	shelf, err := b.Shelf(ctx, book.ShelfFilter{Gone: "sample.discarded"})
	say(shelf, err)
	origins, err := b.Origins(ctx)
	say(origins, err)
	found, err := b.Search(ctx, book.Search{Limit: 30, Terms: []book.Term{{Text: "a"}}})
	say(found, err)
	return out.String()
}

// A season is the same book in both engines, row for row; it is sound, and so is its backup.
func TestSeasonIsTheSameBookOnAServer(t *testing.T) {
	folder := t.TempDir()
	file, err := engines.Open(filepath.Join(folder, "house.book"), book.Options{Create: true})
	must(t, err)
	defer file.Close()
	server, err := engines.Open(address("tenthpoint", "season"), book.Options{Create: true})
	must(t, err)
	defer server.Close()
	for _, b := range []engines.Book{file, server} {
		must(t, demo.Fill(ctx, b, options(t), nil))
	}
	want := contents(t, file)
	wantContents(t, "the book on the server", contents(t, server), want)
	d, err := scalehouse.Open(ctx, server, scalehouse.Options{Rates: options(t).Rates, Place: time.UTC, Clock: func() time.Time { return noon }})
	must(t, err)
	wantSound(t, d)
	must(t, server.Backup(ctx, filepath.Join(folder, "backup.book"), journal.Head.String))
	backup, err := engines.Open(filepath.Join(folder, "backup.book"), book.Options{ReadOnly: true})
	must(t, err)
	defer backup.Close()
	wantContents(t, "its backup", contents(t, backup), want)
}

// wantSound verifies the whole book of a desk.
func wantSound(t *testing.T, d *scalehouse.Desk) {
	t.Helper()
	sound, err := audit.Verify(ctx, d, d.Book(), nil)
	must(t, err)
	if len(sound.Problems) > 0 || sound.Tickets == 0 {
		t.Errorf("%+v", sound)
	}
}

// wantContents names the first line that differs.
func wantContents(t *testing.T, name, got, want string) {
	t.Helper()
	if got == want {
		return
	}
	is, was := strings.Split(got, "\n"), strings.Split(want, "\n")
	for i := range min(len(is), len(was)) {
		if is[i] != was[i] {
			t.Fatalf("%s differs in line %d:\n%.600s\nwant\n%.600s", name, i, is[i], was[i])
		}
	}
	t.Fatalf("%s has %d lines, want %d", name, len(is), len(was))
}

// Only a book on a server lets users in, and it goes by the server's clock.
func TestWhatOnlyAServerHas(t *testing.T) {
	file, err := engines.Open(filepath.Join(t.TempDir(), "house.book"), book.Options{Create: true})
	must(t, err)
	defer file.Close()
	if err := engines.LetIn(ctx, file, "clerk", true); message.KindOf(err) != message.Refused {
		t.Errorf("a file let a user in: %v", err)
	}
	server, err := engines.Open(address("tenthpoint", "clock"), book.Options{Create: true})
	must(t, err)
	defer server.Close()
	if err := engines.LetIn(ctx, server, "nobody_known", true); message.KindOf(err) != message.NotFound {
		t.Errorf("a user that is not there was let in: %v", err)
	}
	for _, b := range []engines.Book{file, server} {
		clock, err := engines.Clock(ctx, b, func() time.Time { return noon })
		must(t, err)
		if off := clock().Sub(noon).Abs(); off > time.Second { // the server is this computer
			t.Errorf("the clock of %s is off by %s", b.Path(), off)
		}
	}
}
