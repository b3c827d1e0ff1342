package booktest

import (
	"bufio"
	"fmt"
	"math/rand/v2"
	"os"
	"os/exec"
	"strconv"
	"testing"
	"time"

	"tenthpoint/internal/book"
	"tenthpoint/internal/journal"
	"tenthpoint/internal/quantity"
)

// The test binary, started again with these set, is the program that is killed.
const (
	writerPlace = "TENTHPOINT_BOOKTEST_PLACE"
	writerStops = "TENTHPOINT_BOOKTEST_STOPS" // in the middle of its first write
)

// poundsOfLoad is the weight each load of the killed program adds to its bin.
const poundsOfLoad = 10

// Killed is the part of the suite about a program that ends without a word: another program writes
// load after load and is killed at a moment drawn from the seed, again and again in one book. Each
// load it has acknowledged is there when the book is opened again; of the one under way there is
// all or nothing; the chain is sound, and no number is missing. The engine's TestMain lets the test
// binary be that program, by WriteUntilKilled.
func Killed[B PositionStore](t *testing.T, e Engine[B], seed uint64) {
	t.Logf("seed %d", seed)
	r := rand.New(rand.NewPCG(seed, 0))
	b := e.New(t)
	must(t, b.Close())
	acknowledged := int64(0)
	for round := range 8 {
		w := startWriter(t, e.Place(b), round == 5)
		switch round {
		case 0: // perhaps before it has opened the book
			time.Sleep(time.Duration(r.IntN(40)) * time.Millisecond)
		case 5:
			w.read(1)
		default:
			w.read(1 + r.IntN(12))
			time.Sleep(time.Duration(r.IntN(3000)) * time.Microsecond)
		}
		acknowledged = max(acknowledged, w.kill())
		acknowledged = goesOn(t, e, b, acknowledged)
	}
}

// goesOn opens the book after a kill, checks it, and writes the next load. It returns the last load
// there is then.
func goesOn[B PositionStore](t *testing.T, e Engine[B], b B, acknowledged int64) int64 {
	t.Helper()
	again := e.Reopen(t, b)
	defer func() { must(t, again.Close()) }()
	// A server may still be ending the write of the program that is gone; the next write waits.
	must(t, again.Write(ctx, func(book.Tx) error { return nil }))
	last, err := again.LastNumber(ctx, "ticket")
	must(t, err)
	if last < acknowledged || last > acknowledged+1 {
		t.Fatalf("load %d was acknowledged, the last in the book is %d", acknowledged, last)
	}
	wantLoads(t, again, last)
	next, err := writeLoad(again, func() {})
	must(t, err)
	if next != last+1 {
		t.Fatalf("after load %d comes %d", last, next)
	}
	wantLoads(t, again, next)
	return next
}

// wantLoads checks that a book holds the first n loads whole and nothing else.
func wantLoads(t *testing.T, b PositionStore, n int64) {
	t.Helper()
	sound(t, b)
	written := facts(t, b)
	if int64(len(written)) != 3*n {
		t.Fatalf("%d facts of %d loads", len(written), n)
	}
	var before *journal.Fact
	for i, f := range written {
		if want := journal.Link(before, entry(i)); f.Hash != want.Hash {
			t.Fatalf("fact %d is of %s, want %s", f.Seq, f.Subject, want.Subject)
		}
		before = &f
	}
	stock, err := b.StockBefore(ctx, "2026-10-02")
	must(t, err)
	total := quantity.Int(0, quantity.Lb)
	for _, row := range stock {
		total = total.Add(row.Weight)
	}
	if want := quantity.Int(poundsOfLoad*n, quantity.Lb); !total.Equal(want) {
		t.Errorf("%s in the bin, want %s", total, want)
	}
}

// writeLoad writes the next load: a number, three facts and a row, in one write. It calls halfway in
// the middle of it.
func writeLoad(b Store, halfway func()) (number int64, err error) {
	err = b.Write(ctx, func(tx book.Tx) error {
		var err error
		if number, err = tx.NextNumber("ticket"); err != nil {
			return err
		}
		for step := range 3 {
			if _, err := tx.Append(entry(3*(int(number)-1) + step)); err != nil {
				return err
			}
			if step == 1 {
				halfway()
			}
		}
		return tx.PutLoad(ticket(number, "2026-10-01", "A", poundsOfLoad))
	})
	return number, err
}

// WriteUntilKilled is the program that is killed: it writes load after load and says the number of
// each when it is written. In any other process it returns false at once.
func WriteUntilKilled[B Store](open func(place string) (B, error)) bool {
	place, ok := os.LookupEnv(writerPlace)
	if !ok {
		return false
	}
	b, err := open(place)
	halfway := func() {}
	if os.Getenv(writerStops) != "" {
		halfway = func() {
			fmt.Println(0)
			time.Sleep(time.Hour)
		}
	}
	for err == nil {
		var number int64
		if number, err = writeLoad(b, halfway); err == nil {
			fmt.Println(number)
		}
	}
	fmt.Fprintln(os.Stderr, err)
	return true
}

// writer is the other program while it runs.
type writer struct {
	t       *testing.T
	program *exec.Cmd
	said    *bufio.Scanner
	last    int64
}

func startWriter(t *testing.T, place string, stops bool) *writer {
	t.Helper()
	program := exec.Command(os.Args[0])
	program.Env = append(os.Environ(), writerPlace+"="+place)
	if stops {
		program.Env = append(program.Env, writerStops+"=yes")
	}
	program.Stderr = os.Stderr
	out, err := program.StdoutPipe()
	must(t, err)
	must(t, program.Start())
	t.Cleanup(func() {
		_ = program.Process.Kill()
		_ = program.Wait()
	})
	return &writer{t: t, program: program, said: bufio.NewScanner(out)}
}

// read waits until the program has acknowledged so many loads more.
func (w *writer) read(loads int) {
	w.t.Helper()
	for range loads {
		if !w.next() {
			w.t.Fatal("the program ended by itself")
		}
	}
}

func (w *writer) next() bool {
	w.t.Helper()
	if !w.said.Scan() {
		return false
	}
	number, err := strconv.ParseInt(w.said.Text(), 10, 64)
	must(w.t, err)
	w.last = max(w.last, number)
	return true
}

// kill ends the program and returns the last load it acknowledged, also between our last look and
// its end.
func (w *writer) kill() int64 {
	w.t.Helper()
	must(w.t, w.program.Process.Kill())
	for w.next() {
	}
	_ = w.program.Wait()
	return w.last
}
