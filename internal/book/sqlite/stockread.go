package sqlite

import (
	"context"
	"database/sql"
	"errors"
	"fmt"
	"tenthpoint/internal/book"
)

// selectBalances takes, of each key, the row of its last day: SQLite gives the
// other columns of the row that holds the maximum.
const selectBalances = "SELECT commodity, bin, max(day), inward, outward, back, balance FROM stock WHERE day < ? GROUP BY commodity, bin, unit ORDER BY commodity, bin, unit"

// StockBefore is the position in the evening before a day: the last row of
// every commodity and bin, those that are empty left out.
func (b *Book) StockBefore(ctx context.Context, day string) ([]book.StockRow, error) {
	rows, err := b.read.QueryContext(ctx, selectBalances, day)
	if err != nil {
		return nil, b.sentence(err)
	}
	out, err := balances(rows)
	return out, b.sentence(err)
}

// StockBefore is [Book.StockBefore] as the write has left it so far.
func (tx *Tx) StockBefore(day string) ([]book.StockRow, error) {
	rows, err := tx.query(selectBalances, day)
	if err != nil {
		return nil, err
	}
	out, err := balances(rows)
	return out, tx.fail(err)
}

func balances(rows *sql.Rows) ([]book.StockRow, error) {
	all, err := scanStock(rows)
	var out []book.StockRow
	for _, r := range all {
		if !r.Weight.IsZero() {
			out = append(out, r)
		}
	}
	return out, err
}

// StockDays are the days from one to another on which anything moved, by
// commodity, bin and day; no last day means without end.
func (b *Book) StockDays(ctx context.Context, from, to string) ([]book.StockRow, error) {
	if to == "" {
		to = "9999-99-99"
	}
	rows, err := b.read.QueryContext(ctx, selectStock+" WHERE day >= ? AND day <= ? ORDER BY commodity, bin, unit, day", from, to)
	if err != nil {
		return nil, b.sentence(err)
	}
	out, err := scanStock(rows)
	return out, b.sentence(err)
}

// VerifyStock works the position out of the loads anew and returns every row
// that does not agree, as a sentence. Both are read from one moment's state.
func (b *Book) VerifyStock(ctx context.Context) ([]string, error) {
	tx, err := b.read.BeginTx(ctx, nil)
	if err != nil {
		return nil, b.sentence(err)
	}
	defer tx.Rollback() // it only read
	rows, err := tx.QueryContext(ctx, selectMoved+" WHERE ticket IS NOT NULL")
	if err != nil {
		return nil, b.sentence(err)
	}
	want, err := sumStock(rows)
	if errors.Is(err, book.ErrFigures) {
		return []string{fmt.Sprintf("The position cannot be checked: %v.", err)}, nil
	}
	if err != nil {
		return nil, b.sentence(err)
	}
	if rows, err = tx.QueryContext(ctx, selectStock); err != nil {
		return nil, b.sentence(err)
	}
	kept, err := scanStock(rows)
	if err != nil {
		return nil, b.sentence(err)
	}
	return book.CompareStock(want, kept), nil
}
