package sqlite

import (
	"context"
	"database/sql"
)

// source answers queries: from the book on disk ([reading]), or within a write ([Tx]).
type source interface {
	query(query string, args ...any) (*sql.Rows, error)
	fail(err error) error // err in words, or nil
}

// A reader reads the book through a pool of connections that cannot write.
type reader struct {
	file *file
	db   *sql.DB
}

// during is the reader for as long as ctx lasts.
func (r reader) during(ctx context.Context) reading { return reading{r, ctx} }

type reading struct {
	reader
	ctx context.Context
}

func (r reading) query(query string, args ...any) (*sql.Rows, error) {
	rows, err := r.db.QueryContext(r.ctx, query, args...)
	return rows, r.fail(err)
}

func (r reading) queryRow(query string, args ...any) *sql.Row {
	return r.db.QueryRowContext(r.ctx, query, args...)
}

func (r reading) fail(err error) error { return r.file.sentence(err) }

// list reads all rows of a query, each by scan.
func list[T any](from source, scan func(*sql.Rows) (T, error), query string, args ...any) ([]T, error) {
	var out []T
	err := each(from, func(rows *sql.Rows) error {
		one, err := scan(rows)
		if err == nil {
			out = append(out, one)
		}
		return err
	}, query, args...)
	return out, err
}

// each calls read with the rows of a query, one after the other, until one fails.
func each(from source, read func(*sql.Rows) error, query string, args ...any) error {
	rows, err := from.query(query, args...)
	if err != nil {
		return err
	}
	defer rows.Close()
	for rows.Next() {
		if err := read(rows); err != nil {
			return from.fail(err)
		}
	}
	return from.fail(rows.Err())
}

// scanText reads a row of a single column.
func scanText(rows *sql.Rows) (text string, err error) {
	err = rows.Scan(&text)
	return text, err
}
