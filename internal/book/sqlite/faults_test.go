package sqlite

import (
	"flag"
	"fmt"
	"math/rand/v2"
	"os"
	"path/filepath"
	"slices"
	"testing"

	"tenthpoint/internal/book"
	"tenthpoint/internal/book/sqlite/faultdisk"
	"tenthpoint/internal/journal"
)

// clerk works at a book on a faulty disk and remembers what was acknowledged.
type clerk struct {
	acknowledged []journal.Fact
	numbers      []int64
	next         int
}

// work opens the book, enters some acts with a number each, and closes it.
func (c *clerk) work(path string, acts int) {
	b, err := Open(path, book.Options{})
	if err != nil {
		return
	}
	defer b.Close()
	for range acts {
		var facts []journal.Fact
		var number int64
		err := b.Write(ctx, func(tx book.Tx) (err error) {
			facts = nil
			if number, err = tx.NextNumber("ticket"); err != nil {
				return err
			}
			for range 2 {
				f, err := tx.Append(draft(c.next))
				if err != nil {
					return err
				}
				facts = append(facts, f)
				c.next++
			}
			return nil
		})
		if err == nil {
			c.acknowledged, c.numbers = append(c.acknowledged, facts...), append(c.numbers, number)
		}
	}
}

// missing is what a book lacks, on a disk that works again: it must be sound, have
// every fact acknowledged, and have given no number twice.
func (c *clerk) missing(path string) (wrong []string) {
	b, err := Open(path, book.Options{})
	if err != nil {
		return []string{fmt.Sprintf("the book does not open: %v", err)}
	}
	defer b.Close()
	problems, err := b.Verify(ctx)
	if err != nil {
		wrong = append(wrong, err.Error())
	}
	for _, p := range problems {
		wrong = append(wrong, p.String())
	}
	var hashes []string
	for f, err := range b.Facts(ctx, book.FactFilter{}) {
		if err != nil {
			return append(wrong, err.Error())
		}
		hashes = append(hashes, f.Hash)
	}
	for _, f := range c.acknowledged {
		if f.Seq > int64(len(hashes)) || hashes[f.Seq-1] != f.Hash {
			wrong = append(wrong, fmt.Sprintf("fact %d was acknowledged and is not in the book", f.Seq))
		}
	}
	return append(wrong, c.misnumbered(b)...)
}

func (c *clerk) misnumbered(b *Book) (wrong []string) {
	slices.Sort(c.numbers)
	if len(slices.Compact(slices.Clone(c.numbers))) != len(c.numbers) {
		wrong = append(wrong, fmt.Sprintf("numbers %v", c.numbers))
	}
	last, err := b.LastNumber(ctx, "ticket")
	if err != nil {
		wrong = append(wrong, err.Error())
	}
	for _, n := range c.numbers {
		if n > last {
			wrong = append(wrong, fmt.Sprintf("number %d was given out and the book is at %d", n, last))
		}
	}
	return wrong
}

// someBook is a book with a few facts, as bytes to be copied.
func someBook(t *testing.T) []byte {
	b := newBook(t)
	appendTo(t, b, 4)
	if err := b.Close(); err != nil {
		t.Fatal(err)
	}
	whole, err := os.ReadFile(b.Path())
	if err != nil {
		t.Fatal(err)
	}
	return whole
}

// everyFault is 1 for a long run, in which each call to the disk fails in turn; else
// so many calls are passed over.
var everyFault = flag.Int("every-fault", 4, "let every so manieth call to the disk fail")

// eachFault works at a copy of a book once for every call to the disk, which fails,
// and hands on what was then wrong.
func eachFault(t *testing.T, how faultdisk.Fault, forgets bool, after func(d *faultdisk.Disk, call int), found func(call int, wrong []string)) {
	t.Helper()
	whole := someBook(t)
	d := faultdisk.New(t)
	d.Forgets = forgets
	for call, reached := 1, true; reached; call += *everyFault {
		path := filepath.Join(t.TempDir(), "house.book")
		if err := os.WriteFile(path, whole, 0o644); err != nil {
			t.Fatal(err)
		}
		c := &clerk{next: 4}
		d.Fail(call, how)
		c.work(path, 3)
		reached = d.Calls() >= call
		if after != nil {
			after(d, call)
		}
		d.Fail(0, faultdisk.Once)
		found(call, c.missing(path))
		if !reached && (len(c.acknowledged) != 6 || call < 50) {
			t.Errorf("%d calls came to the disk, and without a fault %d of 6 facts were acknowledged", call-1, len(c.acknowledged))
		}
	}
}

func nothingIsWrong(t *testing.T) func(int, []string) {
	return func(call int, wrong []string) {
		if len(wrong) > 0 {
			t.Errorf("call %d: %q", call, wrong)
		}
	}
}

// A call to the disk that fails once, whichever, loses nothing that was acknowledged.
func TestEachCallToTheDiskMayFail(t *testing.T) {
	eachFault(t, faultdisk.Once, false, nil, nothingIsWrong(t))
}

// Nor does a disk that is full from some call on.
func TestTheDiskMayBeFullFromAnyCall(t *testing.T) {
	eachFault(t, faultdisk.Full, false, nil, nothingIsWrong(t))
}

// Nor does the power, whenever it goes, with what was not synced gone or torn.
func TestThePowerMayGoAtAnyCall(t *testing.T) {
	eachFault(t, faultdisk.Death, false, torn(t), nothingIsWrong(t))
}

func torn(t *testing.T) func(*faultdisk.Disk, int) {
	return func(d *faultdisk.Disk, call int) { d.AfterPowerCut(t, rand.New(rand.NewPCG(uint64(call), *faultSeed))) }
}

var faultSeed = flag.Uint64("fault-seed", 14, "what is torn at a power cut is drawn from")

// A disk that syncs nothing does lose what was acknowledged, and that is seen: else the
// tests above would show nothing.
func TestADiskThatNeverSyncsIsFound(t *testing.T) {
	seen := 0
	eachFault(t, faultdisk.Death, true, torn(t), func(_ int, wrong []string) {
		if len(wrong) > 0 {
			seen++
		}
	})
	if seen == 0 {
		t.Error("nothing acknowledged was lost without a sync")
	}
}
