package postgres

import (
	"cmp"
	"maps"
	"slices"
	"time"

	"github.com/jackc/pgx/v5"

	"tenthpoint/internal/bin"
	"tenthpoint/internal/book"
	"tenthpoint/internal/digest"
	"tenthpoint/internal/journal"
	"tenthpoint/internal/message"
)

// opening is the book as a write found it.
type opening struct {
	writes int64         // how many writes there were
	last   *journal.Fact // the end of the chain: number, hash and time; nil in an empty book
	clock  time.Time     // the server's
}

const selectOpening = `SELECT h.writes, coalesce(f.seq, 0), coalesce(f.hash, ''), coalesce(f.at, ''), clock_timestamp()
	FROM head h LEFT JOIN LATERAL (SELECT seq, hash, at FROM facts ORDER BY seq DESC LIMIT 1) f ON true`

func scanOpening(row pgx.Row) (o opening, err error) {
	var last journal.Fact
	err = row.Scan(&o.writes, &last.Seq, &last.Hash, &last.At, &o.clock)
	if last.Seq > 0 {
		o.last = &last
	}
	return o, err
}

// Tx is a write under way: it reads the server and collects what is to be done. Nothing of it is in
// the server before the act has ended.
type Tx struct {
	source
	opening
	pending
	failed error
}

// fail notes the first failure and returns it; without one it is nil.
func (tx *Tx) fail(err error) error {
	if tx.failed == nil {
		tx.failed = cmp.Or(err, tx.ctx.Err())
	}
	return tx.failed
}

// deskSlack is the difference between a desk's clock and the server's that is not noted.
const deskSlack = 5 * time.Second

// Append enters a fact at the end of the chain. An entry with problems is refused with all of them.
func (tx *Tx) Append(d journal.Entry) (journal.Fact, error) {
	if tx.fail(nil) != nil {
		return journal.Fact{}, tx.failed
	}
	if problems := d.Problems(); len(problems) > 0 {
		return journal.Fact{}, tx.fail(message.Storage.Errorf("This was not entered. %s", message.Texts(" ", problems)))
	}
	if own := time.Now(); own.Sub(tx.clock).Abs() > deskSlack {
		tx.deskAt = journal.Stamp(own)
	}
	f := journal.Link(tx.last, d)
	tx.facts, tx.last = append(tx.facts, f), &f
	return f, nil
}

// LastAt is the time of the last fact, this write included; empty in an empty book.
func (tx *Tx) LastAt() (string, error) {
	if tx.last == nil {
		return "", tx.fail(nil)
	}
	return tx.last.At, tx.fail(nil)
}

// FactsOf returns all facts of a subject, in order, including those of this write.
func (tx *Tx) FactsOf(subject string) ([]journal.Fact, error) {
	if tx.fail(nil) != nil {
		return nil, tx.failed
	}
	all, err := factsOf(tx.source, subject)
	for _, f := range tx.facts {
		if f.Subject == subject {
			all = append(all, f)
		}
	}
	return all, tx.fail(err)
}

// NextNumber takes the next number of a series, the first being 1. It is used up only if the write
// is kept.
func (tx *Tx) NextNumber(series string) (int64, error) {
	last, known := tx.series[series]
	if !known {
		if tx.fail(nil) != nil {
			return 0, tx.failed
		}
		var err error
		if last, err = lastNumber(tx.source, series); tx.fail(err) != nil {
			return 0, tx.failed
		}
	}
	tx.series[series] = last + 1
	return last + 1, tx.fail(nil)
}

// KeepEdition keeps the text of an edition by its SHA-256, once. The same id with another text is
// another edition.
func (tx *Tx) KeepEdition(id, sha, text string) error {
	if want := digest.Of(text); sha != want {
		return tx.fail(message.Storage.Errorf("The edition %s was not kept: its text has the hash %s, not %s.", id, want, sha))
	}
	kept, some := tx.editions[sha]
	if !some {
		if tx.fail(nil) != nil {
			return tx.failed
		}
		var err error
		if kept, some, err = one(tx.source, scanEdition, selectEditions+" WHERE sha256 = $1", sha); tx.fail(err) != nil {
			return tx.failed
		}
	}
	if some && kept.id != id {
		return tx.fail(message.Storage.Errorf("The edition %s was not kept: the same text is already in the book as %s.", id, kept.id))
	}
	if !some {
		tx.editions[sha] = edition{sha, id, text}
	}
	return tx.fail(nil)
}

