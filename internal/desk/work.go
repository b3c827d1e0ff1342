package desk

import (
	"context"
	"fmt"
	"maps"
	"reflect"
	"slices"
	"strings"

	"tenthpoint/internal/journal"
	"tenthpoint/internal/load"
	"tenthpoint/internal/moisture"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/store"
)

// Work is acts in one transaction: all of them come to be, or none. Loads that
// were touched stay replayed until it ends, and their rows are renewed once, at
// the end.
type Work struct {
	desk    *Desk
	tx      *store.Tx
	loads   map[string]*load.Load
	tickets map[int64]string         // number -> load, of tickets issued in this work
	touched map[string]bool          // loads whose rows may be due
	rows    map[string]store.LoadRow // rows as the lists have them
	// doubted are the flags of meters by meter and day, as far as asked for.
	doubted map[string][]moisture.Flag
}

// Together does several acts in one transaction, as an import does.
func (d *Desk) Together(ctx context.Context, acts func(*Work) error) error {
	if err := d.one(ctx, acts); err != nil {
		return err
	}
	return d.reload(ctx)
}

// one does acts in a transaction of their own.
func (d *Desk) one(ctx context.Context, acts func(*Work) error) error {
	return d.book.Write(ctx, func(tx *store.Tx) error {
		w := &Work{
			desk: d, tx: tx, loads: map[string]*load.Load{}, tickets: map[int64]string{},
			touched: map[string]bool{}, rows: map[string]store.LoadRow{},
		}
		if err := acts(w); err != nil {
			return err
		}
		return w.renewRows()
	})
}

// renewRows brings the rows of all loads touched up to date. A weight alone
// changes nothing in a row, and a driver is waiting: such a row is left.
func (w *Work) renewRows() error {
	for _, id := range slices.Sorted(maps.Keys(w.touched)) {
		is := row(w.loads[id])
		was, known := w.rows[id]
		if known && reflect.DeepEqual(was, is) {
			continue
		}
		if known && isHere(was) && !isHere(is) {
			if err := w.tx.DropDraftsOf(id); err != nil {
				return err
			}
		}
		if err := w.tx.PutLoad(is); err != nil {
			return err
		}
		w.rows[id] = is
	}
	clear(w.touched)
	return nil
}

// isHere reports whether the load of a row stands on the yard.
func isHere(r store.LoadRow) bool {
	return r.Phase == string(load.OnYard) || r.Phase == string(load.Ready)
}

func (w *Work) draft(kind, subject string, body []byte) journal.Draft {
	return journal.Draft{
		At: w.desk.Now(), Who: w.desk.whoOrNobody(), Desk: w.desk.name,
		Kind: kind, Subject: subject, Body: body,
	}
}

// whoOrNobody is the name for facts; acts that need a person have asked before.
func (d *Desk) whoOrNobody() string {
	if d.who.Name == "" {
		return "nobody signed in"
	}
	return d.who.Name
}

const loadSubject = "load "

func subject(loadID string) string { return loadSubject + loadID }

// loadOf is the load that a fact's subject names, if it names one.
func loadOf(subject string) (id string, ok bool) {
	return strings.CutPrefix(subject, loadSubject)
}

// load replays a load inside the transaction.
func (w *Work) load(id string) (*load.Load, error) {
	if l, ok := w.loads[id]; ok {
		return l, nil
	}
	facts, err := w.tx.FactsOf(subject(id))
	if err != nil {
		return nil, err
	}
	l, err := Replay(id, facts)
	if err != nil {
		return nil, err
	}
	w.loads[id], w.rows[id] = l, row(l)
	return l, w.desk.equip(context.Background(), l)
}

// Replay adds up the journal's facts about one load. No facts at all is a load
// that is not in the book.
func Replay(id string, facts []journal.Fact) (*load.Load, error) {
	if len(facts) == 0 {
		return nil, fmt.Errorf("there is no load %s in this book", id)
	}
	stamped := make([]load.Stamped, 0, len(facts))
	for _, f := range facts {
		fact, err := load.Read(f.Kind, f.Body)
		if err != nil {
			return nil, fmt.Errorf("fact %d: %w", f.Seq, err)
		}
		stamped = append(stamped, load.Stamped{Fact: fact, Stamp: load.Stamp{At: f.At, Who: f.Who, Desk: f.Desk}})
	}
	return load.Replay(id, stamped)
}

// happen lets a fact happen to a load: it is applied and appended, and the
// load's row is due.
func (w *Work) happen(l *load.Load, f load.Fact) (journal.Fact, error) {
	body, err := journal.Canonical(f)
	if err != nil {
		return journal.Fact{}, err
	}
	draft := w.draft(f.Kind(), subject(l.ID), body)
	stamp := load.Stamp{At: draft.At, Who: draft.Who, Desk: draft.Desk}
	if err := l.Apply(load.Stamped{Fact: f, Stamp: stamp}); err != nil {
		return journal.Fact{}, err
	}
	w.touched[l.ID] = true
	return w.tx.Append(draft)
}

// businessDay is the day an act counts in: today, or the first open day.
func (w *Work) businessDay() (quantity.Date, error) { return w.openDay(w.desk.Today()) }

// openDay is a day, or the first one after the last closed day where that is
// later. The sheet of a closed day tells the position and the ticket number it
// began with, so nothing may count before it: not after a clock was set back, nor
// on an earlier day that was never closed.
func (w *Work) openDay(day quantity.Date) (quantity.Date, error) {
	text, err := w.tx.LastStanding(DayClosed{}.Kind())
	if err != nil || text == "" {
		return day, err
	}
	closed, err := date(text)
	if err == nil && !day.After(closed) {
		day = closed.AddDays(1)
	}
	return day, err
}
