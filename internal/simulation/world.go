package simulation

import (
	"context"
	"errors"
	"fmt"
	"math/rand/v2"
	"path/filepath"
	"testing"
	"time"

	"tenthpoint/internal/book"
	"tenthpoint/internal/book/sqlite"
	"tenthpoint/internal/book/sqlite/faultdisk"
	"tenthpoint/internal/elevator"
	"tenthpoint/internal/journal"
	"tenthpoint/internal/load"
	"tenthpoint/internal/message"
	"tenthpoint/internal/scalehouse"
	"tenthpoint/internal/scalehouse/housetest"
)

var ctx = context.Background()

// A Bug is put into the program under a simulation, to see that it is found. The zero Bug is none.
type Bug struct {
	// Forgets lets the disk say that it has synced and not do so.
	Forgets bool
	// Tx stands between the use cases and what the book writes.
	Tx func(book.Tx) book.Tx
	// Wrote is called after each write of a desk, with its facts, and returns them as the desk is
	// told of them.
	Wrote func(path, desk string, facts []journal.Fact) []journal.Fact
}

// An Outcome is the result of a simulation.
type Outcome struct {
	// Found are the violations, each with the act it was found after.
	Found []string
	// Journal is every fact of the book in the end.
	Journal []journal.Fact

	Acts, Refused, Faults, Deaths, Checks int
}

// String counts what was done.
func (o Outcome) String() string {
	return fmt.Sprintf("%d acts, %d facts; %d faults of the disk, %d sudden ends, %d acts refused for them; %d checks of the book, %d things found",
		o.Acts, len(o.Journal), o.Faults, o.Deaths, o.Refused, o.Checks, len(o.Found))
}

// desk is one desk at the book.
type desk struct {
	*scalehouse.Desk
	name string
	kept *sqlite.Book
}

// world is an elevator whose every circumstance is drawn.
type world struct {
	t    testing.TB
	draw *rand.Rand
	bug  Bug
	path string
	disk *faultdisk.Disk

	now    time.Time     // the true time
	astray time.Duration // of the clock that desks see

	desks        []*desk
	acknowledged []journal.Fact
	nets         map[int64]int64 // pounds of each ticket, as they were typed
	typed        map[side]int64  // pounds of each side of a load
	lists        int             // taken over so far
	copies       int             // backups so far
	ails         ailment
	out          Outcome
}

// side is a weight of a load.
type side struct {
	load  string
	which load.Which
}

// Run simulates so many acts. It stops at the first thing found: what comes after may follow from
// it.
func Run(t testing.TB, seed uint64, acts int, bug Bug) Outcome {
	w := &world{
		t: t, bug: bug, draw: rand.New(rand.NewPCG(seed, 14)), path: filepath.Join(t.TempDir(), "house.book"), disk: faultdisk.New(t),
		now:  time.Date(2026, 10, 1, 7, 0, 0, 0, time.UTC),
		nets: map[int64]int64{}, typed: map[side]int64{},
	}
	w.disk.WritesOnly = true
	w.setUp()
	for w.out.Acts < acts && len(w.out.Found) == 0 {
		w.step()
	}
	w.recovers()
	w.check()
	w.out.Journal = w.journal()
	w.shut()
	return w.out
}

// setUp makes the elevator, on a disk that works.
func (w *world) setUp() {
	first, err := sqlite.Open(w.path, book.Options{Create: true})
	must(w.t, err)
	must(w.t, first.Close())
	w.open()
	d := w.desks[0]
	must(w.t, scalehouse.SetProfile(ctx, d.Desk, housetest.Profile()))
	for _, p := range []elevator.Person{{Name: housetest.Manager, Role: elevator.Manager}, {Name: housetest.Clerk, Role: elevator.Clerk}} {
		must(w.t, scalehouse.SetPerson(ctx, d.Desk, p))
	}
	must(w.t, scalehouse.SetGrower(ctx, d.Desk, elevator.Grower{ID: "G1", Name: "Ada Field"}))
	w.shut()
	w.disk.Forgets = w.bug.Forgets
	w.open()
}

// open opens the book at every desk.
func (w *world) open() {
	for _, name := range []string{"scale house", "office"} {
		kept, err := sqlite.Open(w.path, book.Options{})
		if err != nil {
			w.found("the book does not open: %v", err)
			return
		}
		d := &desk{name: name, kept: kept}
		d.Desk, err = scalehouse.Open(ctx, watched{kept, w, name}, scalehouse.Options{
			Name: name, Rates: housetest.Rates(w.t), Place: time.UTC, Who: housetest.Manager, Clock: w.clock, Check: housetest.NoQuestions,
		})
		w.desks = append(w.desks, d)
		if err != nil { // a book that is damaged may open, and not be read
			w.found("the book cannot be read: %v", err)
			w.shut()
			return
		}
	}
}

func (w *world) shut() {
	for _, d := range w.desks {
		_ = d.kept.Close() // on a disk that is gone it cannot be closed in order
	}
	w.desks = nil
}

func (w *world) clock() time.Time { return w.now.Add(w.astray) }

func (w *world) found(format string, args ...any) {
	w.out.Found = append(w.out.Found, fmt.Sprintf("act %d: ", w.out.Acts)+fmt.Sprintf(format, args...))
}

// step lets some time pass and one act happen, with whatever befalls disk and clock.
func (w *world) step() {
	w.out.Acts++
	w.timePasses()
	w.falls()
	d := w.desks[w.draw.IntN(len(w.desks))]
	a := w.choose()
	err := w.tries(d, a)
	struck := w.disk.Struck()
	if err != nil && struck {
		w.out.Refused++
	} else if err != nil {
		w.found("%s was refused: %v", a.name, err)
	}
	if struck && (w.ails != roomless || w.draw.IntN(3) == 0) {
		w.recovers()
	}
	if w.out.Acts%checkEvery == 0 {
		w.recovers()
		w.check()
	}
}

// checkEvery is after how many acts the whole book is checked, if it was not before.
const checkEvery = 100

// tries lets an act happen. A question about the clock must be put where the clock is astray and
// nowhere else; it is answered, and the act done again.
func (w *world) tries(d *desk, a act) error {
	due, before := w.isClockDue(a), len(w.acknowledged)
	err := a.do(w, d)
	switch asked := errors.Is(err, message.ClockStepped); {
	case asked && !due:
		w.found("%s was asked about the clock, which shows %s after a fact of %s", a.name, journal.Stamp(w.clock()), w.lastAt())
	case asked:
		if err = scalehouse.AnswerClock(ctx, d.Desk, "drawn"); err == nil {
			err = a.do(w, d)
		}
	case due && len(w.acknowledged) > before:
		w.found("%s was not asked about the clock, which shows %s", a.name, journal.Stamp(w.clock()))
	}
	return err
}