// Loads lists loads, those of this write included.
func (tx *Tx) Loads(f book.LoadFilter) ([]book.LoadRow, error) {
	if tx.fail(nil) != nil {
		return nil, tx.failed
	}
	wider := f
	if f.Limit > 0 {
		wider.Limit += len(tx.loads) // of those in the book some may be among these
	}
	rows, err := loads(tx.source, wider)
	if tx.fail(err) != nil || len(tx.loads) == 0 {
		return rows, tx.failed
	}
	rows = slices.DeleteFunc(rows, func(r book.LoadRow) bool { _, ours := tx.loads[r.ID]; return ours })
	for _, r := range tx.loads {
		if f.Fits(r) {
			rows = append(rows, r)
		}
	}
	slices.SortFunc(rows, f.Order)
	if f.Limit > 0 && len(rows) > f.Limit {
		rows = rows[:f.Limit]
	}
	return rows, nil
}

// LastTicketBefore is the last ticket number of the last business day before a day.
func (tx *Tx) LastTicketBefore(day string) (int64, error) {
	if tx.fail(nil) != nil {
		return 0, tx.failed
	}
	if len(tx.loads) == 0 {
		n, err := lastTicketBefore(tx.source, day)
		return n, tx.fail(err)
	}
	// A ticket keeps its number and its day, so none in the book is replaced by an earlier one.
	last, _, err := one(tx.source, scanRow, selectLoads+" WHERE issued_day < $1 AND issued_day > '' ORDER BY issued_day DESC, ticket DESC NULLS LAST LIMIT 1", day)
	for _, r := range tx.loads {
		if r.Ticket > 0 && r.IssuedDay < day && cmp.Or(cmp.Compare(r.IssuedDay, last.IssuedDay), cmp.Compare(r.Ticket, last.Ticket)) > 0 {
			last = r
		}
	}
	return last.Ticket, tx.fail(err)
}

// LastIssuedDay is the latest day that any ticket counts in; empty before the first ticket.
func (tx *Tx) LastIssuedDay() (string, error) {
	if tx.fail(nil) != nil {
		return "", tx.failed
	}
	day, _, err := one(tx.source, scanText, "SELECT coalesce(max(issued_day), '') FROM loads")
	for _, r := range tx.loads {
		day = max(day, r.IssuedDay)
	}
	return day, tx.fail(err)
}

// SamplesKept counts the retained samples to be kept through the days from one to another.
func (tx *Tx) SamplesKept(from, to string) ([]book.KeptSamples, error) {
	if tx.fail(nil) != nil {
		return nil, tx.failed
	}
	kept, err := samplesKept(tx.source, from, to)
	if tx.fail(err) != nil || len(tx.loads) == 0 {
		return kept, tx.failed
	}
	counts := map[string]int{}
	for _, k := range kept {
		counts[k.Until] = k.Count
	}
	inBook, err := list(tx.source, scanRow, selectLoads+" WHERE id = ANY ($1)", slices.Collect(maps.Keys(tx.loads)))
	for _, r := range inBook {
		if r.HasSample() && r.KeepUntil >= from && r.KeepUntil <= to {
			counts[r.KeepUntil]--
		}
	}
	for _, r := range tx.loads {
		if r.HasSample() && r.KeepUntil >= from && r.KeepUntil <= to {
			counts[r.KeepUntil]++
		}
	}
	var out []book.KeptSamples
	for _, until := range slices.Sorted(maps.Keys(counts)) {
		if counts[until] > 0 {
			out = append(out, book.KeptSamples{Until: until, Count: counts[until]})
		}
	}
	return out, tx.fail(err)
}

// PutRecord writes a record in place of the one before.
func (tx *Tx) PutRecord(r book.Record) error {
	tx.records[recordKey{r.Kind, r.ID}] = r
	return tx.fail(nil)
}

