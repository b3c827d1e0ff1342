package store

import (
	"cmp"
	"database/sql"
	"fmt"
	"slices"

	"tenthpoint/internal/quantity"
)

// StockRow is one day of one commodity in one bin. Balance is what is there in
// the evening: the balance before, and In − Out − Back.
type StockRow struct {
	Commodity, Bin, Day   string
	In, Out, Back, Weight quantity.Amount
}

// stockKey is where grain lies. Weights of unlike units are kept apart.
type stockKey struct {
	commodity, bin string
	unit           quantity.Unit
}

// stockMove is what one ticket does to one day's row.
type stockMove struct {
	key           stockKey
	day           string
	in, out, back quantity.Amount
}

// moved is what a load's ticket did: on the day it was issued, and again on
// the day it was voided or corrected. A ticket that ended on its own day never
// moved anything. The error is for figures that do not say what it weighed.
func (r LoadRow) moved() ([]stockMove, error) {
	if r.Ticket == 0 || r.EndedDay == r.IssuedDay {
		return nil, nil
	}
	weight, err := r.Recorded().Moves()
	if err != nil {
		return nil, fmt.Errorf("%w: ticket %d: %w", errFigures, r.Ticket, err)
	}
	key, none := stockKey{r.Commodity, r.Bin, weight.Unit()}, quantity.Zero(weight.Unit())
	move := stockMove{key, r.IssuedDay, weight, none, none}
	ended := stockMove{key, r.EndedDay, none, none, weight}
	if r.Recorded().Weighed {
		move.in, move.out = none, weight.Neg()
	}
	if r.EndedDay == "" {
		return []stockMove{move}, nil
	}
	return []stockMove{move, ended}, nil
}

func (m stockMove) delta() quantity.Amount { return m.in.Sub(m.out).Sub(m.back) }

func (m stockMove) negative() stockMove {
	m.in, m.out, m.back = m.in.Neg(), m.out.Neg(), m.back.Neg()
	return m
}

const selectMoved = "SELECT coalesce(ticket, 0), direction, commodity, bin, issued_day, ended_day, figures FROM loads"

// moveStock brings the position up to date with a load's row that is about to
// be written in place of the one before.
func (tx *Tx) moveStock(r LoadRow) error {
	if r.Ticket == 0 {
		return nil
	}
	was, err := tx.movedBefore(r.ID)
	if err != nil {
		return err
	}
	is, err := r.moved()
	if err != nil {
		return tx.fail(err)
	}
	if slices.EqualFunc(was, is, stockMove.equal) {
		return nil
	}
	for _, m := range was {
		if err := tx.applyMove(m.negative()); err != nil {
			return err
		}
	}
	for _, m := range is {
		if err := tx.applyMove(m); err != nil {
			return err
		}
	}
	return nil
}

func (m stockMove) equal(o stockMove) bool {
	return m.key == o.key && m.day == o.day && m.in.Equal(o.in) && m.out.Equal(o.out) && m.back.Equal(o.back)
}

func (tx *Tx) movedBefore(id string) ([]stockMove, error) {
	var r LoadRow
	err := scanMoved(tx.QueryRow(selectMoved+" WHERE id = ?", id), &r)
	if err == sql.ErrNoRows {
		return nil, nil
	}
	if err != nil {
		return nil, tx.fail(err)
	}
	moves, err := r.moved()
	return moves, tx.fail(err)
}

func scanMoved(row interface{ Scan(...any) error }, r *LoadRow) error {
	var figures string
	if err := row.Scan(&r.Ticket, &r.Direction, &r.Commodity, &r.Bin, &r.IssuedDay, &r.EndedDay, &figures); err != nil {
		return err
	}
	if err := r.readFigures(figures); err != nil {
		return fmt.Errorf("ticket %d: %w", r.Ticket, err)
	}
	return nil
}

const (
	selectStock = "SELECT commodity, bin, day, inward, outward, back, balance FROM stock"
	putStock    = "INSERT OR REPLACE INTO stock (commodity, bin, unit, day, inward, outward, back, balance) VALUES (?, ?, ?, ?, ?, ?, ?, ?)"
)

