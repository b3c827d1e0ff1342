package mirror_test

import (
	"context"
	"iter"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"
	"time"

	"tenthpoint/internal/audit"
	"tenthpoint/internal/book"
	"tenthpoint/internal/book/sqlite"
	"tenthpoint/internal/book/sqlite/sqlitetest"
	"tenthpoint/internal/demo"
	"tenthpoint/internal/elevator"
	"tenthpoint/internal/headoffice"
	"tenthpoint/internal/headoffice/mirror"
	"tenthpoint/internal/journal"
	"tenthpoint/internal/numbering"
	"tenthpoint/internal/office/receipts"
	"tenthpoint/internal/opening"
	"tenthpoint/internal/position"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/ratefiles"
	"tenthpoint/internal/scalehouse"
	"tenthpoint/internal/scalehouse/housetest"
	"tenthpoint/internal/scalehouse/openings"
	acts "tenthpoint/internal/scalehouse/receipts"
	"tenthpoint/internal/title"
)

var ctx = context.Background()

func must(t testing.TB, err error) {
	t.Helper()
	if err != nil {
		t.Fatal(err)
	}
}

func scratch(t testing.TB) *sqlite.Book {
	t.Helper()
	b, err := sqlite.OpenScratch()
	must(t, err)
	t.Cleanup(func() { must(t, b.Close()) })
	return b
}

func textsOf(t testing.TB, b *sqlite.Book) (out []headoffice.Text) {
	t.Helper()
	hashes, err := b.EditionHashes(ctx)
	must(t, err)
	for _, ones := range hashes {
		for _, hash := range ones {
			id, text, err := b.Edition(ctx, hash)
			must(t, err)
			out = append(out, headoffice.Text{ID: id, SHA256: hash, Text: text})
		}
	}
	return out
}

// wantCopy makes a book again from another's chain, in pieces, and wants it to hold the same to the
// byte.
func wantCopy(t *testing.T, of *sqlite.Book) *sqlite.Book {
	t.Helper()
	again := scratch(t)
	last, _, err := of.Head(ctx)
	must(t, err)
	for from, to := int64(1), last.Seq/3; from <= last.Seq; from, to = to+1, min(to+last.Seq/3+1, last.Seq) {
		done, err := mirror.Extend(ctx, again, textsOf(t, of), of.Facts(ctx, book.FactFilter{FromSeq: from, ToSeq: to}))
		must(t, err)
		if done.NotShown != 0 || done.Facts != to-from+1 {
			t.Errorf("facts %d to %d: %+v", from, to, done)
		}
	}
	want, got := bookText(t, of), bookText(t, again)
	if got != want {
		wants, gots := strings.Split(want, "\n"), strings.Split(got, "\n")
		for i := range min(len(wants), len(gots)) {
			if wants[i] != gots[i] {
				t.Fatalf("line %d of %d is\n%s\nwant\n%s", i+1, len(wants), gots[i], wants[i])
			}
		}
		t.Fatalf("the copy has %d lines, the book %d", len(gots), len(wants))
	}
	return again
}

// bookText is all that a book holds but the last number of a sample: whether a sample's number was
// given by the book or typed does not stand in its fact, and a copy takes it for given.
func bookText(t testing.TB, b *sqlite.Book) string {
	return regexp.MustCompile(`(?m)^series \["sample".*\n`).ReplaceAllString(sqlitetest.Contents(t, b.Path()), "")
}

// A book made again from its chain holds the same to the byte: facts, lists, positions, numbers.
func TestABookIsMadeAgain(t *testing.T) {
	t.Run("every act", func(t *testing.T) { wantCopy(t, housetest.Season(t).Store) })
	t.Run("grain that changes its owner", func(t *testing.T) { wantCopy(t, receipted(t).Store) })
	t.Run("opened with balances", func(t *testing.T) { wantCopy(t, opened(t).Store) })
	t.Run("a season", func(t *testing.T) {
		b := scratch(t)
		set, err := ratefiles.ReadRates("")
		must(t, err)
		must(t, demo.Fill(ctx, b, demo.Options{Loads: 150, Seed: 5, Now: time.Date(2026, 10, 31, 18, 0, 0, 0, time.UTC), Place: time.UTC, Rates: set}, nil))
		again := wantCopy(t, b)
		d, err := scalehouse.Open(ctx, again, scalehouse.Options{Place: time.UTC})
		must(t, err)
		sound, err := audit.Verify(ctx, d, again, nil)
		must(t, err)
		if len(sound.Problems) > 0 || sound.Tickets < 100 {
			t.Errorf("the copy has %d tickets and the problems %v", sound.Tickets, sound.Problems)
		}
	})
}

// receipted is a house with a warehouse receipt that was surrendered and one in force.
func receipted(t *testing.T) *housetest.Scene {
	s := housetest.New(t).As(housetest.Manager)
	must(t, scalehouse.SetGrower(ctx, s.Desk, elevator.Grower{ID: "G1", Name: "Ada Field"}))
	id := s.Whole()
	d := s.Load(id).Details
	d.Terms = title.Terms{Under: title.OpenStorage}
	must(t, scalehouse.Amend(ctx, s.Desk, id, d))
	number, err := scalehouse.Issue(ctx, s.Desk, id)
	must(t, err)
	order := receipts.Order{Grower: "G1", Negotiable: true, Tickets: []receipts.Chosen{{Number: number}}}
	first, err := acts.Issue(ctx, s.Desk, order)
	must(t, err)
	_, err = acts.Surrender(ctx, s.Desk, first.Number, "handed in")
	must(t, err)
	_, err = acts.Issue(ctx, s.Desk, order)
	must(t, err)
	return s
}

