//go:build postgres

package transfer_test

import (
	"bytes"
	"context"
	"errors"
	"fmt"
	"testing"
	"time"

	"tenthpoint/internal/book"
	"tenthpoint/internal/book/sqlite"
	"tenthpoint/internal/headoffice"
	"tenthpoint/internal/headoffice/central"
	"tenthpoint/internal/headoffice/officetest"
	"tenthpoint/internal/headoffice/transfer"
	"tenthpoint/internal/journal"
	"tenthpoint/internal/message"
)

var ctx = context.Background()

// A text that the book keeps, and its hash.
const (
	theText  = "an edition\n\"é\"\n"
	textHash = "7aff7f8146d404aecb879f9a5642c35c2e917f315c130762ad1f617573752f0e"
)

// bookOf is a book of some facts, with an edition.
func bookOf(t testing.TB, facts ...journal.Fact) *sqlite.Book {
	t.Helper()
	b, err := sqlite.OpenScratch()
	officetest.Must(t, err)
	t.Cleanup(func() { officetest.Must(t, b.Close()) })
	enter(t, b, facts...)
	officetest.Must(t, b.Write(ctx, func(tx book.Tx) error {
		return tx.KeepEdition("an-edition", textHash, theText)
	}))
	return b
}

// enter enters facts in a book, which links them as they were.
func enter(t testing.TB, b *sqlite.Book, facts ...journal.Fact) {
	t.Helper()
	officetest.Must(t, b.Write(ctx, func(tx book.Tx) error {
		for _, f := range facts {
			entered, err := tx.Append(journal.Entry{At: f.At, Who: f.Who, Desk: f.Desk, Kind: f.Kind, Subject: f.Subject, Body: f.Body})
			if err != nil || entered.Hash != f.Hash {
				return fmt.Errorf("fact %d was entered as %v: %w", f.Seq, entered, err)
			}
		}
		return nil
	}))
}

// wantSame wants a branch of the office to hold just the facts of a book, to the byte.
func wantSame(t testing.TB, o *officetest.Office, letters string, branch int, b *sqlite.Book) {
	t.Helper()
	chains, err := o.Chains(ctx, letters)
	officetest.Must(t, err)
	got := officetest.Kept(t, o.Office, chains[branch-1])
	n := 0
	for f, err := range b.Facts(ctx, book.FactFilter{}) {
		officetest.Must(t, err)
		if n >= len(got) || fmt.Sprint(got[n]) != fmt.Sprint(f) {
			t.Fatalf("the office has %d facts and not fact %d as the book has it", len(got), f.Seq)
		}
		n++
	}
	if n != len(got) {
		t.Errorf("the office has %d facts, the book %d", len(got), n)
	}
}

// Over a line that is cut anywhere, again and again, the chain arrives whole.
func TestSendsThroughCuts(t *testing.T) {
	o := officetest.New(t)
	o.Site("KH")
	b := bookOf(t, officetest.Chained(nil, "a", 400)...)
	line := officetest.NewLine(t, o, 17)
	line.Cut(60_000)
	line.Slow(50 * time.Microsecond)
	var last int64
	progress := func(at, of int64) {
		if at < last || of != 400 {
			t.Errorf("progress went from %d to %d of %d", last, at, of)
		}
		last = at
	}
	for tries := 1; ; tries++ {
		err := sendOver(line, b, transfer.Options{MostFacts: 20, Progress: progress})
		if err == nil {
			break
		}
		if !errors.Is(err, message.Device) || tries > 200 {
			t.Fatalf("after %d tries: %v", tries, err)
		}
	}
	if line.Cuts == 0 {
		t.Error("the line was never cut")
	}
	wantSame(t, o, "KH", 1, b)
}

func sendOver(line *officetest.Line, b *sqlite.Book, how transfer.Options) error {
	at, err := line.Open("KH")
	if err != nil {
		return err
	}
	_, err = transfer.Send(ctx, b, at, "KH", how)
	return errors.Join(err, at.Close())
}

