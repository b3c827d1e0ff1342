package sqlite

import (
	"context"
	"database/sql"
	"errors"

	"tenthpoint/internal/book"
	"tenthpoint/internal/journal"
)

// Tx is a write transaction. It belongs to the function it was passed to and is invalid after that
// function returns. After its first failure every later call fails the same way and the write
// cannot be kept, so a use case that overlooks an error still enters nothing.
type Tx struct {
	book   *Book
	ctx    context.Context
	ends   context.Context // cancels the write when it is done
	last   *journal.Fact   // the end of the chain, once looked up
	failed error
}

// Write lets act write in the book: everything it did is kept, on the disk,
// when Write returns nil, and nothing when it returns an error, be it act's
// own. Writes of one program queue up; act must not call Write itself.
//
// If another program is writing for longer than book.Options.Busy the error is
// ErrBusy.
func (b *Book) Write(ctx context.Context, act func(book.Tx) error) error {
	return b.inWrite(ctx, func(tx *Tx) error { return act(tx) })
}

func (b *Book) inWrite(ctx context.Context, act func(*Tx) error) error {
	if b.write == nil {
		return b.file.onlyRead()
	}
	w := b.write
	if err := w.take(ctx); err != nil {
		return err
	}
	defer w.give()
	// A statement with a context that can end costs a goroutine; the write
	// itself already ends with ctx.
	lasting := context.WithoutCancel(ctx)
	if err := b.file.pinned.Lost(); err != nil {
		return err
	}
	if err := w.run(lasting, "BEGIN IMMEDIATE"); err != nil {
		return b.file.wrote(err)
	}
	tx := &Tx{book: b, ctx: lasting, ends: ctx}
	kept := false
	defer func() {
		if !kept {
			_ = w.run(lasting, "ROLLBACK") // what failed may have done so already
		}
	}()
	if err := act(tx); err != nil {
		return err
	}
	if err := tx.ended(); err != nil {
		return err
	}
	if err := b.file.pinned.Lost(); err != nil {
		return err
	}
	err := w.run(lasting, "COMMIT")
	kept = err == nil
	return b.file.wrote(err)
}

// ended returns the first failure, or the cancellation by the caller.
func (tx *Tx) ended() error {
	if tx.failed == nil {
		tx.failed = tx.ends.Err()
	}
	return tx.failed
}

// fail notes the first failure and returns it; without one it is nil.
func (tx *Tx) fail(err error) error {
	if tx.failed == nil && err != nil {
		tx.failed = tx.book.file.wrote(err)
	}
	return tx.failed
}

// stmt is the query's prepared statement.
func (tx *Tx) stmt(query string) (*sql.Stmt, error) {
	if err := tx.ended(); err != nil {
		return nil, err
	}
	prepared, err := tx.book.write.stmt(tx.ctx, query)
	return prepared, tx.fail(err)
}

// exec runs one statement for a read model.
func (tx *Tx) exec(query string, args ...any) (sql.Result, error) {
	prepared, err := tx.stmt(query)
	if err != nil {
		return nil, err
	}
	result, err := prepared.ExecContext(tx.ctx, args...)
	return result, tx.fail(err)
}

// query reads rows as the write has left them so far. Close the rows before
// the next call.
func (tx *Tx) query(query string, args ...any) (*sql.Rows, error) {
	prepared, err := tx.stmt(query)
	if err != nil {
		return nil, err
	}
	rows, err := prepared.QueryContext(tx.ctx, args...)
	return rows, tx.fail(err)
}

// queryRow reads one row as the write has left it so far.
func (tx *Tx) queryRow(query string, args ...any) row {
	prepared, err := tx.stmt(query)
	if err != nil {
		return row{tx: tx}
	}
	return row{tx, prepared.QueryRowContext(tx.ctx, args...)}
}

// A row is the answer to queryRow.
type row struct {
	tx  *Tx
	row *sql.Row // nil after a failure
}

// Scan reads the row's columns into dest. It returns sql.ErrNoRows if there is no row, which does
// not fail the write.
func (r row) Scan(dest ...any) error {
	if r.row == nil {
		return r.tx.failed
	}
	err := r.row.Scan(dest...)
	if errors.Is(err, sql.ErrNoRows) {
		return err
	}
	return r.tx.fail(err)
}
