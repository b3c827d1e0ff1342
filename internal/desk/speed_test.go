package desk_test

import (
	"database/sql"
	"path/filepath"
	"testing"
	"time"

	"tenthpoint/internal/desk"
	"tenthpoint/internal/house"
	"tenthpoint/internal/load"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/store"
)

// durable is a desk on a book that waits for the disk.
func durable(b *testing.B) *desk.Desk {
	book, err := store.Open(filepath.Join(b.TempDir(), "durable.book"), store.Options{Create: true})
	must(b, err)
	b.Cleanup(func() { _ = book.Close() })
	d, err := desk.Open(ctx, book, desk.Options{Rates: testRates(b), Who: manager, Clock: newScene(b).clock()})
	must(b, err)
	must(b, d.SetProfile(ctx, testProfile()))
	must(b, d.SetPerson(ctx, house.Person{Name: manager, Role: house.Manager}))
	return d
}

// bareCommit commits one row in a plain table, on the disk when it returns,
// with nothing of ours around it.
func bareCommit(b *testing.B) func() {
	db, err := sql.Open("sqlite", "file:"+filepath.Join(b.TempDir(), "bare.sqlite")+"?_journal_mode=WAL&_synchronous=FULL")
	must(b, err)
	b.Cleanup(func() { _ = db.Close() })
	_, err = db.Exec("CREATE TABLE weights (seq INTEGER PRIMARY KEY, body TEXT NOT NULL) STRICT")
	must(b, err)
	insert, err := db.Prepare("INSERT INTO weights (body) VALUES (?)")
	must(b, err)
	return func() {
		_, err := insert.Exec(`{"load":"L1","weight":"52300 lb"}`)
		must(b, err)
	}
}

// BenchmarkWeigh is a weigh-in at the desk: the load replayed, the weight asked
// about and appended, all on the disk when it returns. Turn and turn about,
// fifty by fifty, bare commits are done, because the speed of a disk changes by
// the second: a weigh-in should take at most twice as long.
func BenchmarkWeigh(b *testing.B) {
	const turn = 50
	d, bare := durable(b), bareCommit(b)
	var weighing, committing time.Duration
	for b.Loop() {
		ids := make([]string, turn)
		for i := range ids {
			id, err := d.OpenLoad(ctx, details())
			must(b, err)
			ids[i] = id
		}
		start := time.Now()
		for _, id := range ids {
			must(b, d.Weigh(ctx, id, scaleWeight(load.Gross, 52300)))
		}
		weighed := time.Now()
		for range turn {
			bare()
		}
		weighing += weighed.Sub(start)
		committing += time.Since(weighed)
	}
	b.ReportMetric(0, "ns/op")
	b.ReportMetric(float64(weighing.Nanoseconds())/float64(turn*b.N), "ns/weigh-in")
	b.ReportMetric(float64(committing.Nanoseconds())/float64(turn*b.N), "ns/bare-commit")
	b.ReportMetric(float64(weighing)/float64(committing), "times-bare")
}

// BenchmarkIssue is a ticket: the load settled with its full working, the
// number taken, the edition kept, on the disk when it returns.
func BenchmarkIssue(b *testing.B) {
	d := durable(b)
	for b.Loop() {
		b.StopTimer()
		id, err := d.OpenLoad(ctx, details())
		must(b, err)
		must(b, d.Weigh(ctx, id, scaleWeight(load.Gross, 52300)))
		must(b, d.Weigh(ctx, id, scaleWeight(load.Tare, 24300)))
		must(b, d.Sample(ctx, id, sampleOf("18.0")))
		b.StartTimer()
		_, err = d.Issue(ctx, id)
		must(b, err)
	}
}

// BenchmarkPreview is what a keystroke costs before it is drawn: the load
// settled as it stands.
func BenchmarkPreview(b *testing.B) {
	s := newScene(b)
	l := s.load(s.whole())
	for b.Loop() {
		if made, wrong := s.Preview(l); made == nil {
			b.Fatal(wrong)
		}
	}
}

// BenchmarkVerify is per load.
func BenchmarkVerify(b *testing.B) {
	const loads = 300
	s := newScene(b)
	must(b, s.Together(ctx, func(w *desk.Work) error {
		for range loads {
			id, err := w.OpenLoad(details())
			must(b, err)
			must(b, w.Weigh(id, scaleWeight(load.Gross, 52300)))
			must(b, w.Sample(id, sampleOf("18.0", found("test-weight", "54.2", quantity.LbPerBushel))))
			must(b, w.Weigh(id, scaleWeight(load.Tare, 24300)))
			_, err = w.Issue(id)
			must(b, err)
		}
		return nil
	}))
	b.ResetTimer()
	for done := 0; done < b.N; done += loads {
		s.verify()
	}
}
