package sqlite

import (
	"context"
	"database/sql"
	"slices"

	"tenthpoint/internal/bin"
	"tenthpoint/internal/book"
	"tenthpoint/internal/journal"
	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
)

const (
	selectBins = "SELECT bin, commodity, unit, day, body FROM bin_days"
	atPlace    = " AND bin = ? AND commodity = ? AND unit = ?"
)

func scanBin(rows *sql.Rows) (bin.Row, error) {
	kept, err := scanKeptBin(rows)
	if err != nil {
		return bin.Row{}, err
	}
	return kept.row()
}

// keptBin is a row of a bin as it is kept: its key, and a text.
type keptBin struct {
	key  binKey
	body string
}

type binKey struct{ bin, commodity, unit, day string }

func scanKeptBin(rows *sql.Rows) (k keptBin, err error) {
	err = rows.Scan(&k.key.bin, &k.key.commodity, &k.key.unit, &k.key.day, &k.body)
	return k, err
}

func (k keptBin) row() (bin.Row, error) {
	unit, err := quantity.ParseUnit(k.key.unit)
	if err != nil {
		return bin.Row{}, err
	}
	return book.DecodeBinRow(bin.Place{Bin: k.key.bin, Commodity: k.key.commodity, Unit: unit}, k.key.day, k.body)
}

// A binReader reads what lies in the bins.
type binReader struct{ reader }

// BinsBefore is the content of every bin in the evening before a day: the last row of each place.
func (r binReader) BinsBefore(ctx context.Context, day string) ([]bin.Row, error) {
	return binsBefore(r.during(ctx), day, nil)
}

// BinDays are the rows from one day to another, of one bin or, without a name, of all, by bin and
// day; no last day means without end.
func (r binReader) BinDays(ctx context.Context, name, from, to string) ([]bin.Row, error) {
	if name == "" {
		return list(r.during(ctx), scanBin, selectBins+" WHERE day >= ? AND day <= ? ORDER BY bin, commodity, unit, day", from, orEnd(to))
	}
	return list(r.during(ctx), scanBin, selectBins+" WHERE bin = ? AND day >= ? AND day <= ? ORDER BY commodity, unit, day", name, from, orEnd(to))
}

// Movements are the movements from one day to another in the order of their numbers; no last day
// means without end.
func (r binReader) Movements(ctx context.Context, from, to string) ([]bin.Movement, error) {
	return movements(r.during(ctx), from, to)
}

// BinBefore is the content of one bin in the evening before a day.
func (r binReader) BinBefore(ctx context.Context, name, day string) ([]bin.Row, error) {
	return list(r.during(ctx), scanBin, selectBinBefore, name, day)
}

// selectBinBefore looks each grain of a bin up after the one before, see [lastRows].
const selectBinBefore = `WITH RECURSIVE grains (commodity) AS (
		SELECT min(commodity) FROM bin_days WHERE bin = ?1
		UNION ALL SELECT (SELECT min(s.commodity) FROM bin_days s WHERE s.bin = ?1 AND s.commodity > grains.commodity) FROM grains WHERE commodity IS NOT NULL
	), keys (commodity, unit) AS (
		SELECT commodity, (SELECT min(s.unit) FROM bin_days s WHERE s.bin = ?1 AND s.commodity = grains.commodity) FROM grains WHERE commodity IS NOT NULL
		UNION ALL SELECT commodity, (SELECT min(s.unit) FROM bin_days s WHERE s.bin = ?1 AND s.commodity = keys.commodity AND s.unit > keys.unit) FROM keys WHERE unit IS NOT NULL
	)
	SELECT s.bin, s.commodity, s.unit, s.day, s.body
	  FROM keys k CROSS JOIN bin_days s ON s.bin = ?1 AND s.commodity = k.commodity AND s.unit = k.unit
	   AND s.day = (SELECT max(day) FROM bin_days d WHERE d.bin = ?1 AND d.commodity = k.commodity AND d.unit = k.unit AND d.day < ?2)
	 ORDER BY s.commodity, s.unit`

func binsBefore(from source, day string, place *bin.Place) ([]bin.Row, error) {
	if place == nil {
		return list(from, scanBin, lastRows("bin_days", "bin", "commodity", "unit", "s.bin, s.commodity, s.unit, s.day, s.body"), day)
	}
	return list(from, scanBin, selectBins+" WHERE day < ?"+atPlace+" ORDER BY day DESC LIMIT 1", day, place.Bin, place.Commodity, place.Unit.String())
}

// movements reads movements by their records, whose ids begin with their day.
func movements(from source, first, last string) ([]bin.Movement, error) {
	return list(from, scanMovement, "SELECT body FROM standing WHERE kind = ? AND id >= ? AND id < ? ORDER BY id", bin.Movement{}.Kind(), first, orEnd(last)+"~")
}

func scanMovement(rows *sql.Rows) (bin.Movement, error) {
	var body []byte
	if err := rows.Scan(&body); err != nil {
		return bin.Movement{}, err
	}
	m, err := journal.ReadBody[bin.Movement](body)
	if err != nil {
		err = message.Errorf("a movement cannot be read: %w", err)
	}
	return m, err
}

// MoveGrain brings everything that is kept of the grain up to date with a movement whose record was
// just written.
func (tx *Tx) MoveGrain(m bin.Movement) error {
	if err := applyMoves(tx, owned, book.LineMovesOfMovement(m)); err != nil {
		return err
	}
	return tx.fail(book.MoveBetween(binsOf{tx}, m))
}

