package sqlite

import (
	"context"
	"database/sql"
	"errors"
	"tenthpoint/internal/book/sqlite/access"
	"time"
)

// A writer is the one connection that writes. Its statements stay prepared from
// one write to the next, those that begin and end a write among them: preparing
// takes longer than running, and a driver waits.
type writer struct {
	db   *sql.DB
	conn *sql.Conn
	turn chan struct{} // holds one while nobody writes
	kept map[string]*sql.Stmt
	once []*sql.Stmt // beyond those kept, of the write under way
}

// mostStatements limits the cache of prepared statements, in case figures are put into SQL text.
const mostStatements = 100

func newWriter(path string, a access.Purpose, busy time.Duration) (*writer, error) {
	db, err := access.Connect(path, a, 1)
	if err != nil {
		return nil, err
	}
	conn, err := firstConn(db, busy)
	if err != nil {
		return nil, errors.Join(err, db.Close())
	}
	w := &writer{db: db, conn: conn, turn: make(chan struct{}, 1), kept: map[string]*sql.Stmt{}}
	w.give()
	return w, nil
}

// firstConn opens the connection. A new book gets its write-ahead log with it,
// and SQLite waits for no other program at that moment: so we do.
func firstConn(db *sql.DB, busy time.Duration) (*sql.Conn, error) {
	const tries = 100
	conn, err := db.Conn(context.Background())
	for n := 1; isBusy(err) && n < tries; n++ {
		time.Sleep(busy / tries)
		conn, err = db.Conn(context.Background())
	}
	return conn, err
}

// take waits for the writer's turn, at most as long as ctx lasts.
func (w *writer) take(ctx context.Context) error {
	if err := ctx.Err(); err != nil {
		return err
	}
	select {
	case <-w.turn:
		return nil
	case <-ctx.Done():
		return ctx.Err()
	}
}

// give lets the next one write. What was prepared for this write alone goes.
func (w *writer) give() {
	for _, prepared := range w.once {
		_ = prepared.Close()
	}
	w.once = nil
	w.turn <- struct{}{}
}

// stmt returns the query's prepared statement; only the current writer may call it.
func (w *writer) stmt(ctx context.Context, query string) (*sql.Stmt, error) {
	if known, ok := w.kept[query]; ok {
		return known, nil
	}
	prepared, err := w.conn.PrepareContext(ctx, query)
	if err != nil {
		return nil, err
	}
	if len(w.kept) < mostStatements {
		w.kept[query] = prepared
	} else {
		w.once = append(w.once, prepared)
	}
	return prepared, nil
}

// run executes a statement without arguments.
func (w *writer) run(ctx context.Context, query string) error {
	prepared, err := w.stmt(ctx, query)
	if err == nil {
		_, err = prepared.ExecContext(ctx)
	}
	return err
}

// close closes the statements first: SQLite removes the files beside the book only when nothing of
// the last connection is left.
func (w *writer) close() error {
	var found error
	for _, prepared := range w.kept {
		found = errors.Join(found, prepared.Close())
	}
	return errors.Join(found, w.conn.Close(), w.db.Close())
}
