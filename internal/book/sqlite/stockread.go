package sqlite

import (
	"context"
	"database/sql"
	"errors"
	"fmt"
	"slices"

	"tenthpoint/internal/book"
)

// selectBalances takes, of each key, the row of its last day. It looks each key up
// after the one before, since a book has few keys and in time very many days.
const selectBalances = `WITH RECURSIVE
	grains (commodity) AS (
		SELECT min(commodity) FROM stock
		UNION ALL SELECT (SELECT min(commodity) FROM stock WHERE commodity > grains.commodity) FROM grains WHERE commodity IS NOT NULL),
	places (commodity, bin) AS (
		SELECT commodity, (SELECT min(bin) FROM stock s WHERE s.commodity = grains.commodity) FROM grains WHERE commodity IS NOT NULL
		UNION ALL SELECT commodity, (SELECT min(bin) FROM stock s WHERE s.commodity = places.commodity AND s.bin > places.bin) FROM places WHERE bin IS NOT NULL),
	keys (commodity, bin, unit) AS (
		SELECT commodity, bin, (SELECT min(unit) FROM stock s WHERE s.commodity = places.commodity AND s.bin = places.bin) FROM places WHERE bin IS NOT NULL
		UNION ALL SELECT commodity, bin, (SELECT min(unit) FROM stock s WHERE s.commodity = keys.commodity AND s.bin = keys.bin AND s.unit > keys.unit) FROM keys WHERE unit IS NOT NULL)
	SELECT s.commodity, s.bin, s.day, s.inward, s.outward, s.back, s.balance
	  FROM keys k CROSS JOIN stock s ON s.commodity = k.commodity AND s.bin = k.bin AND s.unit = k.unit
	   AND s.day = (SELECT max(day) FROM stock d WHERE d.commodity = k.commodity AND d.bin = k.bin AND d.unit = k.unit AND d.day < ?)
	 ORDER BY s.commodity, s.bin, s.unit`

// A stockReader reads the position, by commodity, bin and day.
type stockReader struct{ reader }

// StockBefore is the position in the evening before a day: the last row of
// every commodity and bin, those that are empty left out.
func (r stockReader) StockBefore(ctx context.Context, day string) ([]book.StockRow, error) {
	return balances(r.during(ctx), day)
}

// StockBefore is [Book.StockBefore] as the write has left it so far.
func (tx *Tx) StockBefore(day string) ([]book.StockRow, error) {
	return balances(tx, day)
}

func balances(from source, before string) ([]book.StockRow, error) {
	all, err := list(from, scanStock, selectBalances, before)
	return slices.DeleteFunc(all, func(r book.StockRow) bool { return r.Weight.IsZero() }), err
}

// StockDays are the days from one to another on which anything moved, by
// commodity, bin and day; no last day means without end.
func (r stockReader) StockDays(ctx context.Context, from, to string) ([]book.StockRow, error) {
	if to == "" {
		to = "9999-99-99"
	}
	return list(r.during(ctx), scanStock, selectStock+" WHERE day >= ? AND day <= ? ORDER BY commodity, bin, unit, day", from, to)
}

// VerifyStock recalculates the position from the loads and returns every row that differs, as a
// sentence. Both are read from one snapshot.
func (r stockReader) VerifyStock(ctx context.Context) ([]string, error) {
	tx, err := r.db.BeginTx(ctx, nil)
	if err != nil {
		return nil, r.file.sentence(err)
	}
	defer tx.Rollback() // it only read
	from := snapshot{r.during(ctx), tx}
	want, err := sumStock(from)
	if errors.Is(err, book.ErrFigures) {
		return []string{fmt.Sprintf("The position cannot be checked: %v.", err)}, nil
	}
	if err != nil {
		return nil, err
	}
	kept, err := list(from, scanStock, selectStock)
	if err != nil {
		return nil, err
	}
	misplaced, err := list(from, scanText, selectMisplaced)
	return append(misplaced, book.CompareStock(want, kept)...), err
}

// selectMisplaced finds rows stored under another unit than that of their weights. The unit is only
// a key, so nothing else would detect it.
const selectMisplaced = `SELECT 'The position of ' || commodity || ' in bin "' || bin || '" on ' || day || ' stands under the unit "' || unit || '", but is in ' || substr(balance, instr(balance, ' ') + 1) || '.'
	FROM stock WHERE unit <> substr(balance, instr(balance, ' ') + 1) ORDER BY commodity, bin, unit, day`

// A snapshot reads several queries from one moment's state.
type snapshot struct {
	reading
	tx *sql.Tx
}

func (s snapshot) query(query string, args ...any) (*sql.Rows, error) {
	rows, err := s.tx.QueryContext(s.ctx, query, args...)
	return rows, s.fail(err)
}

// fills are the parts of migrations done in Go, by the migration's name: SQL cannot add decimals
// that are text. Each runs in the migration's own transaction.
var fills = map[string]func(*file, *sql.Tx) error{
	"0003_stock.sql": fillStock,
}

// fillStock calculates the position of an older book from its loads.
func fillStock(f *file, tx *sql.Tx) error {
	from := snapshot{reader{file: f}.during(context.Background()), tx}
	all, err := sumStock(from)
	if err != nil {
		return err
	}
	for _, r := range all {
		if _, err := tx.Exec(putStock, stockValues(r)...); err != nil {
			return err
		}
	}
	return nil
}

// sumStock adds up the position of every day from the loads' rows.
func sumStock(from source) ([]book.StockRow, error) {
	var sum book.StockSum
	err := each(from, func(rows *sql.Rows) error {
		var r book.LoadRow
		if err := scanMoved(rows, &r); err != nil {
			return err
		}
		return sum.Add(r)
	}, selectMoved+" WHERE ticket IS NOT NULL")
	return sum.Rows(), err
}
