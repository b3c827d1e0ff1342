package store

import (
	"context"
	"database/sql"
	"errors"
	"fmt"

	"tenthpoint/internal/journal"
)

// A Tx is a write under way. It belongs to the function it was handed to and
// is of no use after that function returns. After its first failure every
// later call fails the same way and the write cannot be kept, so a use case
// that overlooks an error still enters nothing.
type Tx struct {
	book   *Book
	ctx    context.Context
	sql    *sql.Tx
	stmts  map[string]*sql.Stmt
	last   *journal.Fact // the end of the chain, once looked up
	failed error
}

// Write lets act write in the book: everything it did is kept, on the disk,
// when Write returns nil, and nothing when it returns an error, be it act's
// own. Writes of one program queue up; act must not call Write itself.
//
// If another program is writing for longer than Options.Busy the error is
// ErrBusy.
func (b *Book) Write(ctx context.Context, act func(*Tx) error) error {
	if b.write == nil {
		return fmt.Errorf("The book %s is open for reading only. Nothing was entered.", b.path)
	}
	b.stmts.prepare(ctx, b.write)
	begun, err := b.write.BeginTx(ctx, nil)
	if err != nil {
		return b.sentence(err)
	}
	defer begun.Rollback() // nothing after a commit
	// A statement with a context that can end costs a goroutine; the
	// transaction itself already ends with ctx.
	tx := &Tx{book: b, ctx: context.WithoutCancel(ctx), sql: begun, stmts: map[string]*sql.Stmt{}}
	if err := act(tx); err != nil {
		return err
	}
	if tx.failed != nil {
		return tx.failed
	}
	return b.sentence(begun.Commit())
}

// fail notes the first failure and returns it; without one it is nil.
func (tx *Tx) fail(err error) error {
	if tx.failed == nil && err != nil {
		tx.failed = tx.book.sentence(err)
	}
	return tx.failed
}

// stmt is the query's prepared statement in this write.
func (tx *Tx) stmt(query string) (*sql.Stmt, error) {
	if tx.failed != nil {
		return nil, tx.failed
	}
	if known, ok := tx.stmts[query]; ok {
		return known, nil
	}
	var prepared *sql.Stmt
	if ready, ok := tx.book.stmts.find(query); ok {
		prepared = tx.sql.StmtContext(tx.ctx, ready)
	} else {
		var err error
		if prepared, err = tx.sql.PrepareContext(tx.ctx, query); err != nil {
			return nil, tx.fail(err)
		}
	}
	tx.stmts[query] = prepared
	return prepared, nil
}

// Exec runs one statement for a read model.
func (tx *Tx) Exec(query string, args ...any) (sql.Result, error) {
	prepared, err := tx.stmt(query)
	if err != nil {
		return nil, err
	}
	result, err := prepared.ExecContext(tx.ctx, args...)
	return result, tx.fail(err)
}

// Query reads rows as the write has left them so far. Close the rows before
// the next call.
func (tx *Tx) Query(query string, args ...any) (*sql.Rows, error) {
	prepared, err := tx.stmt(query)
	if err != nil {
		return nil, err
	}
	rows, err := prepared.QueryContext(tx.ctx, args...)
	return rows, tx.fail(err)
}

// QueryRow reads one row as the write has left it so far.
func (tx *Tx) QueryRow(query string, args ...any) Row {
	prepared, err := tx.stmt(query)
	if err != nil {
		return Row{tx: tx}
	}
	return Row{tx, prepared.QueryRowContext(tx.ctx, args...)}
}

// A Row is the answer to QueryRow.
type Row struct {
	tx  *Tx
	row *sql.Row // nil after a failure
}

// Scan reads the row's columns into dest. That there is no row is
// sql.ErrNoRows, and the write goes on.
func (r Row) Scan(dest ...any) error {
	if r.row == nil {
		return r.tx.failed
	}
	err := r.row.Scan(dest...)
	if errors.Is(err, sql.ErrNoRows) {
		return err
	}
	return r.tx.fail(err)
}
