//go:build unix

package demo

import (
	"context"
	"flag"
	"fmt"
	"os"
	"path/filepath"
	"runtime"
	"strconv"
	"strings"
	"syscall"
	"testing"
	"time"

	"tenthpoint/internal/audit"
	"tenthpoint/internal/book"
	"tenthpoint/internal/book/sqlite"
	"tenthpoint/internal/journal"
	"tenthpoint/internal/office"
	"tenthpoint/internal/office/binlog"
	"tenthpoint/internal/office/terms"
	"tenthpoint/internal/scalehouse"
)

// growth are the sizes of the books measured; a book of 100,000 loads takes some
// minutes to fill, one of a million an hour.
var growth = flag.String("growth", "1000,20000", "sizes of the books that BenchmarkGrowth measures, in loads")

// walks lets what reads the whole book be measured as well, which takes long for the largest.
var walks = flag.Bool("growth-walks", true, "whether BenchmarkGrowth also measures what reads the whole book")

// userTime is the CPU time this process has spent in its own code. Wall time says
// little on a machine that does other things too.
func userTime(b *testing.B) time.Duration {
	var used syscall.Rusage
	if err := syscall.Getrusage(syscall.RUSAGE_SELF, &used); err != nil {
		b.Fatal(err)
	}
	return time.Duration(used.Utime.Nano())
}

// spent is the least user time of three tries at a task, on one core; of one where
// nobody looks at the figure.
func spent(b *testing.B, task func() error) time.Duration {
	defer runtime.GOMAXPROCS(runtime.GOMAXPROCS(1))
	least, tries := time.Duration(1<<63-1), 3
	if testing.Short() {
		tries = 1
	}
	for range tries {
		before := userTime(b)
		must(b, task())
		least = min(least, userTime(b)-before)
	}
	return least
}

// BenchmarkGrowth is what a growing book costs. Whatever walks a book is given per
// load and as a multiple of the floor: the chain read and hashed, nothing else. What
// looks something up is given whole, and should not grow. Filling is what all acts of a
// load cost at the desk, without waiting for the disk.
func BenchmarkGrowth(b *testing.B) {
	sizes := strings.Split(*growth, ",")
	if testing.Short() {
		sizes = []string{"60"}
	}
	for _, size := range sizes {
		loads, err := strconv.Atoi(size)
		must(b, err)
		b.Run(fmt.Sprintf("%d loads", loads), func(b *testing.B) { grown(b, loads) })
	}
}

func grown(b *testing.B, loads int) {
	path := filepath.Join(b.TempDir(), "grown.book")
	kept, err := sqlite.Open(path, book.Options{Create: true})
	must(b, err)
	defer kept.Close()
	before := userTime(b)
	must(b, Fill(ctx, kept, Options{Loads: loads, Seed: 7, Now: noon, Rates: shipped(b)}, nil))
	filling := userTime(b) - before
	d, err := scalehouse.Open(ctx, kept, scalehouse.Options{Rates: shipped(b), Place: time.UTC, Clock: func() time.Time { return noon }})
	must(b, err)
	b.ResetTimer()
	for b.Loop() {
		if *walks {
			measureWalks(b, d, kept, loads)
		}
		measureLookups(b, d)
		measureBins(b, d)
	}
	b.ReportMetric(0, "ns/op")
	b.ReportMetric(float64(filling.Microseconds())/float64(loads), "fill-µs/load")
	b.ReportMetric(float64(bytesIn(b, kept))/float64(loads), "bytes/load")
}

func measureWalks(b *testing.B, d *scalehouse.Desk, kept *sqlite.Book, loads int) {
	perLoad := func(t time.Duration) float64 { return float64(t.Nanoseconds()) / 1000 / float64(loads) }
	floor := spent(b, func() error {
		_, _, err := journal.Check(kept.Facts(ctx, book.FactFilter{}))
		return err
	})
	b.ReportMetric(perLoad(floor), "floor-µs/load")
	report := func(name string, task func() error) {
		t := spent(b, task)
		b.ReportMetric(perLoad(t), name+"-µs/load")
		b.ReportMetric(float64(t)/float64(floor), name+"/floor")
	}
	report("verify", func() error {
		_, err := audit.Verify(ctx, d, kept, nil)
		return err
	})
	folder, n := b.TempDir(), 0
	backup := func() error {
		n++
		return kept.Backup(ctx, filepath.Join(folder, fmt.Sprint(n, ".book")), journal.Head.String)
	}
	must(b, backup()) // all of it is checked for the first copy in a folder
	report("backup", backup)
}

