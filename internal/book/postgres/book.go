package postgres

import (
	"context"
	"embed"
	"errors"
	"io/fs"
	"time"

	"github.com/jackc/pgx/v5/pgxpool"

	"tenthpoint/internal/book"
	"tenthpoint/internal/message"
)

//go:embed tables/*.sql
var tables embed.FS

// A Book is an open book. It is safe for use by several goroutines.
type Book struct {
	view

	line   *line
	turn   chan struct{} // holds one while this program writes
	own    ownWrites
	closed error // why nothing can be entered; nil where it can
}

// Open opens the book at an address, bringing an older one up to date if the user owns it.
func Open(ctx context.Context, where string, o book.Options) (*Book, error) {
	known, err := fs.Sub(tables, "tables")
	if err != nil {
		return nil, err
	}
	return openWith(ctx, where, o, known)
}

func openWith(ctx context.Context, where string, o book.Options, known fs.FS) (*Book, error) {
	a, err := parseAddress(where)
	if err != nil {
		return nil, err
	}
	config, err := a.settings()
	if err != nil {
		return nil, err
	}
	pool, err := pgxpool.NewWithConfig(ctx, config)
	if err != nil {
		return nil, a.sentence(err)
	}
	l := newLine(a, pool)
	b := &Book{view: viewOf(reader{l, pool}), line: l, turn: make(chan struct{}, 1)}
	if o.ReadOnly {
		b.closed = message.Storage.Errorf("The book %s is open for reading only. Nothing was entered.", a.text)
	}
	if err := b.prepare(ctx, o, known); err != nil {
		return nil, errors.Join(a.sentence(err), b.Close())
	}
	return b, nil
}

// prepare looks whether the server keeps what it acknowledges, and brings the tables up to date.
func (b *Book) prepare(ctx context.Context, o book.Options, known fs.FS) error {
	ctx, done := context.WithTimeout(ctx, 10*connectTimeout)
	defer done()
	conn, err := b.line.pool.Acquire(ctx)
	if err != nil {
		return err
	}
	defer conn.Release()
	var commits string
	if err := conn.QueryRow(ctx, "SHOW synchronous_commit").Scan(&commits); err != nil {
		return err
	}
	if commits == "off" && !o.ReadOnly {
		return message.Storage.Errorf("the server of the book %s acknowledges what it may still lose: synchronous_commit is off. "+
			"Nothing can be entered so. Set it to on, for the server or for the user: ALTER ROLE ... SET synchronous_commit = on", b.Path())
	}
	return b.migrate(ctx, conn.Conn(), o, known)
}

// mayWrite says why nothing can be entered.
func (b *Book) mayWrite() error { return b.closed }

// Trouble returns why nothing that is entered now would be kept: the line to the server is cut. Nil
// where all is well.
func (b *Book) Trouble() error { return b.line.trouble() }

// Path returns the address of the book.
func (b *Book) Path() string { return b.line.address.text }

// Ahead is the server's clock less this computer's.
func (b *Book) Ahead(ctx context.Context) (time.Duration, error) {
	before := time.Now()
	o, _, err := one(source{b.line, b.line.pool, ctx}, scanOpening, selectOpening)
	if err != nil {
		return 0, err
	}
	return o.clock.Sub(before.Add(time.Since(before) / 2)), nil
}

// LetIn lets a user of the server append to the book, or only read it. It is for who owns the book.
func (b *Book) LetIn(ctx context.Context, user string, appends bool) error {
	err := b.exec(ctx, "SELECT let_in($1, $2)", user, appends)
	if code(err) == noSuchUser {
		return message.NotFound.Errorf("the server knows no user %q. Have it made: createuser %s", user, user)
	}
	return err
}

// Close releases the connections; running reads end with an error.
func (b *Book) Close() error {
	b.line.pool.Close()
	return nil
}
