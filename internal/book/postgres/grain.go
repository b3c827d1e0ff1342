package postgres

import (
	"context"
	"slices"
	"strings"

	"github.com/jackc/pgx/v5"

	"tenthpoint/internal/bin"
	"tenthpoint/internal/book"
	"tenthpoint/internal/journal"
	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
)

// balances is a table of balances by day: of the stock by bin, or of the lines of who owns it.
type balances struct{ table, place string }

var (
	stock = balances{"stock", "bin"}
	owned = balances{"owned", "line"}
)

func (t balances) columns() string {
	return "commodity, " + t.place + ", day, inward, outward, back, balance"
}

func (t balances) rows() string { return "SELECT " + t.columns() + " FROM " + t.table }

// at is the condition of one place, given as the first three arguments.
func (t balances) at() string { return " WHERE commodity = $1 AND " + t.place + " = $2 AND unit = $3" }

func scanStock(row pgx.Row) (r book.StockRow, err error) {
	var texts [4]string
	if err := row.Scan(&r.Commodity, &r.Bin, &r.Day, &texts[0], &texts[1], &texts[2], &texts[3]); err != nil {
		return r, err
	}
	for i, into := range []*quantity.Amount{&r.In, &r.Out, &r.Back, &r.Weight} {
		if err := into.UnmarshalText([]byte(texts[i])); err != nil {
			return r, message.Errorf("the position of %s in bin %q on %s cannot be read: %w", r.Commodity, r.Bin, r.Day, err)
		}
	}
	return r, nil
}

// lastRows takes, of each place, the row of its last day before a day. It looks each place up after
// the one before, since a book has few places and in time very many days.
func lastRows(table, key, columns string) string {
	of := "p." + strings.ReplaceAll(key, ", ", ", p.")
	return `WITH RECURSIVE places AS (
			(SELECT ` + key + ` FROM ` + table + ` ORDER BY ` + key + ` LIMIT 1)
			UNION ALL
			SELECT next.* FROM places p CROSS JOIN LATERAL (
				SELECT ` + key + ` FROM ` + table + ` t WHERE (` + key + `) > (` + of + `) ORDER BY ` + key + ` LIMIT 1) next
		) SELECT last.* FROM places p CROSS JOIN LATERAL (
			SELECT ` + columns + ` FROM ` + table + ` t WHERE (` + key + `) = (` + of + `) AND day < $1 ORDER BY day DESC LIMIT 1) last`
}

// A stockReader reads the position and the lines of owners, by day.
type stockReader struct{ reader }

// StockBefore is the position in the evening before a day: the last row of every commodity and bin,
// those that are empty left out.
func (r stockReader) StockBefore(ctx context.Context, day string) ([]book.StockRow, error) {
	return balancesBefore(r.during(ctx), stock, day)
}

// LinesBefore are the lines of who owns the grain in the evening before a day.
func (r stockReader) LinesBefore(ctx context.Context, day string) ([]book.StockRow, error) {
	return balancesBefore(r.during(ctx), owned, day)
}

func balancesBefore(s source, t balances, day string) ([]book.StockRow, error) {
	all, err := lastBalances(s, t, day)
	return slices.DeleteFunc(all, func(r book.StockRow) bool { return r.Weight.IsZero() }), err
}

func lastBalances(s source, t balances, day string) ([]book.StockRow, error) {
	return list(s, scanStock, lastRows(t.table, "commodity, "+t.place+", unit", t.columns()), day)
}

// StockDays are the days from one to another on which anything moved, by commodity, bin and day; no
// last day means without end.
func (r stockReader) StockDays(ctx context.Context, from, to string) ([]book.StockRow, error) {
	return balanceDays(r.during(ctx), stock, from, to)
}

// LineDays are the days from one to another on which any line changed.
func (r stockReader) LineDays(ctx context.Context, from, to string) ([]book.StockRow, error) {
	return balanceDays(r.during(ctx), owned, from, to)
}

func balanceDays(s source, t balances, from, to string) ([]book.StockRow, error) {
	return list(s, scanStock, t.rows()+" WHERE day >= $1 AND day <= $2 ORDER BY commodity, "+t.place+", unit, day", from, orEnd(to))
}

// orEnd is the last day of a period; without one it has no end.
func orEnd(day string) string {
	if day == "" {
		return "9999-99-99"
	}
	return day
}

const (
	binColumns = "bin, commodity, unit, day, body"
	selectBins = "SELECT " + binColumns + " FROM bin_days"
)

func scanBin(row pgx.Row) (bin.Row, error) {
	var p bin.Place
	var unit, day, body string
	if err := row.Scan(&p.Bin, &p.Commodity, &unit, &day, &body); err != nil {
		return bin.Row{}, err
	}
	var err error
	if p.Unit, err = quantity.ParseUnit(unit); err != nil {
		return bin.Row{}, err
	}
	return book.DecodeBinRow(p, day, body)
}

// A binReader reads what lies in the bins.
type binReader struct{ reader }

// BinsBefore is the content of every bin in the evening before a day: the last row of each place.
func (r binReader) BinsBefore(ctx context.Context, day string) ([]bin.Row, error) {
	return binsBefore(r.during(ctx), day)
}

// BinBefore is the content of one bin in the evening before a day.
func (r binReader) BinBefore(ctx context.Context, name, day string) ([]bin.Row, error) {
	rows, err := r.BinsBefore(ctx, day)
	return ofBin(rows, name), err
}

func ofBin(rows []bin.Row, name string) []bin.Row {
	return slices.DeleteFunc(rows, func(r bin.Row) bool { return r.Bin != name })
}

func binsBefore(s source, day string) ([]bin.Row, error) {
	return list(s, scanBin, lastRows("bin_days", "bin, commodity, unit", binColumns), day)
}

// BinDays are the rows from one day to another, of one bin or, without a name, of all, by bin and
// day; no last day means without end.
func (r binReader) BinDays(ctx context.Context, name, from, to string) ([]bin.Row, error) {
	return list(r.during(ctx), scanBin, selectBins+" WHERE ($1 = '' OR bin = $1) AND day >= $2 AND day <= $3 ORDER BY bin, commodity, unit, day", name, from, orEnd(to))
}

// Movements are the movements from one day to another in the order of their numbers; no last day
// means without end.
func (r binReader) Movements(ctx context.Context, from, to string) ([]bin.Movement, error) {
	return movements(r.during(ctx), from, to)
}

// movements reads movements by their records, whose ids begin with their day.
func movements(s source, first, last string) ([]bin.Movement, error) {
	rows, err := list(s, scanRecord, selectRecords+" WHERE kind = $1 AND id >= $2 AND id < $3 ORDER BY id", bin.Movement{}.Kind(), first, orEnd(last)+"~")
	if err != nil {
		return nil, err
	}
	return readMovements(rows)
}

func ownerRecords(s source) ([]journal.Kinded, error) {
	rows, err := list(s, scanRecord, selectRecords+" WHERE kind = ANY($1) ORDER BY kind, id", book.OwnerKinds)
	if err != nil {
		return nil, err
	}
	return book.ReadOwners(rows)
}

func readMovements(rows []book.Record) ([]bin.Movement, error) {
	var out []bin.Movement
	for _, r := range rows {
		m, err := journal.ReadBody[bin.Movement](r.Body)
		if err != nil {
			return out, message.Errorf("a movement cannot be read: %w", err)
		}
		out = append(out, m)
	}
	return out, nil
}
