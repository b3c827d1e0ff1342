package postgres

import (
	"context"
	"errors"

	"github.com/jackc/pgx/v5"

	"tenthpoint/internal/book"
	"tenthpoint/internal/message"
)

// snapshot lets read see one moment of the book, however many queries it makes.
func (b *Book) snapshot(ctx context.Context, read func(reader) error) error {
	var tx pgx.Tx
	err := b.line.once(ctx, func(used context.Context) (err error) {
		tx, err = b.line.pool.BeginTx(used, pgx.TxOptions{IsoLevel: pgx.RepeatableRead, AccessMode: pgx.ReadOnly})
		return err
	})
	if err != nil {
		return err
	}
	defer func() { _ = tx.Rollback(context.WithoutCancel(ctx)) }() // it only read
	return read(reader{b.line, tx})
}

// VerifyStock recalculates the position, the lines of owners and the bins from the loads and
// movements, and returns every row that differs, as a sentence. All is read from one snapshot.
func (b *Book) VerifyStock(ctx context.Context) (problems []message.Text, err error) {
	err = b.snapshot(ctx, func(r reader) error {
		problems, err = verifyStock(r.during(ctx))
		return err
	})
	if errors.Is(err, book.ErrFigures) {
		return []message.Text{message.New("The position cannot be checked: %s.", err)}, nil
	}
	return problems, err
}

func verifyStock(s source) (problems []message.Text, err error) {
	var all book.GrainSum
	err = s.each(func(rows pgx.Rows) error {
		r, err := scanRow(rows)
		if err != nil {
			return err
		}
		return all.Add(r)
	}, selectLoads+" WHERE ticket IS NOT NULL")
	if err != nil {
		return nil, err
	}
	moves, err := movements(s, "", "")
	if err != nil {
		return nil, err
	}
	follows, err := ownerRecords(s)
	if err != nil {
		return nil, err
	}
	all.Follow(moves, follows)
	for _, t := range []struct {
		balances
		want []book.StockRow
	}{{stock, all.Stock.Rows()}, {owned, all.Lines.Rows()}} {
		kept, err := list(s, scanStock, t.rows())
		if err != nil {
			return nil, err
		}
		misplaced, err := list(s, t.scanMisplaced, t.misplaced())
		if err != nil {
			return nil, err
		}
		problems = append(append(problems, misplaced...), book.CompareStock(t.place, t.want, kept)...)
	}
	want, err := all.Bins.Rows()
	if err != nil {
		return nil, err
	}
	kept, err := list(s, scanBin, selectBins)
	return append(problems, book.CompareBins(want, kept)...), err
}

// misplaced finds rows stored under another unit than that of their weights. The unit is only a key,
// so nothing else would detect it.
func (t balances) misplaced() string {
	return "SELECT commodity, " + t.place + ", day, unit, substr(balance, strpos(balance, ' ') + 1) FROM " + t.table +
		" WHERE unit <> substr(balance, strpos(balance, ' ') + 1) ORDER BY commodity, " + t.place + ", unit, day"
}

func (t balances) scanMisplaced(row pgx.Row) (message.Text, error) {
	var commodity, place, day, unit, is string
	err := row.Scan(&commodity, &place, &day, &unit, &is)
	return message.New("The position of %s in %s %q on %v stands under the unit %q, but is in %v.", commodity, message.Words(t.place), place, day, unit, is), err
}
