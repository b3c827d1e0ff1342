// Package mirror makes a site's book again from its chain.
//
// A book is its facts and the texts they name; lists, positions and numbers follow from them. So the
// office needs no second way to work anything out: it makes the book again, and every answer and
// paper of a desk comes out of the copy as it does at the site, with the working that the site used.
// The same makes a book anew for a site that lost its own.
//
// A site may run a newer program than the office. Facts of a kind, or in a form, that this program
// does not know are entered as they are, so that the chain is whole, and counted as not shown; lists
// are as if they had not happened yet.
package mirror

import (
	"context"
	"iter"
	"reflect"
	"slices"
	"strings"

	"tenthpoint/internal/bin"
	"tenthpoint/internal/book"
	"tenthpoint/internal/headoffice"
	"tenthpoint/internal/journal"
	"tenthpoint/internal/load"
	"tenthpoint/internal/message"
	"tenthpoint/internal/numbering"
	"tenthpoint/internal/office"
)

// Book is the book that is made.
type Book interface {
	Head(context.Context) (last journal.Fact, some bool, err error)
	LastNumber(ctx context.Context, series string) (int64, error)
	Write(ctx context.Context, act func(book.Tx) error) error
}

// Extended counts the facts added to a book.
type Extended struct {
	Facts    int64
	NotShown int64 // of the facts, those this program cannot read
	// Newer is the first kind that could not be read.
	Newer string
}

// mostInOne is the most facts entered in one transaction.
const mostInOne = 1000

// Extend enters texts and facts that follow a book's last in it, and brings its lists up to date.
// Facts that do not follow, or are not what their hash says, end it with an error.
func Extend(ctx context.Context, b Book, texts []headoffice.Text, facts iter.Seq2[journal.Fact, error]) (Extended, error) {
	w := &work{numbers: map[string]int64{}}
	for _, series := range numbering.Series {
		last, err := b.LastNumber(ctx, series)
		if err != nil {
			return w.out, err
		}
		w.numbers[series] = last
	}
	err := b.Write(ctx, func(tx book.Tx) error {
		for _, t := range texts {
			if err := tx.KeepEdition(t.ID, t.SHA256, t.Text); err != nil {
				return err
			}
		}
		return nil
	})
	if err != nil {
		return w.out, err
	}
	next, stop := iter.Pull2(facts)
	defer stop()
	for more := true; more; {
		err := b.Write(ctx, func(tx book.Tx) error {
			w.begin(tx)
			for range mostInOne {
				f, err, some := next()
				if more = some; !some || err != nil {
					return err
				}
				if err := w.enter(f); err != nil {
					return err
				}
			}
			return nil
		})
		if err != nil {
			return w.out, err
		}
	}
	return w.out, nil
}

// work is a book being extended.
type work struct {
	tx      book.Tx
	numbers map[string]int64
	out     Extended
	loads   map[string]*load.Load // of this transaction; nil for one that cannot be read
	rows    map[string]book.LoadRow
}

func (w *work) begin(tx book.Tx) {
	w.tx, w.loads, w.rows = tx, map[string]*load.Load{}, map[string]book.LoadRow{}
}

// enter enters a fact and what follows from it.
func (w *work) enter(f journal.Fact) error {
	entered, err := w.tx.Append(journal.Entry{At: f.At, Who: f.Who, Desk: f.Desk, Kind: f.Kind, Subject: f.Subject, Body: f.Body})
	if err != nil {
		return err
	}
	if entered.Seq != f.Seq || entered.Hash != f.Hash {
		return message.Storage.Errorf("fact %d does not follow fact %d of the copy. Make the copy anew", f.Seq, entered.Seq-1)
	}
	w.out.Facts++
	shown, err := w.follow(f)
	if err != nil {
		return err
	}
	if !shown {
		w.out.NotShown++
		if w.out.Newer == "" {
			w.out.Newer = f.Kind
		}
		return nil
	}
	return w.giveOut(f)
}

// follow brings the lists up to a fact; it is not shown where this program cannot read it.
func (w *work) follow(f journal.Fact) (shown bool, err error) {
	if id, is := office.LoadOfSubject(f.Subject); is {
		return w.followLoad(id, f)
	}
	if !readable(f) {
		return false, nil
	}
	id, is := recordID(f)
	if !is {
		return true, nil
	}
	now := book.Record{Kind: f.Kind, ID: id, Seq: f.Seq, Body: f.Body}
	was, err := w.ownerBefore(now)
	if err != nil {
		return true, err
	}
	if err := w.tx.PutRecord(now); err != nil {
		return true, err
	}
	if f.Kind != (bin.Movement{}).Kind() {
		return true, w.owned(was, now)
	}
	m, err := journal.ReadBody[bin.Movement](f.Body)
	if err != nil {
		return true, err
	}
	return true, w.tx.MoveGrain(m)
}

// ownerBefore is the record as it was until now, where it moves grain between owners.
func (w *work) ownerBefore(is book.Record) (journal.Kinded, error) {
	if !slices.Contains(book.OwnerKinds, is.Kind) {
		return nil, nil
	}
	all, err := w.tx.Records(is.Kind)
	if err != nil {
		return nil, err
	}
	for _, r := range all {
		if r.ID == is.ID {
			return book.ReadOwner(r)
		}
	}
	return nil, nil
}

// owned brings the owners of the grain up to a record.
func (w *work) owned(was journal.Kinded, r book.Record) error {
	is, err := book.ReadOwner(r)
	if err != nil || is == nil {
		return err
	}
	return w.tx.MoveOwners(was, is)
}

// recordID is the id of the record that a fact is, if it is one: its subject is its kind and the id,
// or a day.
func recordID(f journal.Fact) (id string, is bool) {
	kind := f.Kind
	if kind == (office.DayClosed{}).Kind() {
		kind = "day"
	}
	return strings.CutPrefix(f.Subject, kind+" ")
}

// followLoad brings the row of a load up to a fact. A load with a fact that cannot be read stays as
// it was before.
func (w *work) followLoad(id string, f journal.Fact) (shown bool, err error) {
	l, known := w.loads[id]
	if !known {
		if l, err = w.loadBefore(id, f.Seq); err != nil {
			return false, err
		}
		if l != nil && l.Opened.At != "" {
			w.rows[id] = office.RowOf(l)
		}
	}
	w.loads[id] = l
	if l == nil {
		return false, nil
	}
	fact, err := load.Read(f.Kind, f.Body)
	if err == nil {
		err = l.Apply(load.Stamped{Fact: fact, Stamp: load.Stamp{At: f.At, Who: f.Who, Desk: f.Desk}})
	}
	if err != nil { // of a newer program: the load waits
		w.loads[id] = nil
		return false, nil
	}
	row := office.RowOf(l)
	if was, had := w.rows[id]; had && reflect.DeepEqual(was, row) {
		return true, nil
	}
	w.rows[id] = row
	return true, w.tx.PutLoad(row)
}

// loadBefore replays a load up to a fact; nil where one of its facts cannot be read.
func (w *work) loadBefore(id string, seq int64) (*load.Load, error) {
	facts, err := w.tx.FactsOf(office.LoadSubject(id))
	if err != nil {
		return nil, err
	}
	for i, f := range facts {
		if f.Seq == seq {
			facts = facts[:i]
			break
		}
	}
	if len(facts) == 0 {
		return &load.Load{ID: id, Phase: load.NotOpened}, nil
	}
	l, unreadable := office.Replay(id, facts)
	if unreadable != nil { // it waits for a program that can
		return nil, nil
	}
	return l, nil
}