// A book restored from an old copy is found before it sends anything. Worked on all the same, it is
// another branch, and both go on.
func TestOldCopy(t *testing.T) {
	o := officetest.New(t)
	kh := o.As("KH")
	facts := officetest.Chained(nil, "a", 80)
	b := bookOf(t, facts...)
	sent, err := transfer.Send(ctx, b, kh, "KH", transfer.Options{})
	officetest.Must(t, err)
	if sent.From.Seq != 0 || sent.To != journal.HeadOf(facts[79]) || sent.Branch != 1 {
		t.Errorf("sent %+v", sent)
	}

	old := bookOf(t, facts[:50]...)
	var behind transfer.Behind
	if _, err = transfer.Send(ctx, old, kh, "KH", transfer.Options{}); !errors.As(err, &behind) || behind.Book.Seq != 50 || behind.Office.Seq != 80 {
		t.Errorf("an old copy: %v", err)
	}
	wantSame(t, o, "KH", 1, b)

	enter(t, old, officetest.Chained(&facts[49], "b", 7)...)
	if sent, err = transfer.Send(ctx, old, kh, "KH", transfer.Options{MostFacts: 3}); err != nil || !sent.Forked || sent.From.Seq != 50 || sent.Branch != 2 {
		t.Errorf("an old copy worked on: %+v, %v", sent, err)
	}
	enter(t, b, officetest.Chained(&facts[79], "c", 2)...)
	if sent, err = transfer.Send(ctx, b, kh, "KH", transfer.Options{}); err != nil || sent.Forked || sent.From.Seq != 80 || sent.Branch != 1 {
		t.Errorf("the first book goes on: %+v, %v", sent, err)
	}
	wantSame(t, o, "KH", 1, b)
	wantSame(t, o, "KH", 2, old)
	noted, err := o.Faults(ctx)
	officetest.Must(t, err)
	if len(noted) != 2 || noted[0].Name != "behind" || noted[1].Name != "fork" || noted[1].Seq != 51 {
		t.Errorf("the office noted %v", noted)
	}
}

// An office that lost what it acknowledged is told so, and gets it again.
func TestOfficeLostFacts(t *testing.T) {
	facts := officetest.Chained(nil, "a", 30)
	b := bookOf(t, facts...)
	o := officetest.New(t)
	kh := o.As("KH")
	var checkpoint journal.Head
	keep := transfer.Options{Keep: func(h journal.Head) error { checkpoint = h; return nil }}
	if _, err := transfer.Send(ctx, bookOf(t, facts[:20]...), kh, "KH", transfer.Options{}); err != nil {
		t.Fatal(err)
	}
	keep.Acknowledged = journal.HeadOf(facts[24])
	sent, err := transfer.Send(ctx, b, kh, "KH", keep)
	officetest.Must(t, err)
	if sent.Lost != 5 || sent.To.Seq != 30 || checkpoint != sent.To {
		t.Errorf("sent %+v, checkpoint %v", sent, checkpoint)
	}
	wantSame(t, o, "KH", 1, b)
}

// A full disk at the office is said; nothing is lost, and sending goes on when there is room.
func TestFullDisk(t *testing.T) {
	o := officetest.New(t)
	kh := o.As("KH")
	b := bookOf(t, officetest.Chained(nil, "a", 30)...)
	o.Raw(`CREATE FUNCTION full_disk() RETURNS trigger LANGUAGE plpgsql AS $$ BEGIN
		IF new.seq > 12 THEN RAISE EXCEPTION 'could not extend file: No space left on device' USING ERRCODE = 'disk_full'; END IF; RETURN new; END $$;
		CREATE TRIGGER full_disk BEFORE INSERT ON facts FOR EACH ROW EXECUTE FUNCTION full_disk()`)
	sent, err := transfer.Send(ctx, b, kh, "KH", transfer.Options{MostFacts: 10})
	if !errors.Is(err, message.Storage) || sent.To.Seq != 10 {
		t.Errorf("sent %+v, %v", sent, err)
	}
	o.Raw("DROP TRIGGER full_disk ON facts")
	if sent, err = transfer.Send(ctx, b, kh, "KH", transfer.Options{MostFacts: 10}); err != nil || sent.From.Seq != 10 {
		t.Errorf("sent %+v, %v", sent, err)
	}
	wantSame(t, o, "KH", 1, b)
}

// A site that the office does not know for this role is told so.
func TestUnknownSite(t *testing.T) {
	o := officetest.New(t)
	kh := o.As("KH")
	o.Site("ELM")
	b := bookOf(t, officetest.Chained(nil, "a", 3)...)
	if _, err := transfer.Send(ctx, b, kh, "ELM", transfer.Options{}); !errors.Is(err, message.Refused) {
		t.Errorf("as another site: %v", err)
	}
	if _, err := transfer.Send(ctx, b, o.Office, "XX", transfer.Options{}); !errors.Is(err, message.NotFound) {
		t.Errorf("a site that is not there: %v", err)
	}
}

