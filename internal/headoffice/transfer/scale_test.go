//go:build postgres

package transfer_test

import (
	"flag"
	"fmt"
	"testing"
	"time"

	"tenthpoint/internal/book"
	"tenthpoint/internal/book/sqlite"
	"tenthpoint/internal/demo"
	"tenthpoint/internal/headoffice"
	"tenthpoint/internal/headoffice/officetest"
	"tenthpoint/internal/headoffice/transfer"
	"tenthpoint/internal/journal"
	"tenthpoint/internal/ratefiles"

	"github.com/jackc/pgx/v5"
)

// How large an office the scale test simulates: -sites 60 -loads 2000.
var (
	scaleSites = flag.Int("sites", 3, "sites of the simulated office")
	scaleLoads = flag.Int("loads", 60, "loads of each site")
)

// invented are the facts of a season of some loads, the drafts they were entered by.
func invented(t testing.TB, loads int) []journal.Entry {
	t.Helper()
	b, err := sqlite.OpenScratch()
	officetest.Must(t, err)
	defer b.Close()
	set, err := ratefiles.ReadRates("")
	officetest.Must(t, err)
	officetest.Must(t, demo.Fill(ctx, b, demo.Options{Loads: loads, Seed: 7, Now: time.Date(2026, 10, 31, 18, 0, 0, 0, time.UTC), Place: time.UTC, Rates: set}, nil))
	var out []journal.Entry
	for f, err := range b.Facts(ctx, book.FactFilter{}) {
		officetest.Must(t, err)
		out = append(out, journal.Entry{At: f.At, Who: f.Who, Desk: f.Desk, Kind: f.Kind, Subject: f.Subject, Body: f.Body})
	}
	return out
}

// TestScale fills an office with chains as sites send them, facts of a season over and over, and
// tells what it took. Every chain must arrive whole.
func TestScale(t *testing.T) {
	const season = 60
	drafts := invented(t, season)
	o := officetest.New(t)
	var receiving time.Duration
	var facts int64
	var last journal.Head
	for site := range *scaleSites {
		letters := fmt.Sprintf("S%d", site+1)
		o.Site(letters)
		last = journal.Head{}
		var before *journal.Fact
		for range *scaleLoads / season {
			for from := 0; from < len(drafts); from += 500 {
				var lines []byte
				for _, d := range drafts[from:min(from+500, len(drafts))] {
					f := journal.Link(before, d)
					before = &f
					var err error
					lines, err = headoffice.Line{Fact: &f}.Append(lines)
					officetest.Must(t, err)
				}
				began := time.Now()
				r, err := o.Receive(ctx, letters, lines)
				receiving += time.Since(began)
				if err != nil || r.Outcome != headoffice.Kept {
					t.Fatalf("%s: %v %v", letters, r, err)
				}
				last = journal.HeadOf(*before)
			}
		}
		facts += last.Seq
	}
	chains, err := o.Chains(ctx, "")
	officetest.Must(t, err)
	if len(chains) != *scaleSites || chains[0].Head != last {
		t.Fatalf("%d chains arrived, the first up to %v, want %v", len(chains), chains[0].Head, last)
	}
	loads := *scaleSites * *scaleLoads
	t.Logf("%d sites of %d loads: %d facts, %.1f a load", *scaleSites, *scaleLoads, facts, float64(facts)/float64(loads))
	t.Logf("received %.0f facts a second on one connection, %v a load", float64(facts)/receiving.Seconds(), receiving/time.Duration(loads))
	t.Logf("the office takes %d bytes a fact", bytesOf(t, o)/facts)

	one := bookOf(t)
	at := o.As("S1X")
	enter(t, one, officetest.Chained(nil, "a", 1)...)
	t.Logf("a new fact is there after %v", took(t, func() {
		_, err := transfer.Send(ctx, one, at, "S1X", transfer.Options{})
		officetest.Must(t, err)
	}))
	t.Logf("the list of sites takes %v", took(t, func() { _, err = o.Sites(ctx); officetest.Must(t, err) }))
	t.Logf("a fact by its number takes %v", took(t, func() {
		if holds, err := o.Holds(ctx, chains[0].Site, chains[0].Head); err != nil || !holds {
			t.Errorf("the last fact of %s is not there: %v", chains[0].Site, err)
		}
	}))
	t.Logf("a hundred facts at the end of a chain take %v", took(t, func() {
		n := 0
		for _, err := range o.Facts(ctx, chains[0], chains[0].Head.Seq-99) {
			officetest.Must(t, err)
			n++
		}
		if n != 100 {
			t.Errorf("%d facts were read", n)
		}
	}))
}

func took(t testing.TB, act func()) time.Duration {
	t.Helper()
	began := time.Now()
	act()
	return time.Since(began).Round(10 * time.Microsecond)
}

// bytesOf is the room that the facts of an office take on the disk, with their indexes.
func bytesOf(t testing.TB, o *officetest.Office) (n int64) {
	t.Helper()
	conn, err := pgx.Connect(ctx, o.Server)
	officetest.Must(t, err)
	defer conn.Close(ctx)
	officetest.Must(t, conn.QueryRow(ctx, `SELECT sum(pg_total_relation_size(c.oid))::bigint FROM pg_class c JOIN pg_namespace n ON n.oid = c.relnamespace
		WHERE n.nspname = $1 AND c.relkind = 'r' AND c.relname LIKE 'facts%'`, o.Schema).Scan(&n))
	return n
}
