package postgres

import (
	"cmp"
	"slices"

	"tenthpoint/internal/bin"
	"tenthpoint/internal/book"
	"tenthpoint/internal/journal"
	"tenthpoint/internal/quantity"
)

// PutLoad writes a load's row in place of the one before, and moves the position, the bins and the
// lines of owners with it.
func (tx *Tx) PutLoad(is book.LoadRow) error {
	if tx.fail(nil) != nil {
		return tx.failed
	}
	if is.Ticket != 0 {
		was, err := tx.rowOf(is.ID)
		if tx.fail(err) != nil {
			return tx.failed
		}
		if tx.fail(tx.moveGrain(was, is)) != nil {
			return tx.failed
		}
	}
	_, err := loadRecord(is) // what cannot be kept is refused here
	tx.loads[is.ID] = is
	return tx.fail(err)
}

// rowOf is a load's row as this write has left it; an empty one for none.
func (tx *Tx) rowOf(id string) (book.LoadRow, error) {
	if r, ours := tx.loads[id]; ours {
		return r, nil
	}
	r, _, err := one(tx.source, scanRow, selectLoads+" WHERE id = $1", id)
	return r, err
}

func (tx *Tx) moveGrain(was, is book.LoadRow) error {
	change, err := book.ChangeOf(was, is)
	if err != nil {
		return err
	}
	if err := tx.applyMoves(stock, change.Stock); err != nil {
		return err
	}
	if err := tx.applyMoves(owned, change.Lines); err != nil {
		return err
	}
	return book.MoveBins(binsOf{tx}, change.Bins)
}

// MoveGrain brings everything that is kept of the grain up to date with a movement whose record was
// just written.
func (tx *Tx) MoveGrain(m bin.Movement) error {
	if tx.fail(nil) != nil {
		return tx.failed
	}
	if tx.fail(tx.applyMoves(owned, book.LineMovesOfMovement(m))) != nil {
		return tx.failed
	}
	return tx.fail(book.MoveBetween(binsOf{tx}, m))
}

// MoveOwners brings the lines of owners up to date with a settlement sheet or receipt that was just
// written in place of another.
func (tx *Tx) MoveOwners(was, is journal.Kinded) error {
	if tx.fail(nil) != nil {
		return tx.failed
	}
	return tx.fail(tx.applyMoves(owned, book.OwnerChange(was, is)))
}

func (tx *Tx) overlayOf(t balances) overlay[book.StockKey, book.StockRow] {
	if t == owned {
		return tx.owned
	}
	return tx.pending.stock
}

// applyMoves adds each move to its day and to the balance of every day after it.
func (tx *Tx) applyMoves(t balances, moves []book.StockMove) error {
	over := tx.overlayOf(t)
	for _, m := range moves {
		later, err := list(tx.source, scanStock, t.rows()+t.at()+" AND day >= $4 ORDER BY day", m.Key.Commodity, m.Key.Bin, m.Key.Unit.String(), m.Day)
		if err != nil {
			return err
		}
		days, before := over.days(later, m.Key, m.Day), quantity.Zero(m.Key.Unit)
		if len(days) == 0 || days[0].Day != m.Day {
			last, err := over.last(m.Key, m.Day, func(most int) ([]book.StockRow, error) { return tx.balancesBefore(t, m.Key, m.Day, most) })
			if err != nil {
				return err
			}
			if last != nil {
				before = last.Weight
			}
		}
		for _, day := range m.Shift(before, days) {
			if book.EmptyStock(day) { // a day on which nothing moves after all has no row
				over.set(m.Key, day.Day, nil)
			} else {
				over.set(m.Key, day.Day, &day)
			}
		}
	}
	return nil
}

// balancesBefore are the latest rows of the server of one place before a day, so many of them.
func (tx *Tx) balancesBefore(t balances, key book.StockKey, day string, most int) ([]book.StockRow, error) {
	return list(tx.source, scanStock, t.rows()+t.at()+" AND day < $4 ORDER BY day DESC LIMIT $5", key.Commodity, key.Bin, key.Unit.String(), day, most)
}

// binsOf is the store of bins within a write.
type binsOf struct{ tx *Tx }

const binAt = " AND bin = $2 AND commodity = $3 AND unit = $4"

func (b binsOf) BinRowsOn(day string, place *bin.Place) (rows []bin.Row, err error) {
	if place == nil {
		rows, err = list(b.tx.source, scanBin, selectBins+" WHERE day = $1", day)
	} else {
		rows, err = list(b.tx.source, scanBin, selectBins+" WHERE day = $1"+binAt, day, place.Bin, place.Commodity, place.Unit.String())
	}
	rows = b.tx.bins.over(rows, func(p bin.Place, on string) bool { return on == day && (place == nil || p == *place) })
	slices.SortFunc(rows, byPlace)
	return rows, err
}

func byPlace(a, b bin.Row) int {
	return cmp.Or(cmp.Compare(a.Bin, b.Bin), cmp.Compare(a.Commodity, b.Commodity), cmp.Compare(a.Unit.String(), b.Unit.String()))
}

func (b binsOf) BinsBefore(day string, place *bin.Place) ([]bin.Row, error) {
	if place != nil {
		last, err := b.tx.bins.last(*place, day, func(most int) ([]bin.Row, error) { return b.before(*place, day, most) })
		if err != nil || last == nil {
			return nil, err
		}
		return []bin.Row{*last}, nil
	}
	rows, err := binsBefore(b.tx.source, day)
	if err != nil {
		return nil, err
	}
	rows, err = b.tx.bins.lastOfAll(rows, day, func(p bin.Place, most int) ([]bin.Row, error) { return b.before(p, day, most) })
	slices.SortFunc(rows, byPlace)
	return rows, err
}

// before are the latest rows of the server of one place before a day, so many of them.
func (b binsOf) before(place bin.Place, day string, most int) ([]bin.Row, error) {
	return list(b.tx.source, scanBin, selectBins+" WHERE day < $1"+binAt+" ORDER BY day DESC LIMIT $5", day, place.Bin, place.Commodity, place.Unit.String(), most)
}

// NextBinDay may name a day whose last row this write takes away: it is then worked out to nothing.
func (b binsOf) NextBinDay(after string) (string, error) {
	next, _, err := one(b.tx.source, scanText, "SELECT coalesce(min(day), '') FROM bin_days WHERE day > $1", after)
	for _, days := range b.tx.bins.changed {
		for day, row := range days {
			if row != nil && day > after && (next == "" || day < next) {
				next = day
			}
		}
	}
	return next, err
}

func (b binsOf) MovementsOn(day string) ([]bin.Movement, error) { return b.tx.MovementsOn(day) }

// MovementsOn are the movements of a day as the write has left them so far.
func (tx *Tx) MovementsOn(day string) ([]bin.Movement, error) {
	kind := bin.Movement{}.Kind()
	rows, err := tx.recordsAmong(kind, func(id string) bool { return id >= day && id < day+"~" }, func() ([]book.Record, error) {
		return list(tx.source, scanRecord, selectRecords+" WHERE kind = $1 AND id >= $2 AND id < $3", kind, day, day+"~")
	})
	if err != nil {
		return nil, err
	}
	return readMovements(rows)
}

// PutBinRow writes a row; a day on which nothing happens after all has none.
func (b binsOf) PutBinRow(r bin.Row) error {
	if r.IsEmpty() {
		b.tx.bins.set(r.Place, r.Day.String(), nil)
	} else {
		b.tx.bins.set(r.Place, r.Day.String(), &r)
	}
	return nil
}
