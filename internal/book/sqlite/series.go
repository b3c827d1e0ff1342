package sqlite

import (
	"database/sql"
	"errors"
)

const (
	advanceSeries = "UPDATE series SET last = last + 1 WHERE name = ? RETURNING last"
	startSeries   = "INSERT INTO series (name, last) VALUES (?, 1) RETURNING last"
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
