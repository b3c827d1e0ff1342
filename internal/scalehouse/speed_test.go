package scalehouse_test

import (
	"database/sql"
	"fmt"
	"path/filepath"
	"slices"
	"testing"
	"time"

	"tenthpoint/internal/book"
	"tenthpoint/internal/book/sqlite"
	"tenthpoint/internal/elevator"
	"tenthpoint/internal/load"
	"tenthpoint/internal/scalehouse"
	"tenthpoint/internal/scalehouse/housetest"
)

// durable is a desk on a book that waits for the disk.
func durable(b *testing.B) *scalehouse.Desk {
	book, err := sqlite.Open(filepath.Join(b.TempDir(), "durable.book"), book.Options{Create: true})
	must(b, err)
	b.Cleanup(func() { _ = book.Close() })
	d, err := scalehouse.Open(ctx, book, scalehouse.Options{Rates: housetest.Rates(b), Who: housetest.Manager, Clock: housetest.New(b).Clock()})
	must(b, err)
	must(b, scalehouse.SetProfile(ctx, d, housetest.Profile()))
	must(b, scalehouse.SetPerson(ctx, d, elevator.Person{Name: housetest.Manager, Role: elevator.Manager}))
	return d
}

// bareCommit commits one row in a plain table, on the disk when it returns,
// with nothing of ours around it.
//
// A log that still grows is slower than one that is written over again, since
// the disk must note its new length each time. So the log is first brought to
// the length it keeps, as that of a book is after its first loads.
func bareCommit(b *testing.B) func() {
	db, err := sql.Open("sqlite", "file:"+filepath.Join(b.TempDir(), "bare.sqlite")+"?_journal_mode=WAL&_synchronous=FULL")
	must(b, err)
	b.Cleanup(func() { _ = db.Close() })
	db.SetMaxOpenConns(1)
	do := func(statement string) {
		_, err := db.Exec(statement)
		must(b, err)
	}
	do("CREATE TABLE weights (seq INTEGER PRIMARY KEY, body TEXT NOT NULL) STRICT")
	insert, err := db.Prepare("INSERT INTO weights (body) VALUES (?)")
	must(b, err)
	commit := func() {
		_, err := insert.Exec(`{"load":"L1","weight":"52300 lb"}`)
		must(b, err)
	}
	do("PRAGMA synchronous = OFF")
	for range 2000 {
		commit()
	}
	do("PRAGMA synchronous = FULL")
	return commit
}

// BenchmarkWeigh is a weigh-in at the desk: the load replayed, the weight asked
// about and appended, all on the disk when it returns. Turn and turn about with
// it a bare commit is done, and the middle one of each is reported, because the
// speed of a disk changes by the moment: a weigh-in should take at most twice as
// long.
func BenchmarkWeigh(b *testing.B) {
	const trucks = 50
	d, bare := durable(b), bareCommit(b)
	timed := func(act func()) time.Duration {
		start := time.Now()
		act()
		return time.Since(start)
	}
	var weighing, committing []time.Duration
	turns := func() {
		ids := make([]string, trucks)
		for i := range ids {
			id, err := scalehouse.OpenLoad(ctx, d, housetest.Details())
			must(b, err)
			ids[i] = id
		}
		for _, id := range ids {
			weighing = append(weighing, timed(func() { must(b, scalehouse.Weigh(ctx, d, id, housetest.ScaleWeight(load.Gross, 52300))) }))
			committing = append(committing, timed(bare))
		}
	}
	for range 4 { // until the book's log, too, has its length
		turns()
	}
	weighing, committing = nil, nil
	for b.Loop() {
		turns()
	}
	slices.Sort(weighing)
	slices.Sort(committing)
	middle := len(weighing) / 2
	b.ReportMetric(0, "ns/op")
	b.ReportMetric(float64(weighing[middle].Nanoseconds()), "ns/weigh-in")
	b.ReportMetric(float64(committing[middle].Nanoseconds()), "ns/bare-commit")
	b.ReportMetric(float64(weighing[middle])/float64(committing[middle]), "times-bare")
}

// BenchmarkIssue is a ticket: the load settled with its full working, the
// number taken, the edition kept, on the disk when it returns.
func BenchmarkIssue(b *testing.B) {
	d := durable(b)
	for n := int64(0); b.Loop(); n++ {
		b.StopTimer()
		details := housetest.Details()
		details.Truck.ID = fmt.Sprint("T", n%100) // its tickets of the day are read for the guards
		id, err := scalehouse.OpenLoad(ctx, d, details)
		must(b, err)
		must(b, scalehouse.Weigh(ctx, d, id, housetest.ScaleWeight(load.Gross, 52300+n/100*20))) // the same again would be asked about
		must(b, scalehouse.Weigh(ctx, d, id, housetest.ScaleWeight(load.Tare, 24300)))
		must(b, scalehouse.RecordSample(ctx, d, id, housetest.SampleOf("18.0")))
		b.StartTimer()
		_, err = scalehouse.Issue(ctx, d, id)
		must(b, err)
	}
}
