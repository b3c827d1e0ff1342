package sqlite

import (
	"database/sql"

	"tenthpoint/internal/book"
	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
)

// balances is a table of balances by day: of the stock by bin, or of the lines of who owns it.
type balances struct{ table, place string }

var (
	stock = balances{"stock", "bin"}
	owned = balances{"owned", "line"}
)

const selectMoved = "SELECT coalesce(ticket, 0), direction, commodity, bin, disposition, contract, issued_day, ended_day, figures FROM loads"

// moveGrain updates everything that is kept of the grain for a load's row that is about to replace
// the one before.
func moveGrain(tx *Tx, is book.LoadRow) error {
	if is.Ticket == 0 {
		return nil
	}
	var was book.LoadRow
	err := scanMoved(tx.queryRow(selectMoved+" WHERE id = ?", is.ID), &was)
	if err != nil && err != sql.ErrNoRows {
		return tx.fail(err)
	}
	change, err := book.ChangeOf(was, is)
	if err != nil {
		return tx.fail(err)
	}
	if err := applyMoves(tx, stock, change.Stock); err != nil {
		return err
	}
	if err := applyMoves(tx, owned, change.Lines); err != nil {
		return err
	}
	return tx.fail(book.MoveBins(binsOf{tx}, change.Bins))
}

func applyMoves(tx *Tx, t balances, moves []book.StockMove) error {
	for _, m := range moves {
		if err := tx.applyMove(t, m); err != nil {
			return err
		}
	}
	return nil
}

func scanMoved(row interface{ Scan(...any) error }, r *book.LoadRow) error {
	var figures, disposition string
	if err := row.Scan(&r.Ticket, &r.Direction, &r.Commodity, &r.Bin, &disposition, &r.Contract, &r.IssuedDay, &r.EndedDay, &figures); err != nil {
		return err
	}
	if err := book.DecodeDisposition(r, disposition); err != nil {
		return message.Errorf("ticket %d: %w", r.Ticket, err)
	}
	if err := book.DecodeFigures(r, figures); err != nil {
		return message.Errorf("ticket %d: %w", r.Ticket, err)
	}
	return nil
}

// rows reads rows of balances.
func (t balances) rows() string {
	return "SELECT commodity, " + t.place + ", day, inward, outward, back, balance FROM " + t.table
}

// at is the condition of one place.
func (t balances) at() string { return " WHERE commodity = ? AND " + t.place + " = ? AND unit = ?" }

func (t balances) put() string {
	return "INSERT OR REPLACE INTO " + t.table + " (commodity, " + t.place + ", unit, day, inward, outward, back, balance) VALUES (?, ?, ?, ?, ?, ?, ?, ?)"
}

// applyMove adds a move to its day and to the balance of every day after it.
// There seldom is one: a business day does not go back.
func (tx *Tx) applyMove(t balances, m book.StockMove) error {
	days, err := list(tx, scanStock, t.rows()+t.at()+" AND day >= ? ORDER BY day",
		m.Key.Commodity, m.Key.Bin, m.Key.Unit.String(), m.Day)
	if err != nil {
		return err
	}
	before := quantity.Zero(m.Key.Unit)
	if len(days) == 0 || days[0].Day != m.Day {
		if before, err = balanceBefore(tx, t, m); err != nil {
			return err
		}
	}
	for _, day := range m.Shift(before, days) {
		if err := putStock(tx, t, day); err != nil {
			return err
		}
	}
	return nil
}

// putStock writes a day's row; a day on which nothing moves after all has none.
func putStock(tx *Tx, t balances, r book.StockRow) error {
	if book.EmptyStock(r) {
		_, err := tx.exec("DELETE FROM "+t.table+t.at()+" AND day = ?", r.Commodity, r.Bin, r.Weight.Unit().String(), r.Day)
		return err
	}
	_, err := tx.exec(t.put(), stockValues(r)...)
	return err
}

// balanceBefore returns the closing balance of the day before, at the move's place.
func balanceBefore(tx *Tx, t balances, m book.StockMove) (quantity.Amount, error) {
	before, err := list(tx, scanStock, t.rows()+t.at()+" AND day < ? ORDER BY day DESC LIMIT 1",
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
