package sqlite

import (
	"context"
	"database/sql"
	"errors"
	"tenthpoint/internal/book"
)

const (
	selectLastBefore = "SELECT ticket FROM loads WHERE issued_day < ? AND issued_day > '' ORDER BY issued_day DESC, ticket DESC LIMIT 1"
	selectKept       = "SELECT keep_until, count(*) FROM loads WHERE keep_until >= ? AND keep_until <= ? AND " + hasSample + " GROUP BY keep_until ORDER BY keep_until"
)

// LastTicketBefore is the last ticket number of the last business day before a
// day; 0 when there is none.
func (b *Book) LastTicketBefore(ctx context.Context, day string) (int64, error) {
	n, err := lastTicket(b.read.QueryRowContext(ctx, selectLastBefore, day))
	return n, b.sentence(err)
}

// LastTicketBefore is [Book.LastTicketBefore] as the write has left it so far.
func (tx *Tx) LastTicketBefore(day string) (int64, error) {
	n, err := lastTicket(tx.queryRow(selectLastBefore, day))
	return n, tx.fail(err)
}

func lastTicket(row interface{ Scan(...any) error }) (n int64, err error) {
	if err = row.Scan(&n); errors.Is(err, sql.ErrNoRows) {
		return 0, nil
	}
	return n, err
}

// SamplesKept counts the retained samples to be kept through the days from one
// to another, day by day.
func (b *Book) SamplesKept(ctx context.Context, from, to string) ([]book.KeptSamples, error) {
	rows, err := b.read.QueryContext(ctx, selectKept, from, to)
	if err != nil {
		return nil, b.sentence(err)
	}
	out, err := scanKept(rows)
	return out, b.sentence(err)
}

// SamplesKept is [Book.SamplesKept] as the write has left it so far.
func (tx *Tx) SamplesKept(from, to string) ([]book.KeptSamples, error) {
	rows, err := tx.query(selectKept, from, to)
	if err != nil {
		return nil, err
	}
	out, err := scanKept(rows)
	return out, tx.fail(err)
}

func scanKept(rows *sql.Rows) ([]book.KeptSamples, error) {
	defer rows.Close()
	var out []book.KeptSamples
	for rows.Next() {
		var k book.KeptSamples
		if err := rows.Scan(&k.Until, &k.Count); err != nil {
			return nil, err
		}
		out = append(out, k)
	}
	return out, rows.Err()
}

// LastIssuedDay is the latest day that any ticket counts in; empty before the
// first ticket.
func (tx *Tx) LastIssuedDay() (day string, err error) {
	err = tx.queryRow("SELECT coalesce(max(issued_day), '') FROM loads").Scan(&day)
	return day, err
}
