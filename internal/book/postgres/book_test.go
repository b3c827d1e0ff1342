//go:build postgres

package postgres

import (
	"encoding/json"
	"errors"
	"flag"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"testing/fstest"
	"time"

	"github.com/jackc/pgx/v5"

	"tenthpoint/internal/book"
	"tenthpoint/internal/book/sqlite"
	"tenthpoint/internal/digest"
	"tenthpoint/internal/journal"
	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
)

var update = flag.Bool("update", false, "write schema.json anew")

func aFact() journal.Entry {
	return journal.Entry{At: journal.Stamp(time.Now()), Who: "A. Clerk", Desk: "scale house", Kind: "load.opened", Subject: "load L1", Body: []byte(`{"note":"Körner ½"}`)}
}

// filled is a book with a fact, a number, an edition, a record, a draft and a ticket.
func filled(t testing.TB) *Book {
	t.Helper()
	b := openedAs(t, desk, newSchema(t))
	must(t, b.Write(ctx, func(tx book.Tx) error {
		number, err := tx.NextNumber("ticket")
		must(t, err)
		_, err = tx.Append(aFact())
		must(t, err)
		must(t, tx.KeepEdition("corn", digest.Of("rates"), "rates"))
		must(t, tx.PutRecord(book.Record{Kind: "grower", ID: "101", Seq: 1, Body: []byte(`{"name":"Ash"}`)}))
		must(t, tx.SaveDraft(book.Draft{Place: "load", ID: "L1", Texts: `{"truck":"7"}`}))
		lb := quantity.Int(1000, quantity.Lb)
		return tx.PutLoad(book.LoadRow{ID: "L1", Phase: "issued", Direction: "in", Commodity: "corn", Bin: "A", Grower: "101", GrowerName: "Ash",
			Ticket: number, IssuedDay: "2026-10-01", Owners: []string{"101", "102"}, Figures: map[string]quantity.Amount{"net": lb, "settled": lb}})
	}))
	return b
}

// Tables, indexes, triggers and functions are those that the steps make.
func TestNewBookIsSound(t *testing.T) {
	b := filled(t)
	if *update {
		parts, err := list(b.factReader.during(ctx), scanPart, selectParts)
		must(t, err)
		text, err := json.MarshalIndent(parts, "", " ")
		must(t, err)
		must(t, os.WriteFile("schema.json", append(text, '\n'), 0o644))
		t.Fatal("schema.json is written; run the test again")
	}
	wantProblems(t, b, 0)
}

func wantProblems(t *testing.T, b *Book, n int) {
	t.Helper()
	problems, err := b.VerifyFile(ctx)
	must(t, err)
	broken, _, err := b.VerifyChain(ctx)
	must(t, err)
	altered, _, err := b.VerifyEditions(ctx)
	must(t, err)
	stock, err := b.VerifyStock(ctx)
	must(t, err)
	if all := slices.Concat(problems, broken, altered, stock); len(all) != n {
		t.Errorf("%d problems, want %d: %v", len(all), n, all)
	}
}

// Whoever gets past the triggers is found.
func TestTamperingIsFound(t *testing.T) {
	const open, shut = "ALTER TABLE %[1]s DISABLE TRIGGER USER; ", "; ALTER TABLE %[1]s ENABLE TRIGGER USER"
	for _, c := range []struct {
		name, table, statement string
		problems               int
	}{
		{"a fact changed", "facts", open + "UPDATE facts SET who = 'B. Clerk'" + shut, 1},
		{"an edition changed", "editions", open + "UPDATE editions SET text = 'other'" + shut, 1},
		{"a guard left open", "facts", "ALTER TABLE facts DISABLE TRIGGER USER", 2},
		{"a guard removed", "series", "DROP TRIGGER series_never_go ON series", 1},
		{"a guard that lets through", "", "CREATE OR REPLACE FUNCTION refuse() RETURNS trigger LANGUAGE plpgsql AS 'BEGIN RETURN NEW; END'", 1},
		{"a table too many", "", "CREATE TABLE aside (id text)", 1},
		{"a right too many", "", "GRANT INSERT, UPDATE ON facts TO desk", 1},
		{"a row of the position changed", "", "UPDATE stock SET balance = '999 lb'", 1},
		{"owners misplaced", "", "UPDATE owners SET place = place + 10", 1},
	} {
		t.Run(c.name, func(t *testing.T) {
			b := filled(t)
			statement := c.statement
			if c.table != "" && strings.Contains(statement, "%") {
				statement = fmt.Sprintf(statement, c.table)
			}
			must(t, asOwner(t, b.line.address.schema, statement))
			wantProblems(t, b, c.problems)
		})
	}
}

