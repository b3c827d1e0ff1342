package sqlite

import (
	"database/sql"

	"tenthpoint/internal/book"
	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
)

const selectMoved = "SELECT coalesce(ticket, 0), direction, commodity, bin, issued_day, ended_day, figures FROM loads"

// moveStock updates the position for a load's row that is about to replace the one before.
func (tx *Tx) moveStock(r book.LoadRow) error {
	if r.Ticket == 0 {
		return nil
	}
	was, err := tx.movedBefore(r.ID)
	if err != nil {
		return err
	}
	is, err := book.MovesOf(r)
	if err != nil {
		return tx.fail(err)
	}
	for _, m := range book.StockChange(was, is) {
		if err := tx.applyMove(m); err != nil {
			return err
		}
	}
	return nil
}

func (tx *Tx) movedBefore(id string) ([]book.StockMove, error) {
	var r book.LoadRow
	err := scanMoved(tx.queryRow(selectMoved+" WHERE id = ?", id), &r)
	if err == sql.ErrNoRows {
		return nil, nil
	}
	if err != nil {
		return nil, tx.fail(err)
	}
	moves, err := book.MovesOf(r)
	return moves, tx.fail(err)
}

func scanMoved(row interface{ Scan(...any) error }, r *book.LoadRow) error {
	var figures string
	if err := row.Scan(&r.Ticket, &r.Direction, &r.Commodity, &r.Bin, &r.IssuedDay, &r.EndedDay, &figures); err != nil {
		return err
	}
	if err := book.DecodeFigures(r, figures); err != nil {
		return message.Errorf("ticket %d: %w", r.Ticket, err)
	}
	return nil
}

const (
	selectStock = "SELECT commodity, bin, day, inward, outward, back, balance FROM stock"
	putStock    = "INSERT OR REPLACE INTO stock (commodity, bin, unit, day, inward, outward, back, balance) VALUES (?, ?, ?, ?, ?, ?, ?, ?)"
)

// applyMove adds a move to its day and to the balance of every day after it.
// There seldom is one: a business day does not go back.
func (tx *Tx) applyMove(m book.StockMove) error {
	days, err := list(tx, scanStock, selectStock+" WHERE commodity = ? AND bin = ? AND unit = ? AND day >= ? ORDER BY day",
		m.Key.Commodity, m.Key.Bin, m.Key.Unit.String(), m.Day)
	if err != nil {
		return err
	}
	before := quantity.Zero(m.Key.Unit)
	if len(days) == 0 || days[0].Day != m.Day {
		if before, err = tx.balanceBefore(m); err != nil {
			return err
		}
	}
	for _, day := range m.Shift(before, days) {
		if err := tx.putStock(day); err != nil {
			return err
		}
	}
	return nil
}

// putStock writes a day's row; a day on which nothing moves after all has none.
func (tx *Tx) putStock(r book.StockRow) error {
	if book.EmptyStock(r) {
		_, err := tx.exec("DELETE FROM stock WHERE commodity = ? AND bin = ? AND unit = ? AND day = ?", r.Commodity, r.Bin, r.Weight.Unit().String(), r.Day)
		return err
	}
	_, err := tx.exec(putStock, stockValues(r)...)
	return err
}

// balanceBefore returns the closing balance of the day before, at the move's place.
func (tx *Tx) balanceBefore(m book.StockMove) (quantity.Amount, error) {
	before, err := list(tx, scanStock, selectStock+" WHERE commodity = ? AND bin = ? AND unit = ? AND day < ? ORDER BY day DESC LIMIT 1",
		m.Key.Commodity, m.Key.Bin, m.Key.Unit.String(), m.Day)
	if err != nil || len(before) == 0 {
		return quantity.Zero(m.Key.Unit), err
	}
	return before[0].Weight, nil
}

func stockValues(r book.StockRow) []any {
	return []any{r.Commodity, r.Bin, r.Weight.Unit().String(), r.Day, stored(r.In), stored(r.Out), stored(r.Back), stored(r.Weight)}
}

func stored(a quantity.Amount) string {
	text, _ := a.MarshalText() // it has no way to fail
	return string(text)
}

func scanStock(rows *sql.Rows) (r book.StockRow, err error) {
	var in, outward, back, balance string
	if err := rows.Scan(&r.Commodity, &r.Bin, &r.Day, &in, &outward, &back, &balance); err != nil {
		return r, err
	}
	for _, one := range []struct {
		text string
		into *quantity.Amount
	}{{in, &r.In}, {outward, &r.Out}, {back, &r.Back}, {balance, &r.Weight}} {
		if err := one.into.UnmarshalText([]byte(one.text)); err != nil {
			return r, message.Errorf("the position of %s in bin %q on %s cannot be read: %w", r.Commodity, r.Bin, r.Day, err)
		}
	}
	return r, nil
}
