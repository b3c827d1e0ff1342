// Package postgres keeps the core of a book in a PostgreSQL database: the journal, the numbers
// given out, and one read model, the position. It shows that the interfaces of package book do not
// depend on SQLite, and no program opens it: of a load's row it keeps only what the position needs,
// and read models, records, editions, drafts, backups and migrations are missing. It passes the
// same suite as the engine in use (booktest); go run ./cmd/task postgres runs that on a temporary
// server.
package postgres

import (
	"context"
	_ "embed"
	"errors"
	"iter"

	"github.com/jackc/pgx/v5"
	"github.com/jackc/pgx/v5/pgxpool"

	"tenthpoint/internal/book"
	"tenthpoint/internal/journal"
	"tenthpoint/internal/message"
)

//go:embed schema.sql
var schema string

// Book is a book in one schema of a database.
type Book struct {
	pool *pgxpool.Pool
}

// Create makes an empty book in a schema that is not there yet.
func Create(ctx context.Context, server, name string) (*Book, error) {
	conn, err := pgx.Connect(ctx, server)
	if err != nil {
		return nil, err
	}
	defer conn.Close(ctx)
	if _, err := conn.Exec(ctx, "CREATE SCHEMA "+pgx.Identifier{name}.Sanitize()); err != nil {
		return nil, message.Errorf("there is no place for the book %s: %w", name, err)
	}
	b, err := Open(ctx, server, name)
	if err != nil {
		return nil, err
	}
	if _, err = b.pool.Exec(ctx, schema); err != nil {
		return nil, errors.Join(err, b.Close())
	}
	return b, nil
}

// Open opens the book in a schema.
func Open(ctx context.Context, server, name string) (*Book, error) {
	config, err := pgxpool.ParseConfig(server)
	if err != nil {
		return nil, err
	}
	config.MaxConns = 8
	config.ConnConfig.RuntimeParams["search_path"] = pgx.Identifier{name}.Sanitize()
	pool, err := pgxpool.NewWithConfig(ctx, config)
	if err != nil {
		return nil, err
	}
	return &Book{pool}, nil
}

// Close releases the connections.
func (b *Book) Close() error {
	b.pool.Close()
	return nil
}

const columns = "seq, at, who, desk, kind, subject, body, prev, hash"

// Facts reads the selected facts in order, all from one snapshot: it is one statement.
func (b *Book) Facts(ctx context.Context, f book.FactFilter) iter.Seq2[journal.Fact, error] {
	return func(yield func(journal.Fact, error) bool) {
		rows, err := b.pool.Query(ctx, "SELECT "+columns+` FROM facts
			WHERE ($1 = '' OR subject = $1) AND ($2 = '' OR kind = $2) AND seq >= $3 AND ($4 = 0 OR seq <= $4) ORDER BY seq`,
			f.Subject, f.Kind, f.FromSeq, f.ToSeq)
		if err != nil {
			yield(journal.Fact{}, err)
			return
		}
		defer rows.Close()
		for rows.Next() {
			fact, err := scanFact(rows)
			if !yield(fact, err) || err != nil {
				return
			}
		}
		if err := rows.Err(); err != nil {
			yield(journal.Fact{}, err)
		}
	}
}

func scanFact(row pgx.Row) (f journal.Fact, err error) {
	var body string
	err = row.Scan(&f.Seq, &f.At, &f.Who, &f.Desk, &f.Kind, &f.Subject, &body, &f.Prev, &f.Hash)
	f.Body = []byte(body)
	return f, err
}

// FactsOf is everything that happened to a subject, in order.
func (b *Book) FactsOf(ctx context.Context, subject string) ([]journal.Fact, error) {
	return factsOf(ctx, b.pool, subject)
}

// querier is a pool or a transaction.
type querier interface {
	Query(ctx context.Context, query string, args ...any) (pgx.Rows, error)
	QueryRow(ctx context.Context, query string, args ...any) pgx.Row
}

func factsOf(ctx context.Context, q querier, subject string) ([]journal.Fact, error) {
	rows, err := q.Query(ctx, "SELECT "+columns+" FROM facts WHERE subject = $1 ORDER BY seq", subject)
	if err != nil {
		return nil, err
	}
	return pgx.CollectRows(rows, func(r pgx.CollectableRow) (journal.Fact, error) { return scanFact(r) })
}

// Head is the last fact; some is false for a book without any.
func (b *Book) Head(ctx context.Context) (last journal.Fact, some bool, err error) {
	return head(ctx, b.pool)
}

func head(ctx context.Context, q querier) (last journal.Fact, some bool, err error) {
	last, err = scanFact(q.QueryRow(ctx, "SELECT "+columns+" FROM facts ORDER BY seq DESC LIMIT 1"))
	if errors.Is(err, pgx.ErrNoRows) {
		return journal.Fact{}, false, nil
	}
	return last, err == nil, err
}

// LastNumber is the last number a series has given out; 0 before the first.
func (b *Book) LastNumber(ctx context.Context, series string) (last int64, err error) {
	err = b.pool.QueryRow(ctx, "SELECT coalesce(max(last), 0) FROM series WHERE name = $1", series).Scan(&last)
	return last, err
}
