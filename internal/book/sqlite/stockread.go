package sqlite

import (
	"context"
	"database/sql"
	"errors"
	"slices"

	"tenthpoint/internal/book"
	"tenthpoint/internal/message"
)

// lastRows takes, of each place, the row of its last day before a day. It looks each place up
// after the one before, since a book has few places and in time very many days. Places are known
// by three columns, in the order of the table's key.
func lastRows(table, first, second, third, columns string) string {
	next := func(column, among string) string {
		return "(SELECT min(" + column + ") FROM " + table + " s WHERE " + among + ")"
	}
	of := func(with string) string { return "s." + first + " = " + with + "." + first }
	and := func(with string) string { return of(with) + " AND s." + second + " = " + with + "." + second }
	return "WITH RECURSIVE firsts (" + first + ") AS (" +
		"SELECT min(" + first + ") FROM " + table +
		" UNION ALL SELECT " + next(first, "s."+first+" > firsts."+first) + " FROM firsts WHERE " + first + " IS NOT NULL), " +
		"seconds (" + first + ", " + second + ") AS (" +
		"SELECT " + first + ", " + next(second, of("firsts")) + " FROM firsts WHERE " + first + " IS NOT NULL" +
		" UNION ALL SELECT " + first + ", " + next(second, of("seconds")+" AND s."+second+" > seconds."+second) + " FROM seconds WHERE " + second + " IS NOT NULL), " +
		"keys (" + first + ", " + second + ", " + third + ") AS (" +
		"SELECT " + first + ", " + second + ", " + next(third, and("seconds")) + " FROM seconds WHERE " + second + " IS NOT NULL" +
		" UNION ALL SELECT " + first + ", " + second + ", " + next(third, and("keys")+" AND s."+third+" > keys."+third) + " FROM keys WHERE " + third + " IS NOT NULL) " +
		"SELECT " + columns + " FROM keys k CROSS JOIN " + table + " s ON " + and("k") + " AND s." + third + " = k." + third +
		" AND s.day = (SELECT max(day) FROM " + table + " d WHERE d." + first + " = k." + first + " AND d." + second + " = k." + second + " AND d." + third + " = k." + third + " AND d.day < ?)" +
		" ORDER BY s." + first + ", s." + second + ", s." + third
}

// A stockReader reads the position, by commodity, bin and day.
type stockReader struct{ reader }

// StockBefore is the position in the evening before a day: the last row of
// every commodity and bin, those that are empty left out.
func (r stockReader) StockBefore(ctx context.Context, day string) ([]book.StockRow, error) {
	return balancesBefore(r.during(ctx), stock, day)
}

// StockBefore is [Book.StockBefore] as the write has left it so far.
func (tx *Tx) StockBefore(day string) ([]book.StockRow, error) {
	return balancesBefore(tx, stock, day)
}

func balancesBefore(from source, t balances, day string) ([]book.StockRow, error) {
	columns := "s.commodity, s." + t.place + ", s.day, s.inward, s.outward, s.back, s.balance"
	all, err := list(from, scanStock, lastRows(t.table, "commodity", t.place, "unit", columns), day)
	return slices.DeleteFunc(all, func(r book.StockRow) bool { return r.Weight.IsZero() }), err
}

// StockDays are the days from one to another on which anything moved, by
// commodity, bin and day; no last day means without end.
func (r stockReader) StockDays(ctx context.Context, from, to string) ([]book.StockRow, error) {
	return r.balanceDays(ctx, stock, from, to)
}

// LinesBefore are the lines of who owns the grain in the evening before a day, those that are empty
// left out.
func (r stockReader) LinesBefore(ctx context.Context, day string) ([]book.StockRow, error) {
	return balancesBefore(r.during(ctx), owned, day)
}

// LineDays are the days from one to another on which any line changed.
func (r stockReader) LineDays(ctx context.Context, from, to string) ([]book.StockRow, error) {
	return r.balanceDays(ctx, owned, from, to)
}

func (r stockReader) balanceDays(ctx context.Context, t balances, from, to string) ([]book.StockRow, error) {
	return list(r.during(ctx), scanStock, t.rows()+" WHERE day >= ? AND day <= ? ORDER BY commodity, "+t.place+", unit, day", from, orEnd(to))
}

// orEnd is the last day of a period; without one it has no end.
func orEnd(day string) string {
	if day == "" {
		return "9999-99-99"
	}
	return day
}