// MoveOwners brings the lines of owners up to date with a settlement sheet or receipt that was just
// written in place of another.
func (tx *Tx) MoveOwners(was, is journal.Kinded) error {
	return applyMoves(tx, owned, book.OwnerChange(was, is))
}

func ownerRecords(from source) ([]journal.Kinded, error) {
	var out []journal.Kinded
	for _, kind := range book.OwnerKinds {
		rows, err := list(from, scanRecord, selectRecords, kind)
		if err != nil {
			return nil, err
		}
		owned, err := book.ReadOwners(rows)
		if err != nil {
			return nil, err
		}
		out = append(out, owned...)
	}
	return out, nil
}

// BinsBefore is [Book.BinsBefore] as the write has left it so far.
func (tx *Tx) BinsBefore(day string) ([]bin.Row, error) { return binsBefore(tx, day, nil) }

// BinBefore is [Book.BinBefore] as the write has left it so far.
func (tx *Tx) BinBefore(name, day string) ([]bin.Row, error) {
	return list(tx, scanBin, selectBinBefore, name, day)
}

// MovementsOn are the movements of a day as the write has left them so far.
func (tx *Tx) MovementsOn(day string) ([]bin.Movement, error) { return movements(tx, day, day) }

// binsOf is the store of bins within a write.
type binsOf struct{ tx *Tx }

func (b binsOf) BinRowsOn(day string, place *bin.Place) ([]bin.Row, error) {
	if place == nil {
		return list(b.tx, scanBin, selectBins+" WHERE day = ? ORDER BY bin, commodity, unit", day)
	}
	return list(b.tx, scanBin, selectBins+" WHERE day = ?"+atPlace, day, place.Bin, place.Commodity, place.Unit.String())
}

func (b binsOf) BinsBefore(day string, place *bin.Place) ([]bin.Row, error) {
	return binsBefore(b.tx, day, place)
}

func (b binsOf) NextBinDay(after string) (day string, err error) {
	err = b.tx.queryRow("SELECT coalesce(min(day), '') FROM bin_days WHERE day > ?", after).Scan(&day)
	return day, err
}

func (b binsOf) MovementsOn(day string) ([]bin.Movement, error) { return b.tx.MovementsOn(day) }

// PutBinRow writes a row; a day on which nothing happens after all has none.
func (b binsOf) PutBinRow(r bin.Row) error {
	if r.IsEmpty() {
		_, err := b.tx.exec("DELETE FROM bin_days WHERE day = ?"+atPlace, r.Day.String(), r.Bin, r.Commodity, r.Unit.String())
		return err
	}
	_, err := b.tx.exec(putBin, binValues(r)...)
	return err
}

const putBin = "INSERT OR REPLACE INTO bin_days (bin, commodity, unit, day, body) VALUES (?, ?, ?, ?, ?)"

func binValues(r bin.Row) []any {
	return []any{r.Bin, r.Commodity, r.Unit.String(), r.Day.String(), book.EncodeBinRow(r)}
}

// verifyBins compares what lies in the bins with what was worked out anew. A row whose text is the
// one that would be written now is right; only others are read, since that takes much longer.
func verifyBins(from source, sum *book.BinSum) ([]message.Text, error) {
	want, err := sum.Rows()
	if err != nil {
		return nil, err
	}
	texts := map[binKey]string{}
	for _, r := range want {
		texts[binKey{r.Bin, r.Commodity, r.Unit.String(), r.Day.String()}] = book.EncodeBinRow(r)
	}
	kept, err := list(from, scanKeptBin, selectBins)
	if err != nil {
		return nil, err
	}
	var differs []bin.Row
	for _, k := range kept {
		if text, known := texts[k.key]; known && text == k.body {
			delete(texts, k.key)
			continue
		}
		r, err := k.row()
		if err != nil {
			return nil, err
		}
		differs = append(differs, r)
	}
	want = slices.DeleteFunc(want, func(r bin.Row) bool {
		_, left := texts[binKey{r.Bin, r.Commodity, r.Unit.String(), r.Day.String()}]
		return !left
	})
	return book.CompareBins(want, differs), nil
}

// fillBins works out the bins and the lines of an older book from its loads.
func fillBins(f *file, tx *sql.Tx) error {
	all, err := sumGrain(snapshot{reader{file: f}.during(context.Background()), tx})
	if err != nil {
		return err
	}
	if err := putBalances(tx, owned, all.Lines.Rows()); err != nil {
		return err
	}
	rows, err := all.Bins.Rows()
	for _, r := range rows {
		if _, err := tx.Exec(putBin, binValues(r)...); err != nil {
			return err
		}
	}
	return err
}

// rewriteBins writes the rows of an older book in the form of today, a day at a time. What cannot be read
// stays as it is: it is named when the book is verified.
func rewriteBins(f *file, tx *sql.Tx) error {
	from := snapshot{reader{file: f}.during(context.Background()), tx}
	days, err := list(from, scanText, "SELECT DISTINCT day FROM bin_days ORDER BY day")
	if err != nil {
		return err
	}
	for _, day := range days {
		rows, err := list(from, scanKeptBin, selectBins+" WHERE day = ?", day)
		if err != nil {
			return err
		}
		for _, kept := range rows {
			r, err := kept.row()
			if err != nil {
				continue
			}
			if _, err := tx.Exec(putBin, binValues(r)...); err != nil {
				return err
			}
		}
	}
	return nil
}