// A desk and an examiner have no way past the program.
func TestRights(t *testing.T) {
	schema := filled(t).line.address.schema
	statements := []string{
		"INSERT INTO facts SELECT seq + 1, at, who, desk, kind, subject, body, hash, 'x', '' FROM facts", "UPDATE facts SET who = 'x'", "DELETE FROM facts", "TRUNCATE facts",
		"UPDATE series SET last = last + 1", "UPDATE stock SET balance = '1 lb'", "DELETE FROM loads", "UPDATE head SET writes = 0",
		"DROP TABLE facts", "ALTER TABLE facts DISABLE TRIGGER USER", "SELECT let_in('desk', true)", "CREATE TABLE aside (id text)",
	}
	for user, more := range map[string][]string{desk: nil, examiner: {"INSERT INTO drafts VALUES ('load', 'L9', '', '', '{}')", "SELECT append(0, '{}')"}} {
		b := openedAs(t, user, schema)
		for _, statement := range append(slices.Clone(statements), more...) {
			if err := b.exec(ctx, statement); code(errors.Unwrap(err)) != noRights && !strings.Contains(fmt.Sprint(err), noRights) {
				t.Errorf("%s: %s: %v", user, statement, err)
			}
		}
		if head, some, err := b.Head(ctx); err != nil || !some || head.Seq != 1 {
			t.Errorf("%s reads %+v, %v", user, head, err)
		}
	}
	reading, err := Open(ctx, addressOf(examiner, schema), book.Options{ReadOnly: true})
	must(t, err)
	defer reading.Close()
	if err := reading.Write(ctx, func(book.Tx) error { return nil }); message.KindOf(err) != message.Storage {
		t.Errorf("written by one who only reads: %v", err)
	}
}

// A fact that does not carry the hash of what it says gets in for nobody.
func TestServerChecksTheHash(t *testing.T) {
	b := openedAs(t, desk, newSchema(t))
	f := journal.Link(nil, aFact())
	for name, harm := range map[string]func(*journal.Fact){
		"a body":    func(f *journal.Fact) { f.Body = []byte("{}") },
		"a hash":    func(f *journal.Fact) { f.Hash = f.Prev },
		"a number":  func(f *journal.Fact) { f.Seq = 2 },
		"the chain": func(f *journal.Fact) { f.Prev = f.Hash },
	} {
		harmed := f
		harm(&harmed)
		p := newPending()
		p.facts = []journal.Fact{harmed}
		act, err := p.act()
		must(t, err)
		if err := b.exec(ctx, "SELECT append(0, $1)", act); err == nil {
			t.Errorf("%s: was taken", name)
		}
	}
}

// A backup is a book of one computer with the same chain and the same read models.
func TestBackupIsASoundBook(t *testing.T) {
	b := filled(t)
	path := filepath.Join(t.TempDir(), "backup.book")
	must(t, b.Backup(ctx, path, journal.Head.String))
	if err := b.Backup(ctx, path, journal.Head.String); err == nil {
		t.Error("a backup was written over another")
	}
	copied, err := sqlite.Open(path, book.Options{ReadOnly: true})
	must(t, err)
	defer copied.Close()
	is, _, err := copied.Head(ctx)
	must(t, err)
	was, _, err := b.Head(ctx)
	must(t, err)
	if is.Hash != was.Hash {
		t.Errorf("the copy ends with %s, the book with %s", is.Hash, was.Hash)
	}
	if last, err := copied.LastNumber(ctx, "ticket"); last != 1 || err != nil {
		t.Errorf("the last ticket is %d, %v", last, err)
	}
	rows, err := copied.Loads(ctx, book.LoadFilter{Grower: "102"})
	if err != nil || len(rows) != 1 || rows[0].Figures["net"].String() != "1,000 lb" {
		t.Errorf("%+v, %v", rows, err)
	}
	if _, text, err := copied.Edition(ctx, digest.Of("rates")); text != "rates" || err != nil {
		t.Errorf("%q, %v", text, err)
	}
	if _, err := os.Stat(path + ".head.txt"); err != nil {
		t.Error(err)
	}
}

// A book that is tampered with is not kept as a backup.
func TestBackupOfABrokenBook(t *testing.T) {
	b := filled(t)
	must(t, asOwner(t, b.line.address.schema, "ALTER TABLE facts DISABLE TRIGGER USER; UPDATE facts SET who = 'B. Clerk'"))
	path := filepath.Join(t.TempDir(), "backup.book")
	if err := b.Backup(ctx, path, journal.Head.String); message.KindOf(err) != message.Storage {
		t.Errorf("%v", err)
	}
	if _, err := os.Stat(path); err == nil {
		t.Error("it was kept")
	}
}

// The clock of a desk that is far off the server's is kept beside its facts.
func TestDeskClock(t *testing.T) {
	b := openedAs(t, desk, newSchema(t))
	for _, c := range []struct {
		off  time.Duration
		kept bool
	}{{2 * time.Second, false}, {time.Minute, true}, {-time.Minute, true}} {
		must(t, b.Write(ctx, func(tx book.Tx) error {
			of := tx.(*Tx)
			of.clock = of.clock.Add(c.off)
			_, err := tx.Append(aFact())
			return err
		}))
		at, _, err := one(b.factReader.during(ctx), scanText, "SELECT desk_at FROM facts ORDER BY seq DESC LIMIT 1")
		if err != nil || (at != "") != c.kept {
			t.Errorf("%s off: %q, %v", c.off, at, err)
		}
	}
}

