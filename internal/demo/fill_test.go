package demo

import (
	"context"
	"errors"
	"testing"
	"time"

	"tenthpoint/internal/audit"
	"tenthpoint/internal/book"
	"tenthpoint/internal/book/sqlite"
	"tenthpoint/internal/load"
	"tenthpoint/internal/message/errortest"
	"tenthpoint/internal/office"
	"tenthpoint/internal/rates"
	"tenthpoint/internal/scalehouse"
	"tenthpoint/schedules"
)

var ctx = context.Background()

// shipped are the editions inside the program.
func shipped(t testing.TB) *rates.Set {
	t.Helper()
	set, err := schedules.Editions()
	must(t, err)
	return set
}

func must(t testing.TB, err error) {
	t.Helper()
	if err != nil {
		t.Fatal(err)
	}
}

// noon of a day on which the shipped rates are in force.
var noon = time.Date(2026, 11, 3, 12, 0, 0, 0, time.UTC)

func filled(t testing.TB, o Options) *sqlite.Book {
	t.Helper()
	kept, err := sqlite.OpenScratch()
	must(t, err)
	t.Cleanup(func() { _ = kept.Close() })
	must(t, Fill(ctx, kept, o, nil))
	return kept
}

func opened(t testing.TB, kept *sqlite.Book) *scalehouse.Desk {
	t.Helper()
	d, err := scalehouse.Open(ctx, kept, scalehouse.Options{Rates: shipped(t), Place: time.UTC, Clock: func() time.Time { return noon }})
	must(t, err)
	return d
}

func TestSeasonIsSound(t *testing.T) {
	const loads = 400
	kept := filled(t, Options{Loads: loads, Seed: 7, Now: noon, Rates: shipped(t)})
	sound, err := audit.Verify(ctx, opened(t, kept), kept, nil)
	must(t, err)
	if len(sound.Problems) > 0 {
		t.Fatalf("the season is not sound: %q", sound.Problems)
	}
	rows, err := kept.Loads(ctx, book.LoadFilter{})
	must(t, err)
	came := 0
	for _, r := range rows {
		if r.Corrects == 0 && r.Direction == string(load.Inbound) {
			came++
		}
	}
	if came != loads+3 {
		t.Errorf("%d trucks came, want %d and 3 on the yard", came, loads)
	}
}

// One number, one day, one set of rates: one book, to the last hash.
func TestSameSeedSameBook(t *testing.T) {
	last := func(seed uint64) string {
		head, _, err := filled(t, Options{Loads: 60, Seed: seed, Now: noon, Rates: shipped(t)}).Head(ctx)
		must(t, err)
		return head.Hash
	}
	first, again, other := last(3), last(3), last(4)
	if first != again {
		t.Errorf("the same season ends in %s and in %s", first, again)
	}
	if first == other {
		t.Error("two numbers make one season")
	}
}

// A season has one of everything that goes otherwise than planned.
func TestSeasonHasEveryOddity(t *testing.T) {
	kept := filled(t, Options{Loads: 1500, Seed: 1, Now: noon, Rates: shipped(t)})
	rows, err := kept.Loads(ctx, book.LoadFilter{})
	must(t, err)
	seen := map[string]int{}
	note := func(what string, is bool) {
		if is {
			seen[what]++
		} else {
			seen[what] += 0
		}
	}
	d := opened(t, kept)
	for _, r := range rows {
		l, err := office.Load(ctx, d, r.ID)
		must(t, err)
		note("void", l.Phase == load.Void)
		note("corrected", l.Phase == load.Corrected)
		note("correcting", l.Corrects > 0)
		note("refused", l.Phase == load.TurnedAway)
		note("accepted beyond a limit", len(l.Accepted) > 0)
		note("weighed by hand", l.Manual())
		note("weighed twice", len(l.Struck) > 0)
		note("in two drafts", len(l.Drafts()) > 1)
		note("shared", len(l.Details.Shares) > 1)
		note("price later", l.Number > 0 && l.Details.Price == nil)
		note("on a contract", l.Details.Terms.No != "")
		note("tested after the tare", testedLast(l))
		note("on a stored tare", storedTare(l))
		note("on the yard", l.Phase == load.OnYard)
		note("leaving", l.Details.Direction == load.Outbound)
		seen[l.Details.Commodity]++
	}
	for what, n := range seen {
		if n == 0 {
			t.Errorf("no load is %s", what)
		}
	}
	if yard := seen["on the yard"]; yard != 3 {
		t.Errorf("%d trucks are on the yard, want 3", yard)
	}
	for _, commodity := range []string{"corn", "soybeans", "wheat-hrw"} {
		if seen[commodity] < 50 {
			t.Errorf("%d loads of %s; a season has more", seen[commodity], commodity)
		}
	}
}

