// Package booktest is the conformance suite of storage engines for a book. An engine's own tests
// call the parts that it claims: [Journal], [Numbers], [Position] and [Killed] for the least that can
// carry a journal, and [Bins] and [Lists] for a book that the program can work on.
package booktest

import (
	"context"
	"fmt"
	"iter"
	"slices"
	"testing"
	"time"

	"tenthpoint/internal/book"
	"tenthpoint/internal/journal"
	"tenthpoint/internal/quantity"
)

// Store is the least an engine keeps: a journal and the numbers given out.
type Store interface {
	Write(ctx context.Context, act func(book.Tx) error) error
	Facts(context.Context, book.FactFilter) iter.Seq2[journal.Fact, error]
	FactsOf(ctx context.Context, subject string) ([]journal.Fact, error)
	Head(context.Context) (last journal.Fact, some bool, err error)
	LastNumber(ctx context.Context, series string) (int64, error)
	Close() error
}

// Engine makes books for the suite.
type Engine[B Store] struct {
	// New makes an empty book.
	New func(testing.TB) B
	// Reopen opens the same book again, as another program would.
	Reopen func(testing.TB, B) B
	// Place names a book, so that another program can open it.
	Place func(B) string
	// Raw runs one SQL statement in the book, bypassing the engine, as anyone with access to the
	// file or the server could. It returns the book's own error.
	Raw func(t testing.TB, b B, statement string) error
}

var ctx = context.Background()

// entry is the i-th act of an invented season: three acts to a load.
func entry(i int) journal.Entry {
	kinds := []string{"load.opened", "load.weighed", "ticket.issued"}
	start := time.Date(2026, 10, 4, 12, 0, 0, 0, time.UTC)
	return journal.Entry{
		At: journal.Stamp(start.Add(time.Duration(i) * time.Minute)), Who: "A. Clerk", Desk: "scale house",
		Kind: kinds[i%3], Subject: fmt.Sprintf("load L%d", i/3+1),
		// Spaces, letters outside ASCII and a figure no binary fraction has: all of it must be
		// returned byte for byte, or no hash holds.
		Body: fmt.Appendf(nil, `{"figure":"%d.10 lb","note":"Körner ½  & \u0007"}`, 20000+i),
	}
}

func appendTo(t testing.TB, b Store, from, n int) {
	t.Helper()
	must(t, b.Write(ctx, func(tx book.Tx) error {
		for i := range n {
			if _, err := tx.Append(entry(from + i)); err != nil {
				return err
			}
		}
		return nil
	}))
}

// facts is the whole journal, its chain checked.
func facts(t testing.TB, b Store) []journal.Fact {
	t.Helper()
	problems, _, err := journal.Check(b.Facts(ctx, book.FactFilter{}))
	must(t, err)
	for _, p := range problems {
		t.Error(p)
	}
	return chosen(t, b, book.FactFilter{})
}

func chosen(t testing.TB, b Store, f book.FactFilter) []journal.Fact {
	t.Helper()
	var out []journal.Fact
	for fact, err := range b.Facts(ctx, f) {
		must(t, err)
		out = append(out, fact)
	}
	return out
}

// contents is all that a part of the suite looks at, to be compared.
func contents(t testing.TB, b Store) []string {
	t.Helper()
	var out []string
	for _, f := range facts(t, b) {
		out = append(out, fmt.Sprint(f.Seq, " ", f.Hash))
	}
	for _, series := range []string{"load", "ticket"} {
		last, err := b.LastNumber(ctx, series)
		must(t, err)
		out = append(out, fmt.Sprint(series, " ", last))
	}
	return out
}

// ticket is a load whose ticket added so many pounds to a bin.
func ticket(number int64, day, bin string, pounds int64) book.LoadRow {
	lb := func(n int64) quantity.Amount { return quantity.Int(n, quantity.Lb) }
	return book.LoadRow{
		ID: fmt.Sprintf("L%d", number), Phase: "issued", Direction: "in", Day: day, Commodity: "corn", Bin: bin,
		Grower: "101", GrowerName: "Ash", Truck: "7", Ticket: number, IssuedDay: day, IssuedAt: day + "T12:00:00Z",
		Figures: map[string]quantity.Amount{"net": lb(pounds + 500), "settled": lb(pounds)},
	}
}

// putRecord appends a fact that is also the record in force under its id.
func putRecord(tx book.Tx, id string, f journal.Kinded) error {
	body, err := journal.Canonical(f)
	if err != nil {
		return err
	}
	d := entry(0)
	d.Kind, d.Subject, d.Body = f.Kind(), f.Kind()+" "+id, body
	fact, err := tx.Append(d)
	if err != nil {
		return err
	}
	return tx.PutRecord(book.Record{Kind: f.Kind(), ID: id, Seq: fact.Seq, Body: body})
}

func put(t testing.TB, b Store, rows ...book.LoadRow) {
	t.Helper()
	must(t, b.Write(ctx, func(tx book.Tx) error {
		for _, r := range rows {
			if err := tx.PutLoad(r); err != nil {
				return err
			}
		}
		return nil
	}))
}

func must(t testing.TB, err error) {
	t.Helper()
	if err != nil {
		t.Fatal(err)
	}
}

func same[T comparable](t testing.TB, what string, got, want []T) {
	t.Helper()
	if !slices.Equal(got, want) {
		t.Errorf("%s:\n got %v\nwant %v", what, got, want)
	}
}