// applyMove adds a move to its day and to the balance of every day after it.
// There seldom is one: a business day does not go back.
func (tx *Tx) applyMove(m stockMove) error {
	rows, err := tx.Query(selectStock+" WHERE commodity = ? AND bin = ? AND unit = ? AND day >= ? ORDER BY day",
		m.key.commodity, m.key.bin, m.key.unit.String(), m.day)
	if err != nil {
		return err
	}
	days, err := scanStock(rows)
	if err != nil {
		return tx.fail(err)
	}
	if len(days) == 0 || days[0].Day != m.day {
		first, err := tx.newStockDay(m)
		if err != nil {
			return err
		}
		days = slices.Insert(days, 0, first)
	}
	days[0].In, days[0].Out, days[0].Back = days[0].In.Add(m.in), days[0].Out.Add(m.out), days[0].Back.Add(m.back)
	for _, day := range days {
		day.Weight = day.Weight.Add(m.delta())
		if err := tx.putStock(day); err != nil {
			return err
		}
	}
	return nil
}

// putStock writes a day's row; a day on which nothing moves after all has none.
func (tx *Tx) putStock(r StockRow) error {
	if r.isNothing() {
		_, err := tx.Exec("DELETE FROM stock WHERE commodity = ? AND bin = ? AND unit = ? AND day = ?", r.Commodity, r.Bin, r.Weight.Unit().String(), r.Day)
		return err
	}
	_, err := tx.Exec(putStock, r.values()...)
	return err
}

// newStockDay is a day on which nothing has moved yet.
func (tx *Tx) newStockDay(m stockMove) (StockRow, error) {
	none := quantity.Zero(m.key.unit)
	row := StockRow{Commodity: m.key.commodity, Bin: m.key.bin, Day: m.day, In: none, Out: none, Back: none, Weight: none}
	rows, err := tx.Query(selectStock+" WHERE commodity = ? AND bin = ? AND unit = ? AND day < ? ORDER BY day DESC LIMIT 1",
		m.key.commodity, m.key.bin, m.key.unit.String(), m.day)
	if err != nil {
		return row, err
	}
	before, err := scanStock(rows)
	if len(before) > 0 {
		row.Weight = before[0].Weight
	}
	return row, tx.fail(err)
}

func (r StockRow) isNothing() bool { return r.In.IsZero() && r.Out.IsZero() && r.Back.IsZero() }

func (r StockRow) values() []any {
	return []any{r.Commodity, r.Bin, r.Weight.Unit().String(), r.Day, stored(r.In), stored(r.Out), stored(r.Back), stored(r.Weight)}
}

func stored(a quantity.Amount) string {
	text, _ := a.MarshalText() // it has no way to fail
	return string(text)
}

func scanStock(rows *sql.Rows) ([]StockRow, error) {
	defer rows.Close()
	var out []StockRow
	for rows.Next() {
		var r StockRow
		var in, outward, back, balance string
		if err := rows.Scan(&r.Commodity, &r.Bin, &r.Day, &in, &outward, &back, &balance); err != nil {
			return nil, err
		}
		for _, one := range []struct {
			text string
			into *quantity.Amount
		}{{in, &r.In}, {outward, &r.Out}, {back, &r.Back}, {balance, &r.Weight}} {
			if err := one.into.UnmarshalText([]byte(one.text)); err != nil {
				return nil, fmt.Errorf("the position of %s in bin %q on %s cannot be read: %w", r.Commodity, r.Bin, r.Day, err)
			}
		}
		out = append(out, r)
	}
	return out, rows.Err()
}

// sortStock puts rows in the order of their key and day.
func sortStock(rows []StockRow) {
	slices.SortFunc(rows, func(a, b StockRow) int {
		return cmp.Or(cmp.Compare(a.Commodity, b.Commodity), cmp.Compare(a.Bin, b.Bin),
			cmp.Compare(a.Weight.Unit().String(), b.Weight.Unit().String()), cmp.Compare(a.Day, b.Day))
	})
}