func testedLast(l *load.Load) bool {
	tare, ok := l.Weight(load.Tare, "")
	return ok && l.Sampled.At > tare.At
}

func storedTare(l *load.Load) bool {
	tare, ok := l.Weight(load.Tare, "")
	return ok && tare.Source == load.StoredTare
}

// Days are closed by the manager, today is not, and the three trucks came today
// or in the last minutes of yesterday.
func TestDaysAreClosed(t *testing.T) {
	for _, now := range []time.Time{noon, noon.Add(-12*time.Hour + time.Minute), noon.Add(11 * time.Hour)} {
		kept := filled(t, Options{Loads: 120, Seed: 2, Now: now, Rates: shipped(t)})
		d := opened(t, kept)
		for day := d.Today().AddDays(-4); day.Before(d.Today()); day = day.AddDays(1) {
			if by, _, closed, err := office.ClosingOf(ctx, d, day); err != nil || !closed || by.Who != Manager {
				t.Errorf("%s closed %v by %q, %v", day, closed, by.Who, err)
			}
		}
		if _, _, closed, err := office.ClosingOf(ctx, d, d.Today()); closed || err != nil {
			t.Errorf("today is closed: %v, %v", closed, err)
		}
		last, _, err := kept.Head(ctx)
		must(t, err)
		if at, err := last.Time(); err != nil || at.After(now) {
			t.Errorf("the last act is at %s, the book is left at %s", last.At, now)
		}
	}
}

// No bin gives out more than came in.
func TestBinsAreNeverOverdrawn(t *testing.T) {
	kept := filled(t, Options{Loads: 1500, Seed: 1, Now: noon, Rates: shipped(t)})
	for day := opened(t, kept).Today().AddDays(-60); !day.After(opened(t, kept).Today()); day = day.AddDays(1) {
		stock, err := kept.StockBefore(ctx, day.AddDays(1).String())
		must(t, err)
		for _, s := range stock {
			if s.Weight.Sign() < 0 {
				t.Errorf("in the evening of %s there are %s of %s in %s", day, s.Weight, s.Commodity, s.Bin)
			}
		}
	}
}

func TestWeightsAreWholeDivisions(t *testing.T) {
	for _, truck := range fleet(newChance(5, ofFleet), opened(t, filled(t, Options{Now: noon, Rates: shipped(t)})).Today()) {
		if truck.empty%divisionLb != 0 || truck.empty+truck.build.carryLb > capacityLb {
			t.Errorf("truck %s weighs %d lb empty and carries %d lb", truck.ID, truck.empty, truck.build.carryLb)
		}
	}
}

func TestDemoKeepsToItsOwnBook(t *testing.T) {
	o := Options{Loads: 1, Seed: 1, Now: noon, Rates: shipped(t)}
	kept := filled(t, o)
	before, _, err := kept.Head(ctx)
	must(t, err)
	err = Fill(ctx, kept, o, nil)
	if err == nil {
		t.Errorf("a second season in one book: %v", err)
	}
	if after, _, _ := kept.Head(ctx); after.Hash != before.Hash {
		t.Error("something was written")
	}
}

func TestDemoNeedsRates(t *testing.T) {
	kept, err := sqlite.OpenScratch()
	must(t, err)
	defer kept.Close()
	early := time.Date(1950, 1, 1, 12, 0, 0, 0, time.UTC)
	err = Fill(ctx, kept, Options{Loads: 5, Now: early, Rates: shipped(t)}, nil)
	if !errortest.Incomplete("1950-01-01").Met(err) {
		t.Errorf("without rates: %v", err)
	}
	if err := Fill(ctx, kept, Options{Loads: -1, Now: noon, Rates: shipped(t)}, nil); err == nil {
		t.Error("a season of -1 loads was invented")
	}
	if _, some, _ := kept.Head(ctx); some {
		t.Error("something was written")
	}
}

func TestFillCanBeStopped(t *testing.T) {
	kept, err := sqlite.OpenScratch()
	must(t, err)
	defer kept.Close()
	stop, cancel := context.WithCancel(ctx)
	err = Fill(stop, kept, Options{Loads: 400, Seed: 1, Now: noon, Rates: shipped(t)}, func(come int) {
		if come > 100 {
			cancel()
		}
	})
	if !errors.Is(err, context.Canceled) {
		t.Fatalf("a season that was stopped ends with %v", err)
	}
	sound, err := audit.Verify(ctx, opened(t, kept), kept, nil)
	must(t, err)
	if len(sound.Problems) > 0 || sound.Loads < 100 || sound.Loads > 300 {
		t.Errorf("after %d loads: %q", sound.Loads, sound.Problems)
	}
}

// BenchmarkFill is per load.
func BenchmarkFill(b *testing.B) {
	filled(b, Options{Loads: b.N, Seed: 1, Now: noon, Rates: shipped(b)})
}