// Records lists the records of a kind by id, those of this write included.
func (tx *Tx) Records(kind string) ([]book.Record, error) {
	return tx.recordsAmong(kind, func(string) bool { return true }, func() ([]book.Record, error) { return records(tx.source, kind) })
}

// recordsAmong lays the records of this write over those the server has.
func (tx *Tx) recordsAmong(kind string, fits func(id string) bool, kept func() ([]book.Record, error)) ([]book.Record, error) {
	if tx.fail(nil) != nil {
		return nil, tx.failed
	}
	rows, err := kept()
	if tx.fail(err) != nil {
		return nil, tx.failed
	}
	rows = slices.DeleteFunc(rows, func(r book.Record) bool { _, ours := tx.records[recordKey{r.Kind, r.ID}]; return ours })
	for key, r := range tx.records {
		if key.kind == kind && fits(key.id) {
			rows = append(rows, r)
		}
	}
	slices.SortFunc(rows, func(a, b book.Record) int { return cmp.Compare(a.ID, b.ID) })
	return rows, nil
}

// HasRecord reports whether there is a record of that kind and id.
func (tx *Tx) HasRecord(kind, id string) (bool, error) {
	if tx.fail(nil) != nil {
		return false, tx.failed
	}
	if _, ours := tx.records[recordKey{kind, id}]; ours {
		return true, nil
	}
	_, some, err := one(tx.source, scanNumber, "SELECT seq FROM standing WHERE kind = $1 AND id = $2", kind, id)
	return some, tx.fail(err)
}

// LastRecord is the greatest id of a kind, in the order of texts; empty where there is none.
func (tx *Tx) LastRecord(kind string) (string, error) {
	if tx.fail(nil) != nil {
		return "", tx.failed
	}
	id, _, err := one(tx.source, scanText, "SELECT coalesce(max(id), '') FROM standing WHERE kind = $1", kind)
	for key := range tx.records {
		if key.kind == kind {
			id = max(id, key.id)
		}
	}
	return id, tx.fail(err)
}

// SaveDraft keeps a draft together with the rest of the write; without texts the draft goes.
func (tx *Tx) SaveDraft(d book.Draft) error {
	tx.drafts[draftKey{d.Place, d.ID}] = d
	return tx.fail(nil)
}

// DropDrafts deletes all drafts of one thing, at any place.
func (tx *Tx) DropDrafts(id string) error {
	maps.DeleteFunc(tx.drafts, func(key draftKey, _ book.Draft) bool { return key.id == id })
	tx.undone = append(tx.undone, id)
	return tx.fail(nil)
}

// StockBefore is the position in the evening before a day.
func (tx *Tx) StockBefore(day string) ([]book.StockRow, error) {
	if tx.fail(nil) != nil {
		return nil, tx.failed
	}
	rows, err := lastBalances(tx.source, stock, day)
	if tx.fail(err) != nil {
		return nil, tx.failed
	}
	rows, err = tx.stock.lastOfAll(rows, day, func(key book.StockKey, most int) ([]book.StockRow, error) {
		return tx.balancesBefore(stock, key, day, most)
	})
	slices.SortFunc(rows, func(a, b book.StockRow) int {
		return cmp.Or(cmp.Compare(a.Commodity, b.Commodity), cmp.Compare(a.Bin, b.Bin), cmp.Compare(a.Weight.Unit().String(), b.Weight.Unit().String()))
	})
	return slices.DeleteFunc(rows, func(r book.StockRow) bool { return r.Weight.IsZero() }), tx.fail(err)
}

// BinBefore is that of one bin.
func (tx *Tx) BinBefore(name, day string) ([]bin.Row, error) {
	rows, err := tx.BinsBefore(day)
	return ofBin(rows, name), err
}

// BinsBefore is the last row before a day of every place where grain lies or lay.
func (tx *Tx) BinsBefore(day string) ([]bin.Row, error) {
	if tx.fail(nil) != nil {
		return nil, tx.failed
	}
	rows, err := binsOf{tx}.BinsBefore(day, nil)
	return rows, tx.fail(err)
}