// An act that was overtaken is run again, on the book as it then is.
func TestOvertakenActIsRunAgain(t *testing.T) {
	b := openedAs(t, desk, newSchema(t))
	other := openedAs(t, desk, b.line.address.schema)
	runs := 0
	must(t, b.Write(ctx, func(tx book.Tx) error {
		if runs++; runs == 1 { // another desk that did not wait for its turn
			p := newPending()
			p.facts = []journal.Fact{journal.Link(nil, aFact())}
			act, err := p.act()
			must(t, err)
			must(t, other.exec(ctx, "SELECT append(0, $1)", act))
		}
		_, err := tx.Append(aFact())
		return err
	}))
	if head, _, err := b.Head(ctx); runs != 2 || head.Seq != 2 || err != nil {
		t.Errorf("%d runs, %d facts, %v", runs, head.Seq, err)
	}
	wantProblems(t, b, 0)
}

// Steps are taken once, by who owns the book; a newer book and another history are refused.
func TestSteps(t *testing.T) {
	shipped, err := fs.ReadDir(tables, "tables")
	must(t, err)
	files := func(more ...string) fstest.MapFS {
		out := fstest.MapFS{}
		for _, step := range shipped {
			text, err := tables.ReadFile("tables/" + step.Name())
			must(t, err)
			out[step.Name()] = &fstest.MapFile{Data: text}
		}
		for i, text := range more {
			out[fmt.Sprintf("%04d_more.sql", len(shipped)+1+i)] = &fstest.MapFile{Data: []byte(text)}
		}
		return out
	}
	schema := newSchema(t)
	later := files("CREATE TABLE more (id text)")
	for _, c := range []struct {
		name, user string
		o          book.Options
		files      fstest.MapFS
		kind       message.Kind
	}{
		{"a desk may not bring it up to date", desk, book.Options{}, later, message.Storage},
		{"nor is it read meanwhile", examiner, book.Options{ReadOnly: true}, later, message.Storage},
		{"a step that fails", owner, book.Options{}, files("CREATE TABLE facts (id text)"), message.Storage},
		{"another history", owner, book.Options{}, fstest.MapFS{"0001_book.sql": {Data: []byte("SELECT 1")}}, message.Storage},
	} {
		b, err := openWith(ctx, addressOf(c.user, schema), c.o, c.files)
		if err == nil {
			t.Errorf("%s: was opened", c.name)
			_ = b.Close()
		} else if message.KindOf(err) != c.kind {
			t.Errorf("%s: %q, %v", c.name, message.KindOf(err), err)
		}
	}
	for range 2 {
		b, err := openWith(ctx, addressOf(owner, schema), book.Options{}, later)
		must(t, err)
		must(t, b.Close())
	}
	if _, err := Open(ctx, addressOf(owner, schema), book.Options{}); message.KindOf(err) != message.Storage {
		t.Errorf("a newer book: %v", err)
	}
}

// A server that acknowledges what it may lose is refused, and so is every address that leads nowhere.
func TestRefusedAddresses(t *testing.T) {
	schema := newSchema(t)
	root, err := pgx.Connect(ctx, addressOf(owner, "none"))
	must(t, err)
	defer root.Close(ctx)
	for _, statement := range []string{"DROP ROLE IF EXISTS careless", "CREATE ROLE careless LOGIN", "ALTER ROLE careless SET synchronous_commit = off"} {
		_, err := root.Exec(ctx, statement)
		must(t, err)
	}
	_, err = root.Exec(ctx, "CREATE SCHEMA other_"+schema+" CREATE TABLE theirs (id text)")
	must(t, err)
	in := folder()
	for _, c := range []struct {
		name, address string
		create        bool
		kind          message.Kind
	}{
		{"commits that are not waited for", addressOf("careless", schema), false, message.Storage},
		{"no such database", "postgres://desk@/nowhere?host=" + in, false, message.NotFound},
		{"no such book", addressOf(desk, "nobody"), false, message.NotFound},
		{"no such user", addressOf("stranger", schema), false, message.Storage},
		{"no server", "postgres://desk@127.0.0.1:1/postgres", false, message.Storage},
		{"no such host", "postgres://desk@nowhere.invalid/postgres", false, message.Storage},
		{"no address", "postgres://%zz", false, message.Storage},
		{"a password in the address", "postgres://desk:secret@/postgres?host=" + in, false, message.Storage},
		{"a schema of other things", addressOf(owner, "other_"+schema), true, message.Storage},
		{"a name that needs quotes", addressOf(owner, "My+Book"), true, message.Storage},
		{"no right to make one", addressOf(desk, "mine"), true, message.Storage},
	} {
		b, err := Open(ctx, c.address, book.Options{Create: c.create})
		if err == nil {
			t.Errorf("%s: was opened", c.name)
			_ = b.Close()
			continue
		}
		if message.KindOf(err) != c.kind || strings.Contains(err.Error(), "secret") {
			t.Errorf("%s: %q, %v", c.name, message.KindOf(err), err)
		}
	}
}