// opened is a house that begins with balances and a receipt that is out, after an opening that was taken
// back.
func opened(t *testing.T) *housetest.Scene {
	s := housetest.New(t).As(housetest.Manager)
	must(t, scalehouse.SetBin(ctx, s.Desk, elevator.Bin{ID: "B1", Name: "Bin 1"}))
	day := s.Desk.Today()
	for range 2 {
		o, err := openings.Enter(ctx, s.Desk, opening.Opening{
			Day: day, Reason: "from the books before",
			Lying: []opening.Lying{{Bin: "B1", Commodity: "corn", Weight: quantity.Int(56_000, quantity.Lb)}},
			Lots: []opening.Lot{{Grower: "G1", Name: "Ada Field", Commodity: "corn", Quantity: quantity.Int(600, quantity.Bushel), Weight: quantity.Int(33_600, quantity.Lb),
				Terms: title.Terms{Under: title.OpenStorage}, Since: day.AddDays(-20), Receipt: &opening.OnReceipt{Number: 12, Day: day.AddDays(-9)}}},
			Owned: []opening.Owned{{Line: position.Sold, Commodity: "corn", Weight: quantity.Int(22_400, quantity.Lb)}},
		})
		must(t, err)
		if o.Number == 1 {
			_, err = openings.TakeBack(ctx, s.Desk, "a bin was left out")
			must(t, err)
		}
	}
	_, err := openings.StartAt(ctx, s.Desk, map[string]int64{numbering.Ticket: 51}, "the books before end there")
	must(t, err)
	return s
}

// then are facts, and behind them others linked to them.
func then(facts iter.Seq2[journal.Fact, error], more ...journal.Entry) iter.Seq2[journal.Fact, error] {
	return func(yield func(journal.Fact, error) bool) {
		var last *journal.Fact
		for f, err := range facts {
			if !yield(f, err) {
				return
			}
			last = &f
		}
		for _, d := range more {
			f := journal.Link(last, d)
			if !yield(f, nil) {
				return
			}
			last = &f
		}
	}
}

// What a newer program wrote is in the chain and counted, and nothing else suffers.
func TestNewerFactsWait(t *testing.T) {
	s := housetest.New(t)
	read, _ := s.Ticket()
	unread, _ := s.Ticket()
	at := "2027-01-01T00:00:00Z"
	newer := []journal.Entry{
		{At: at, Who: "x", Desk: "x", Kind: "drone.flown", Subject: "drone 1", Body: []byte(`{"height":"3"}`)},
		{At: at, Who: "x", Desk: "x", Kind: "house.truck", Subject: "house.truck 7", Body: []byte(`{"wings":"2"}`)},
		{At: at, Who: "x", Desk: "x", Kind: "ticket.blessed", Subject: "load " + unread, Body: []byte(`{}`)},
		{At: at, Who: "x", Desk: "x", Kind: "ticket.voided", Subject: "load " + unread, Body: []byte(`{"reason":"torn"}`)},
	}
	again := scratch(t)
	done, err := mirror.Extend(ctx, again, textsOf(t, s.Store), then(s.Store.Facts(ctx, book.FactFilter{}), newer...))
	must(t, err)
	if done.NotShown != 4 || done.Newer != "drone.flown" {
		t.Errorf("got %+v, want 4 not shown, the first a drone", done)
	}
	problems, count, err := again.VerifyChain(ctx)
	if must(t, err); len(problems) > 0 || count != done.Facts {
		t.Errorf("the chain of %d facts: %v", count, problems)
	}
	for _, id := range []string{read, unread} {
		rows, err := again.Loads(ctx, book.LoadFilter{ID: id})
		must(t, err)
		if len(rows) != 1 || rows[0].EndedDay != "" {
			t.Errorf("load %s is listed as %v", id, rows)
		}
	}
}

// Facts that do not follow are an error, and nothing of them is entered.
func TestOnlyWhatFollows(t *testing.T) {
	s := housetest.New(t)
	again := scratch(t)
	if _, err := mirror.Extend(ctx, again, nil, s.Store.Facts(ctx, book.FactFilter{FromSeq: 2})); err == nil {
		t.Error("a chain without its beginning became a book")
	}
	if _, some, err := again.Head(ctx); some || err != nil {
		t.Errorf("something was entered: %v, %v", some, err)
	}
}

// kindOf finds kinds of facts, as a method or as a constant.
var kindOf = regexp.MustCompile(`(?:\) Kind\(\) string\s*\{ return |[a-z]Kind\s*=\s*)"([a-z]+\.[a-z.-]+)"`)

// Every kind of fact in the program is known here, or the office would not show it.
func TestKnowsEveryKind(t *testing.T) {
	found := 0
	must(t, filepath.WalkDir("../..", func(path string, entry os.DirEntry, err error) error {
		if err != nil || entry.IsDir() || !strings.HasSuffix(path, ".go") || strings.HasSuffix(path, "_test.go") {
			return err
		}
		text, err := os.ReadFile(path)
		for _, match := range kindOf.FindAllSubmatch(text, -1) {
			found++
			if !mirror.Knows(string(match[1])) {
				t.Errorf("%s: the kind %q is not known to mirror", path, match[1])
			}
		}
		return err
	}))
	if found < 40 {
		t.Errorf("only %d kinds of facts were found", found)
	}
}