// What went on a stick is what went over the line, and both may be used in turn.
func TestStick(t *testing.T) {
	o := officetest.New(t)
	kh := o.As("KH")
	facts := officetest.Chained(nil, "a", 60)
	b := bookOf(t, facts[:40]...)
	pack := func(since journal.Head) []byte {
		var stick bytes.Buffer
		_, err := transfer.Pack(ctx, b, "KH", since, &stick)
		officetest.Must(t, err)
		return stick.Bytes()
	}
	whole := pack(journal.Head{})
	for _, cut := range []int{0, 1, len(whole) / 3, len(whole) - 60, len(whole) - 4} {
		if _, _, err := transfer.Take(ctx, bytes.NewReader(whole[:cut]), o.Office, transfer.Options{}); !errors.Is(err, message.Invalid) {
			t.Errorf("%d bytes of %d: %v", cut, len(whole), err)
		}
	}
	for range 2 {
		letters, sent, err := transfer.Take(ctx, bytes.NewReader(whole), o.Office, transfer.Options{MostFacts: 7})
		if err != nil || letters != "KH" || sent.To != journal.HeadOf(facts[39]) {
			t.Fatalf("took %s %+v: %v", letters, sent, err)
		}
	}
	wantSame(t, o, "KH", 1, b)

	enter(t, b, facts[40:50]...)
	if _, err := transfer.Send(ctx, b, kh, "KH", transfer.Options{}); err != nil {
		t.Fatal(err)
	}
	enter(t, b, facts[50:]...)
	ahead := pack(journal.HeadOf(facts[54]))
	if _, _, err := transfer.Take(ctx, bytes.NewReader(ahead), o.Office, transfer.Options{}); !errors.Is(err, message.Refused) {
		t.Errorf("a stick that leaves facts out: %v", err)
	}
	if _, _, err := transfer.Take(ctx, bytes.NewReader(pack(journal.HeadOf(facts[44]))), o.Office, transfer.Options{}); err != nil {
		t.Error(err)
	}
	wantSame(t, o, "KH", 1, b)
	if _, err := transfer.Pack(ctx, b, "KH", journal.Head{Seq: 7, Hash: facts[7].Hash}, new(bytes.Buffer)); !errors.Is(err, message.Refused) {
		t.Errorf("packed behind a head that is not the book's: %v", err)
	}
}

// Texts that facts name come along, once.
func TestTexts(t *testing.T) {
	o := officetest.New(t)
	kh := o.As("KH")
	b := bookOf(t, officetest.Chained(nil, "a", 3)...)
	for range 2 {
		_, err := transfer.Send(ctx, b, kh, "KH", transfer.Options{})
		officetest.Must(t, err)
	}
	texts, err := o.Texts(ctx, "KH")
	officetest.Must(t, err)
	want := []headoffice.Text{{ID: "an-edition", SHA256: textHash, Text: theText}}
	if fmt.Sprint(texts) != fmt.Sprint(want) {
		t.Errorf("the office keeps %v", texts)
	}
}

// Ways to an office that cannot be gone, each with a sentence of its kind.
func TestNoWay(t *testing.T) {
	o := officetest.New(t)
	for name, way := range map[string]struct {
		server, schema string
		kind           message.Kind
	}{
		"no server":    {"host=/nowhere dbname=postgres user=x", o.Schema, message.Device},
		"no database":  {o.Server + " dbname=nowhere", o.Schema, message.NotFound},
		"no office":    {o.Server, "no_office", message.NotFound},
		"no role":      {o.Server + " user=nobody_here", o.Schema, message.NotSignedIn},
		"no address":   {"postgres://[", o.Schema, message.Invalid},
		"not invited":  {o.Server + " user=" + stranger(o), o.Schema, message.NotFound},
		"wrong socket": {"host=127.0.0.1 port=1 dbname=postgres user=x", o.Schema, message.Device},
	} {
		t.Run(name, func(t *testing.T) {
			at, err := central.Open(ctx, way.server, way.schema)
			if err == nil {
				_ = at.Close()
			}
			if !errors.Is(err, way.kind) {
				t.Errorf("got %v, want %s", err, way.kind)
			}
		})
	}
}

// stranger is a role that signs in and has no right at the office.
func stranger(o *officetest.Office) string {
	o.Raw("DO $$ BEGIN IF to_regrole('stranger') IS NULL THEN CREATE ROLE stranger LOGIN; END IF; END $$")
	return "stranger"
}

// An office whose tables are a step behind this program is not worked in.
func TestOlderOffice(t *testing.T) {
	o := officetest.New(t)
	o.Raw("DELETE FROM office_steps")
	o.Raw("INSERT INTO office_steps (step) VALUES (0)")
	if at, err := central.Open(ctx, o.Server, o.Schema); !errors.Is(err, message.Storage) {
		t.Errorf("an office at step 0: %v %v", at, err)
	}
	o.Raw("INSERT INTO office_steps (step) VALUES (1), (99)")
	at, err := central.Open(ctx, o.Server, o.Schema)
	officetest.Must(t, err)
	officetest.Must(t, at.Close())
}
