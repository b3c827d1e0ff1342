package postgres

import (
	"context"
	"errors"

	"github.com/jackc/pgx/v5"

	"tenthpoint/internal/bin"
	"tenthpoint/internal/book"
	"tenthpoint/internal/journal"
	"tenthpoint/internal/message"
)

// errElsewhere is returned by writes this engine does not support.
var errElsewhere = errors.New("this engine keeps the journal, the numbers and the position, and nothing else")

// Write runs act in a transaction: all of it is kept when Write returns nil, and nothing when it
// returns an error. Writers, of any program, wait for each other: each sees the true end of the
// chain. Readers do not wait.
func (b *Book) Write(ctx context.Context, act func(book.Tx) error) error {
	under, err := b.pool.Begin(ctx)
	if err != nil {
		return err
	}
	defer func() { _ = under.Rollback(context.WithoutCancel(ctx)) }() // after a commit it does nothing
	tx := &write{ctx: ctx, tx: under}
	if _, err := under.Exec(ctx, "LOCK TABLE facts IN EXCLUSIVE MODE"); err != nil {
		return err
	}
	if err := act(tx); err != nil {
		return err
	}
	if tx.failed != nil {
		return tx.failed
	}
	return under.Commit(ctx)
}

// write is a write transaction. PostgreSQL refuses every statement after a failed one; failed
// refuses those that never reach the server.
type write struct {
	ctx    context.Context
	tx     pgx.Tx
	failed error
}

func (w *write) fail(err error) error {
	if w.failed == nil {
		w.failed = err
	}
	return w.failed
}

func (w *write) exec(query string, args ...any) error {
	if w.failed != nil {
		return w.failed
	}
	_, err := w.tx.Exec(w.ctx, query, args...)
	return w.fail(err)
}

// Append enters a fact at the end of the chain.
func (w *write) Append(d journal.Draft) (journal.Fact, error) {
	if problems := d.Problems(); len(problems) > 0 {
		return journal.Fact{}, w.fail(message.Storage.Errorf("this was not entered. %s", message.Texts(" ", problems)))
	}
	last, some, err := head(w.ctx, w.tx)
	if w.fail(err) != nil {
		return journal.Fact{}, w.failed
	}
	before := &last
	if !some {
		before = nil
	}
	f := journal.Link(before, d)
	err = w.exec("INSERT INTO facts ("+columns+") VALUES ($1, $2, $3, $4, $5, $6, $7, $8, $9)",
		f.Seq, f.At, f.Who, f.Desk, f.Kind, f.Subject, string(f.Body), f.Prev, f.Hash)
	return f, err
}

// NextNumber issues the next number of a series.
func (w *write) NextNumber(series string) (n int64, err error) {
	if w.failed != nil {
		return 0, w.failed
	}
	err = w.tx.QueryRow(w.ctx, `INSERT INTO series (name, last) VALUES ($1, 1)
		ON CONFLICT (name) DO UPDATE SET last = series.last + 1 RETURNING last`, series).Scan(&n)
	return n, w.fail(err)
}

// LastAt is the time of the last fact; empty in an empty book.
func (w *write) LastAt() (string, error) {
	last, _, err := head(w.ctx, w.tx)
	return last.At, w.fail(err)
}

// FactsOf is everything that happened to a subject, this write included.
func (w *write) FactsOf(subject string) ([]journal.Fact, error) {
	facts, err := factsOf(w.ctx, w.tx, subject)
	return facts, w.fail(err)
}

// StockBefore is the position in the evening before a day.
func (w *write) StockBefore(day string) ([]book.StockRow, error) {
	rows, err := stockBefore(w.ctx, w.tx, day)
	return rows, w.fail(err)
}

// What follows is not kept here.

func (w *write) KeepEdition(_, _, _ string) error              { return w.fail(errElsewhere) }
func (w *write) PutRecord(book.Record) error                   { return w.fail(errElsewhere) }
func (w *write) MoveGrain(bin.Movement) error                  { return w.fail(errElsewhere) }
func (w *write) BinsBefore(string) ([]bin.Row, error)          { return nil, w.fail(errElsewhere) }
func (w *write) SaveDraft(book.Draft) error                    { return w.fail(errElsewhere) }
func (w *write) DropDrafts(string) error                       { return w.fail(errElsewhere) }
func (w *write) HasRecord(_, _ string) (bool, error)           { return false, w.fail(errElsewhere) }
func (w *write) LastRecord(string) (string, error)             { return "", w.fail(errElsewhere) }
func (w *write) LastIssuedDay() (string, error)                { return "", w.fail(errElsewhere) }
func (w *write) Loads(book.LoadFilter) ([]book.LoadRow, error) { return nil, w.fail(errElsewhere) }
func (w *write) Records(string) ([]book.Record, error)         { return nil, w.fail(errElsewhere) }
func (w *write) LastTicketBefore(string) (int64, error)        { return 0, w.fail(errElsewhere) }
func (w *write) SamplesKept(_, _ string) ([]book.KeptSamples, error) {
	return nil, w.fail(errElsewhere)
}