// measureLookups are what a desk asks between two trucks. Each must cost the same in a
// book of any size, but for what there is to tell: an account is a grower's own tickets.
func measureLookups(b *testing.B, d *scalehouse.Desk) {
	rows, _, err := office.FindTickets(ctx, d, office.Search{Limit: 1})
	must(b, err)
	newest, err := office.Load(ctx, d, rows[0].ID)
	must(b, err)
	code, err := office.Code(ctx, d, newest)
	must(b, err)
	find := func(s office.Search) func(context.Context) error {
		s.Limit = 20
		return func(ctx context.Context) error { _, _, err := office.FindTickets(ctx, d, s); return err }
	}
	for name, look := range map[string]func(context.Context) error{
		"code":   func(ctx context.Context) error { _, err := office.TicketByCode(ctx, d, code); return err },
		"due":    func(ctx context.Context) error { _, err := office.SamplesDue(ctx, d, d.Today()); return err },
		"ticket": func(ctx context.Context) error { _, err := office.Ticket(ctx, d, newest.Number); return err },
		"truck":  find(office.Search{Truck: rows[0].Truck, FromDay: d.Today().String()}),
		"grower": find(office.Search{Grower: rows[0].Grower}),
		"account": func(ctx context.Context) error {
			_, err := office.Account(ctx, d, rows[0].Grower, d.Today(), d.Today())
			return err
		},
		"yard": func(ctx context.Context) error { _, err := office.Yard(ctx, d); return err },
		"day":  func(ctx context.Context) error { _, err := office.DaySheet(ctx, d, d.Today()); return err },
		"undecided": func(ctx context.Context) error {
			tickets, err := d.Reader().Loads(ctx, terms.Open(d.Today()))
			if err == nil {
				_, err = terms.UndecidedIn(tickets, d.Laws(), d.Today())
			}
			return err
		},
	} {
		least := spent(b, func() error { return look(ctx) })
		times := 1
		if least < 20*time.Millisecond { // too short for the clock
			times = 20
			least = spent(b, func() error { return repeated(times, func() error { return look(ctx) }) })
		}
		b.ReportMetric(float64(least.Microseconds())/float64(times), name+"-µs")
	}
}

// measureBins are the daily position record and the card of a bin, each as a multiple of the queries that
// read the same rows.
func measureBins(b *testing.B, d *scalehouse.Desk) {
	r, day := d.Reader(), d.Today()
	today, tomorrow, from := day.String(), day.AddDays(1).String(), day.AddDays(-30).String()
	queries := func(all ...func() error) func() error {
		return func() error {
			for _, one := range all {
				if err := one(); err != nil {
					return err
				}
			}
			return nil
		}
	}
	binDays := func(bin, from string) func() error {
		return func() error { _, err := r.BinDays(ctx, bin, from, today); return err }
	}
	binsBefore := func(day string) func() error {
		return func() error { _, err := r.BinsBefore(ctx, day); return err }
	}
	moves := func(from string) func() error {
		return func() error { _, err := r.Movements(ctx, from, today); return err }
	}
	for name, one := range map[string]struct{ asked, bare func() error }{
		"position": {
			func() error { _, err := binlog.Position(ctx, d, day); return err },
			queries(binDays("", today), binsBefore(today), moves(today),
				func() error { _, err := r.LineDays(ctx, today, today); return err },
				func() error { _, err := r.LinesBefore(ctx, tomorrow); return err }),
		},
		"bin-card": {
			func() error { _, err := binlog.Card(ctx, d, "B1", day.AddDays(-30), day); return err },
			queries(binDays("B1", from), binsBefore(tomorrow), moves(from)),
		},
	} {
		const times = 20
		asked := spent(b, func() error { return repeated(times, one.asked) })
		bare := spent(b, func() error { return repeated(times, one.bare) })
		b.ReportMetric(float64(asked.Microseconds())/times, name+"-µs")
		b.ReportMetric(float64(asked)/float64(bare), name+"/queries")
	}
}

func repeated(times int, task func() error) error {
	for range times {
		if err := task(); err != nil {
			return err
		}
	}
	return nil
}

// bytesIn is how much room the book takes.
func bytesIn(b *testing.B, kept *sqlite.Book) int64 {
	copied := filepath.Join(b.TempDir(), "size.book")
	must(b, kept.Backup(ctx, copied, journal.Head.String))
	return sizeOf(b, copied)
}

func sizeOf(b *testing.B, path string) int64 {
	info, err := os.Stat(path)
	must(b, err)
	return info.Size()
}
