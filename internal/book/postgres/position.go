package postgres

import (
	"context"
	"errors"

	"github.com/jackc/pgx/v5"

	"tenthpoint/internal/book"
	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
)

const (
	selectMoved = "SELECT ticket, direction, commodity, bin, issued_day, ended_day, figures FROM loads"
	selectStock = "SELECT commodity, bin, day, inward, outward, back, balance FROM stock"
)

// PutLoad stores the part of a load's row that the position depends on, and updates the position.
func (w *write) PutLoad(r book.LoadRow) error {
	figures, err := book.EncodeFigures(r)
	if w.fail(err) != nil {
		return w.failed
	}
	was, err := w.movedBefore(r.ID)
	if w.fail(err) != nil {
		return w.failed
	}
	is, err := book.MovesOf(r)
	if w.fail(err) != nil {
		return w.failed
	}
	for _, m := range book.StockChange(was, is) {
		if err := w.fail(w.apply(m)); err != nil {
			return err
		}
	}
	return w.exec(`INSERT INTO loads (id, ticket, direction, commodity, bin, issued_day, ended_day, figures) VALUES ($1, $2, $3, $4, $5, $6, $7, $8)
		ON CONFLICT (id) DO UPDATE SET ticket = $2, direction = $3, commodity = $4, bin = $5, issued_day = $6, ended_day = $7, figures = $8`,
		r.ID, r.Ticket, r.Direction, r.Commodity, r.Bin, r.IssuedDay, r.EndedDay, figures)
}

func (w *write) movedBefore(id string) ([]book.StockMove, error) {
	r, err := scanMoved(w.tx.QueryRow(w.ctx, selectMoved+" WHERE id = $1", id))
	if errors.Is(err, pgx.ErrNoRows) {
		return nil, nil
	}
	if err != nil {
		return nil, err
	}
	return book.MovesOf(r)
}

func scanMoved(row pgx.Row) (r book.LoadRow, err error) {
	var figures string
	if err := row.Scan(&r.Ticket, &r.Direction, &r.Commodity, &r.Bin, &r.IssuedDay, &r.EndedDay, &figures); err != nil {
		return r, err
	}
	return r, book.DecodeFigures(&r, figures)
}

// apply adds a move to its day and to the balance of every day after it.
func (w *write) apply(m book.StockMove) error {
	place := []any{m.Key.Commodity, m.Key.Bin, m.Key.Unit.String(), m.Day}
	days, err := stockRows(w.ctx, w.tx, selectStock+" WHERE commodity = $1 AND bin = $2 AND unit = $3 AND day >= $4 ORDER BY day", place...)
	if err != nil {
		return err
	}
	earlier, err := stockRows(w.ctx, w.tx, selectStock+" WHERE commodity = $1 AND bin = $2 AND unit = $3 AND day < $4 ORDER BY day DESC LIMIT 1", place...)
	if err != nil {
		return err
	}
	before := quantity.Zero(m.Key.Unit)
	if len(earlier) > 0 {
		before = earlier[0].Weight
	}
	for _, day := range m.Shift(before, days) {
		if err := w.putStock(day); err != nil {
			return err
		}
	}
	return nil
}

// putStock writes a day's row; a day on which nothing moves after all has none.
func (w *write) putStock(r book.StockRow) error {
	if book.EmptyStock(r) {
		return w.exec("DELETE FROM stock WHERE commodity = $1 AND bin = $2 AND unit = $3 AND day = $4", r.Commodity, r.Bin, r.Weight.Unit().String(), r.Day)
	}
	values := []any{r.Commodity, r.Bin, r.Weight.Unit().String(), r.Day}
	for _, a := range []quantity.Amount{r.In, r.Out, r.Back, r.Weight} {
		text, err := a.MarshalText()
		if err != nil {
			return err
		}
		values = append(values, string(text))
	}
	return w.exec(`INSERT INTO stock (commodity, bin, unit, day, inward, outward, back, balance) VALUES ($1, $2, $3, $4, $5, $6, $7, $8)
		ON CONFLICT (commodity, bin, unit, day) DO UPDATE SET inward = $5, outward = $6, back = $7, balance = $8`, values...)
}

// StockBefore returns the position in the evening before a day, without empty rows.
func (b *Book) StockBefore(ctx context.Context, day string) ([]book.StockRow, error) {
	return stockBefore(ctx, b.pool, day)
}

func stockBefore(ctx context.Context, q querier, day string) (out []book.StockRow, err error) {
	all, err := stockRows(ctx, q, `SELECT DISTINCT ON (commodity, bin, unit) commodity, bin, day, inward, outward, back, balance
		FROM stock WHERE day < $1 ORDER BY commodity, bin, unit, day DESC`, day)
	for _, r := range all {
		if !r.Weight.IsZero() {
			out = append(out, r)
		}
	}
	return out, err
}

// StockDays are the days from one to another on which anything moved; no last day
// means without end.
func (b *Book) StockDays(ctx context.Context, from, to string) ([]book.StockRow, error) {
	return stockRows(ctx, b.pool, selectStock+" WHERE day >= $1 AND ($2 = '' OR day <= $2) ORDER BY commodity, bin, unit, day", from, to)
}

func stockRows(ctx context.Context, q querier, query string, args ...any) ([]book.StockRow, error) {
	rows, err := q.Query(ctx, query, args...)
	if err != nil {
		return nil, err
	}
	return pgx.CollectRows(rows, scanStock)
}

func scanStock(row pgx.CollectableRow) (r book.StockRow, err error) {
	var texts [4]string
	if err := row.Scan(&r.Commodity, &r.Bin, &r.Day, &texts[0], &texts[1], &texts[2], &texts[3]); err != nil {
		return r, err
	}
	for i, into := range []*quantity.Amount{&r.In, &r.Out, &r.Back, &r.Weight} {
		if err := into.UnmarshalText([]byte(texts[i])); err != nil {
			return r, err
		}
	}
	return r, nil
}

// VerifyStock recalculates the position from the loads and returns every row that differs, as a
// sentence. Both are read from one snapshot.
func (b *Book) VerifyStock(ctx context.Context) ([]message.Text, error) {
	tx, err := b.pool.BeginTx(ctx, pgx.TxOptions{IsoLevel: pgx.RepeatableRead, AccessMode: pgx.ReadOnly})
	if err != nil {
		return nil, err
	}
	defer func() { _ = tx.Rollback(context.WithoutCancel(ctx)) }() // it only read
	rows, err := tx.Query(ctx, selectMoved+" WHERE ticket > 0")
	if err != nil {
		return nil, err
	}
	loads, err := pgx.CollectRows(rows, func(r pgx.CollectableRow) (book.LoadRow, error) { return scanMoved(r) })
	if err != nil {
		return nil, err
	}
	var sum book.StockSum
	for _, r := range loads {
		if err := sum.Add(r); err != nil {
			return nil, err
		}
	}
	kept, err := stockRows(ctx, tx, selectStock)
	return book.CompareStock("bin", sum.Rows(), kept), err
}