// VerifyStock recalculates the position from the loads and returns every row that differs, as a
// sentence. Both are read from one snapshot.
func (r stockReader) VerifyStock(ctx context.Context) ([]message.Text, error) {
	tx, err := r.db.BeginTx(ctx, nil)
	if err != nil {
		return nil, r.file.sentence(err)
	}
	defer tx.Rollback() // it only read
	from := snapshot{r.during(ctx), tx}
	all, err := sumGrain(from)
	if errors.Is(err, book.ErrFigures) {
		return []message.Text{message.New("The position cannot be checked: %s.", err)}, nil
	}
	if err != nil {
		return nil, err
	}
	var problems []message.Text
	tables, err := list(from, scanText, "SELECT name FROM sqlite_schema WHERE type = 'table'")
	if err != nil {
		return nil, err
	}
	for _, t := range []struct {
		table balances
		want  []book.StockRow
	}{{stock, all.Stock.Rows()}, {owned, all.Lines.Rows()}} {
		if !slices.Contains(tables, t.table.table) {
			return problems, nil // an older book, as it is: it keeps no bins
		}
		kept, err := list(from, scanStock, t.table.rows())
		if err != nil {
			return nil, err
		}
		misplaced, err := list(from, t.table.scanMisplaced, t.table.misplaced())
		if err != nil {
			return nil, err
		}
		problems = append(append(problems, misplaced...), book.CompareStock(t.table.place, t.want, kept)...)
	}
	bins, err := verifyBins(from, &all.Bins)
	return append(problems, bins...), err
}

// misplaced finds rows stored under another unit than that of their weights. The unit is only a
// key, so nothing else would detect it.
func (t balances) misplaced() string {
	return `SELECT commodity, ` + t.place + `, day, unit, substr(balance, instr(balance, ' ') + 1)
	FROM ` + t.table + ` WHERE unit <> substr(balance, instr(balance, ' ') + 1) ORDER BY commodity, ` + t.place + `, unit, day`
}

func (t balances) scanMisplaced(rows *sql.Rows) (message.Text, error) {
	var commodity, place, day, unit, is string
	err := rows.Scan(&commodity, &place, &day, &unit, &is)
	return message.New("The position of %s in %s %q on %v stands under the unit %q, but is in %v.", commodity, message.Words(t.place), place, day, unit, is), err
}

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
	"0003_stock.sql":    fillStock,
	"0010_bins.sql":     fillBins,
	"0012_bin_rows.sql": rewriteBins,
}

// fillStock calculates the position of an older book from its loads, which have fewer columns.
func fillStock(f *file, tx *sql.Tx) error {
	from := snapshot{reader{file: f}.during(context.Background()), tx}
	var sum book.StockSum
	err := each(from, func(rows *sql.Rows) error {
		var r book.LoadRow
		var figures string
		if err := rows.Scan(&r.Ticket, &r.Direction, &r.Commodity, &r.Bin, &r.IssuedDay, &r.EndedDay, &figures); err != nil {
			return err
		}
		if err := book.DecodeFigures(&r, figures); err != nil {
			return message.Errorf("ticket %d: %w", r.Ticket, err)
		}
		return sum.Add(r)
	}, "SELECT ticket, direction, commodity, bin, issued_day, ended_day, figures FROM loads WHERE ticket IS NOT NULL")
	if err != nil {
		return err
	}
	return putBalances(tx, stock, sum.Rows())
}

func putBalances(tx *sql.Tx, t balances, rows []book.StockRow) error {
	for _, r := range rows {
		if _, err := tx.Exec(t.put(), stockValues(r)...); err != nil {
			return err
		}
	}
	return nil
}

// sumGrain adds up everything that is kept of the grain from the rows of loads, the movements and the
// settlement sheets.
func sumGrain(from source) (all book.GrainSum, err error) {
	err = each(from, func(rows *sql.Rows) error {
		var r book.LoadRow
		if err := scanMoved(rows, &r); err != nil {
			return err
		}
		return all.Add(r)
	}, selectMoved+" WHERE ticket IS NOT NULL")
	if err != nil {
		return all, err
	}
	moves, err := movements(from, "", "")
	if err != nil {
		return all, err
	}
	owned, err := ownerRecords(from)
	all.Follow(moves, owned)
	return all, err
}
