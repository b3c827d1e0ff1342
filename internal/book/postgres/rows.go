package postgres

import (
	"context"
	"errors"
	"io"
	"iter"

	"github.com/jackc/pgx/v5"
)

// querier is the pool, a connection, or a snapshot.
type querier interface {
	Query(ctx context.Context, query string, args ...any) (pgx.Rows, error)
}

// A source answers queries for as long as its context lasts.
type source struct {
	line *line
	from querier
	ctx  context.Context
}

// A reader reads the book, through the pool or in a snapshot.
type reader struct {
	line *line
	from querier
}

func (r reader) during(ctx context.Context) source { return source{r.line, r.from, ctx} }

// A view has all that can be read of a book. Its methods are in the embedded types, each the reader
// of some tables.
type view struct {
	factReader
	loadReader
	recordReader
	stockReader
	binReader
	draftReader
}

func viewOf(r reader) view {
	return view{factReader{r}, loadReader{r}, recordReader{r}, stockReader{r}, binReader{r}, draftReader{r}}
}

// each calls read with the rows of a query, one after the other, until one fails.
func (s source) each(read func(pgx.Rows) error, query string, args ...any) error {
	used, alive, done, err := s.line.use(s.ctx)
	if err != nil {
		return err
	}
	defer done()
	rows, err := s.from.Query(used, query, args...)
	if err != nil {
		return s.line.ended(used, err)
	}
	defer rows.Close()
	for rows.Next() {
		alive()
		if err := read(rows); err != nil {
			return err
		}
	}
	return s.line.ended(used, rows.Err())
}

// list reads all rows of a query, each by scan.
func list[T any](s source, scan func(pgx.Row) (T, error), query string, args ...any) ([]T, error) {
	var out []T
	err := s.each(func(rows pgx.Rows) error {
		one, err := scan(rows)
		if err == nil {
			out = append(out, one)
		}
		return err
	}, query, args...)
	return out, err
}

// one reads the only row of a query; false for none.
func one[T any](s source, scan func(pgx.Row) (T, error), query string, args ...any) (found T, some bool, err error) {
	all, err := list(s, scan, query, args...)
	if err != nil || len(all) == 0 {
		return found, false, err
	}
	return all[0], true, nil
}

// walk streams the rows of a query, so that a book of any size may be read; an error is the last
// thing it yields. What scan cannot read is yielded with its error, and the reading goes on.
func walk[T any](s source, scan func(pgx.Row) (T, error), query string, args ...any) iter.Seq2[T, error] {
	return func(yield func(T, error) bool) {
		err := s.each(func(rows pgx.Rows) error {
			if found, err := scan(rows); !yield(found, err) {
				return io.EOF // the reader wants no more
			}
			return nil
		}, query, args...)
		if err != nil && !errors.Is(err, io.EOF) {
			var none T
			yield(none, err)
		}
	}
}

func scanText(row pgx.Row) (text string, err error) {
	err = row.Scan(&text)
	return text, err
}

func scanNumber(row pgx.Row) (n int64, err error) {
	err = row.Scan(&n)
	return n, err
}
