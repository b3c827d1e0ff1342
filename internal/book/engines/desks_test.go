//go:build postgres

package engines_test

import (
	"cmp"
	"fmt"
	"os"
	"slices"
	"sync"
	"testing"
	"time"

	"tenthpoint/internal/book"
	"tenthpoint/internal/book/engines"
	"tenthpoint/internal/elevator"
	"tenthpoint/internal/load"
	"tenthpoint/internal/scalehouse"
	"tenthpoint/internal/scalehouse/housetest"
)

// desksOn opens desks on one book of the server, each with connections of its own.
func desksOn(t testing.TB, schema string, n int) []*scalehouse.Desk {
	t.Helper()
	var out []*scalehouse.Desk
	for i := range n {
		b, err := engines.Open(address("tenthpoint", schema), book.Options{Create: true})
		must(t, err)
		t.Cleanup(func() { _ = b.Close() })
		if i == 0 {
			d, err := scalehouse.Open(ctx, b, scalehouse.Options{Rates: housetest.Rates(t), Who: housetest.Manager, Check: housetest.NoQuestions})
			must(t, err)
			must(t, scalehouse.SetProfile(ctx, d, housetest.Profile()))
			must(t, scalehouse.SetPerson(ctx, d, elevator.Person{Name: housetest.Manager, Role: elevator.Manager}))
		}
		d, err := scalehouse.Open(ctx, b, scalehouse.Options{Name: fmt.Sprintf("desk %d", i+1), Rates: housetest.Rates(t), Who: housetest.Manager, Check: housetest.NoQuestions})
		must(t, err)
		must(t, d.SignIn(housetest.Manager))
		out = append(out, d)
	}
	return out
}

// acts is a truck from its arrival to its ticket, act by act: six of them.
func acts(d *scalehouse.Desk, did func(func() error) error) error {
	var id string
	var number int64
	for _, act := range []func() error{
		func() (err error) { id, err = scalehouse.OpenLoad(ctx, d, housetest.Details()); return err },
		func() error { return scalehouse.Weigh(ctx, d, id, housetest.ScaleWeight(load.Gross, 52300)) },
		func() error { return scalehouse.RecordSample(ctx, d, id, housetest.SampleOf("18.0")) },
		func() error { return scalehouse.Weigh(ctx, d, id, housetest.ScaleWeight(load.Tare, 24300)) },
		func() (err error) { number, err = scalehouse.Issue(ctx, d, id); return err },
		func() error { _, err := scalehouse.RecordPrint(ctx, d, number); return err },
	} {
		if err := did(act); err != nil {
			return err
		}
	}
	return nil
}

// work has every desk bring trucks through, and returns how long each act took.
func work(t testing.TB, desks []*scalehouse.Desk, trucks int) (took []time.Duration, all time.Duration) {
	t.Helper()
	var mu sync.Mutex
	var running sync.WaitGroup
	start := time.Now()
	for _, d := range desks {
		running.Go(func() {
			for range trucks {
				err := acts(d, func(act func() error) error {
					begun := time.Now()
					err := act()
					mu.Lock()
					defer mu.Unlock()
					took = append(took, time.Since(begun))
					return err
				})
				if err != nil {
					t.Error(err)
					return
				}
			}
		})
	}
	running.Wait()
	return took, time.Since(start)
}

// Ten desks at once: every act is kept once, numbers have no gap, and the book is sound.
func TestTenDesks(t *testing.T) {
	desks := desksOn(t, fmt.Sprintf("ten_%d", os.Getpid()), 10)
	took, _ := work(t, desks, 2)
	if len(took) != 10*2*6 {
		t.Errorf("%d acts", len(took))
	}
	b := desks[3].Book()
	if last, err := b.LastNumber(ctx, "ticket"); last != 20 || err != nil {
		t.Errorf("the last ticket is %d, %v", last, err)
	}
	wantSound(t, desks[7])
}

// BenchmarkTenDesks measures acts a second of ten desks, and how long one act takes them.
func BenchmarkTenDesks(b *testing.B) {
	desks := desksOn(b, fmt.Sprintf("bench_%d_%d", os.Getpid(), b.N), 10)
	work(b, desks, 1) // a desk's first acts are not its usual ones: their statements are prepared
	b.ResetTimer()
	took, all := work(b, desks, max(1, b.N))
	slices.SortFunc(took, cmp.Compare)
	b.ReportMetric(float64(len(took))/all.Seconds(), "acts/s")
	b.ReportMetric(float64(took[len(took)/2].Microseconds())/1000, "p50-ms")
	b.ReportMetric(float64(took[len(took)*99/100].Microseconds())/1000, "p99-ms")
}
