package postgres

import (
	"context"
	"errors"
	"time"

	"github.com/jackc/pgx/v5"
	"github.com/jackc/pgx/v5/pgconn"
	"github.com/jackc/pgx/v5/pgxpool"

	"tenthpoint/internal/book"
	"tenthpoint/internal/message"
)

const (
	// lockTimeout is the timeout for any lock, and for a desk's turn to write. A desk that was cut off
	// in its turn costs the others this much until the server has noticed.
	lockTimeout = time.Second
	// mostTries is the number of times an act is run before the book counts as busy.
	mostTries = 12
)

// Write lets act write in the book: everything it did is kept when Write returns nil, and nothing
// when it returns an error, be it act's own. An act that was overtaken by another desk is run again.
func (b *Book) Write(ctx context.Context, act func(book.Tx) error) error {
	if err := b.mayWrite(); err != nil {
		return err
	}
	select {
	case b.turn <- struct{}{}: // of this program
		defer func() { <-b.turn }()
	case <-ctx.Done():
		return ctx.Err()
	}
	for range mostTries {
		if err := b.writeOnce(ctx, act); !isOvertaken(err) {
			return err
		}
	}
	return message.Storage.Errorf("other desks kept writing in the book %s. Nothing was entered. Try again: %w", b.Path(), book.ErrBusy)
}

// isOvertaken reports whether append found that another desk had written meanwhile, or that it had
// to wait too long for one.
func isOvertaken(err error) bool {
	var said *pgconn.PgError
	return errors.As(err, &said) && (said.Code == overtaken || said.Code == lockNotAvailable)
}

func (b *Book) writeOnce(ctx context.Context, act func(book.Tx) error) error {
	var conn *pgxpool.Conn
	var found opening
	err := b.line.once(ctx, func(used context.Context) (err error) {
		if conn, err = b.line.pool.Acquire(used); err != nil {
			return err
		}
		found, err = open(used, conn, b.line.address.turn())
		return err
	})
	if conn != nil {
		defer conn.Release()
		defer b.giveTurn(conn)
	}
	if err != nil {
		return err
	}
	tx := &Tx{source: source{b.line, conn, ctx}, opening: found, pending: newPending()}
	if err := act(tx); err != nil {
		return err
	}
	if tx.fail(nil) != nil || tx.pending.isEmpty() {
		return tx.failed
	}
	return b.keep(ctx, conn, tx)
}

// open takes the desk's turn, if it comes in time, and looks at the book.
func open(ctx context.Context, conn *pgxpool.Conn, turn int64) (found opening, err error) {
	batch := &pgx.Batch{}
	batch.Queue("SELECT pg_advisory_lock($1)", turn)
	batch.Queue(selectOpening).QueryRow(func(row pgx.Row) (err error) {
		found, err = scanOpening(row)
		return err
	})
	if err = conn.SendBatch(ctx, batch).Close(); isOvertaken(err) {
		return scanOpening(conn.QueryRow(ctx, selectOpening))
	}
	return found, err
}

// giveTurn lets the next desk begin. A connection that is cut gives its turn up by itself.
func (b *Book) giveTurn(conn *pgxpool.Conn) {
	ctx, done := context.WithTimeout(context.Background(), lockTimeout)
	defer done()
	if !conn.Conn().IsClosed() {
		_, _ = conn.Exec(ctx, "SELECT pg_advisory_unlock_all()")
	}
}

// keep does what the write collected.
func (b *Book) keep(ctx context.Context, conn *pgxpool.Conn, tx *Tx) error {
	act, err := tx.pending.act()
	if err != nil {
		return err
	}
	err = b.line.once(ctx, func(used context.Context) error {
		b.own.add(tx.writes + 1)
		_, err := conn.Exec(used, "SELECT append($1, $2)", tx.writes, act)
		return err
	})
	if err != nil {
		b.own.drop(tx.writes + 1) // it may be another desk's
	}
	if errors.Is(err, errCut) || ctx.Err() != nil {
		return b.unsure(tx, err)
	}
	return err
}

// unsure finds out what became of a write whose line was cut while the server did it: the server may
// have kept it. It says so where that cannot be found out yet.
func (b *Book) unsure(tx *Tx, said error) error {
	if len(tx.facts) == 0 {
		return said
	}
	last := tx.facts[len(tx.facts)-1]
	ctx, done := context.WithTimeout(context.WithoutCancel(tx.ctx), 2*connectTimeout)
	defer done()
	for ctx.Err() == nil {
		var kept bool
		err := b.line.pool.QueryRow(ctx, "SELECT was_kept($1, $2)", last.Seq, last.Hash).Scan(&kept)
		if err == nil && kept {
			b.line.whole()
			return nil
		}
		if err == nil {
			return said
		}
		select {
		case <-ctx.Done():
		case <-time.After(retryAfter / 4):
		}
	}
	return message.Storage.Errorf("the line to the book %s was cut while this was being entered, and the book does not answer yet. "+
		"Whether it was entered shows when the line is back: look before you do it again: %w", b.Path(), errCut)
}

// exec runs one statement beside the journal.
func (b *Book) exec(ctx context.Context, statement string, args ...any) error {
	return b.line.once(ctx, func(used context.Context) error {
		_, err := b.line.pool.Exec(used, statement, args...)
		return err
	})
}
