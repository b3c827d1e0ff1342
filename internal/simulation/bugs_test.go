package simulation

import (
	"fmt"
	"testing"

	"tenthpoint/internal/book"
	"tenthpoint/internal/book/sqlite/sqlitetest"
	"tenthpoint/internal/journal"
)

// Each bug that a program could have is found; the same elevator without it has none.
func TestAPlantedBugIsFound(t *testing.T) {
	for name, bug := range map[string]Bug{
		"nothing is synced":      {Forgets: true},
		"prev is not looked up":  {Wrote: remembersTheEnd(t)},
		"a number is used again": {Tx: func(tx book.Tx) book.Tx { return reusing{tx} }},
		"the clock is believed":  {Tx: func(tx book.Tx) book.Tx { return believing{tx} }},
		"half a row is written":  {Tx: func(tx book.Tx) book.Tx { return halving{tx} }},
	} {
		t.Run(name, func(t *testing.T) {
			out := Run(t, *seed, *turns, bug)
			if len(out.Found) == 0 {
				t.Errorf("not found: %s", out)
			} else {
				t.Log(out.Found[0])
			}
		})
	}
}

// remembersTheEnd is a desk that links to the last fact it wrote itself, not to the last in the
// book: the other desk may have written since. The book's own guard against that is gone.
func remembersTheEnd(t *testing.T) func(path, desk string, facts []journal.Fact) []journal.Fact {
	own := map[string]journal.Fact{}
	return func(path, desk string, facts []journal.Fact) []journal.Fact {
		if before, some := own[desk]; some && len(facts) == 1 && before.Seq < facts[0].Seq-1 {
			f := facts[0]
			wrong := journal.Link(&before, journal.Entry{At: f.At, Who: f.Who, Desk: f.Desk, Kind: f.Kind, Subject: f.Subject, Body: f.Body})
			sqlitetest.Unguarded(t, path, fmt.Sprintf("UPDATE facts SET prev = '%s', hash = '%s' WHERE seq = %d", wrong.Prev, wrong.Hash, f.Seq))
			facts[0].Prev, facts[0].Hash = wrong.Prev, wrong.Hash
		}
		if len(facts) > 0 {
			own[desk] = facts[len(facts)-1]
		}
		return facts
	}
}

// reusing gives a ticket number out again, as a program that counts for itself.
type reusing struct{ book.Tx }

func (tx reusing) NextNumber(series string) (int64, error) {
	n, err := tx.Tx.NextNumber(series)
	if series == "ticket" && n%5 == 0 {
		n--
	}
	return n, err
}

// believing takes the time of the clock, whatever the book says.
type believing struct{ book.Tx }

func (believing) LastAt() (string, error) { return "", nil }

// halving leaves cells of a ticket's row empty.
type halving struct{ book.Tx }

func (tx halving) PutLoad(r book.LoadRow) error {
	if r.Ticket%5 == 4 {
		r.Truck, r.Weigher = "", ""
	}
	return tx.Tx.PutLoad(r)
}
