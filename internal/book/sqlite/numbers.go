package sqlite

import (
	"context"
	"database/sql"
	"errors"
)

const (
	advanceSeries = "UPDATE series SET last = last + 1 WHERE name = ? RETURNING last"
	startSeries   = "INSERT INTO series (name, last) VALUES (?, 1) RETURNING last"

	selectLastBefore = "SELECT ticket FROM loads WHERE issued_day < ? AND issued_day > '' ORDER BY issued_day DESC, ticket DESC LIMIT 1"
)

// NextNumber takes the next number of a series, the first being 1. The number
// is used up only if the write is kept, so a series has no gaps.
func (tx *Tx) NextNumber(series string) (int64, error) {
	var number int64
	err := tx.queryRow(advanceSeries, series).Scan(&number)
	if errors.Is(err, sql.ErrNoRows) {
		err = tx.queryRow(startSeries, series).Scan(&number)
	}
	return number, err
}

// LastNumber is the last number a series has given out; 0 for a series that
// has not begun.
func (r recordReader) LastNumber(ctx context.Context, series string) (int64, error) {
	from := r.during(ctx)
	last, err := numberOrZero(from.queryRow("SELECT last FROM series WHERE name = ?", series))
	return last, from.fail(err)
}

// Series are the names of all series that have begun.
func (r recordReader) Series(ctx context.Context) ([]string, error) {
	return list(r.during(ctx), scanText, "SELECT name FROM series ORDER BY name")
}

// LastTicketBefore is the last ticket number of the last business day before a
// day; 0 when there is none.
func (r loadReader) LastTicketBefore(ctx context.Context, day string) (int64, error) {
	from := r.during(ctx)
	n, err := numberOrZero(from.queryRow(selectLastBefore, day))
	return n, from.fail(err)
}

// LastTicketBefore is [Book.LastTicketBefore] as the write has left it so far.
func (tx *Tx) LastTicketBefore(day string) (int64, error) {
	n, err := numberOrZero(tx.queryRow(selectLastBefore, day))
	return n, tx.fail(err)
}

// numberOrZero reads a row of one number; no row is 0.
func numberOrZero(row interface{ Scan(...any) error }) (n int64, err error) {
	if err = row.Scan(&n); errors.Is(err, sql.ErrNoRows) {
		return 0, nil
	}
	return n, err
}

// LastIssuedDay is the latest day that any ticket counts in; empty before the
// first ticket.
func (tx *Tx) LastIssuedDay() (day string, err error) {
	err = tx.queryRow("SELECT coalesce(max(issued_day), '') FROM loads").Scan(&day)
	return day, err
}
