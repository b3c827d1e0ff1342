package sqlite

import (
	"context"
	"database/sql"
	"tenthpoint/internal/book"
)

// PutRecord writes a record in place of the one before.
func (tx *Tx) PutRecord(s book.Record) error {
	_, err := tx.exec("INSERT OR REPLACE INTO standing (kind, id, seq, body) VALUES (?, ?, ?, ?)", s.Kind, s.ID, s.Seq, string(s.Body))
	return err
}

const selectRecords = "SELECT kind, id, seq, body FROM standing WHERE kind = ? ORDER BY id"

// A recordReader reads master data and the numbers given out.
type recordReader struct{ reader }

// Records lists the records of a kind by id.
func (r recordReader) Records(ctx context.Context, kind string) ([]book.Record, error) {
	return list(r.during(ctx), scanRecord, selectRecords, kind)
}

// Records is [Book.Records] as the write has left it so far.
func (tx *Tx) Records(kind string) ([]book.Record, error) {
	return list(tx, scanRecord, selectRecords, kind)
}

// AllRecords are the records of every kind, by kind and id.
func (r recordReader) AllRecords(ctx context.Context) ([]book.Record, error) {
	return list(r.during(ctx), scanRecord, "SELECT kind, id, seq, body FROM standing ORDER BY kind, id")
}

func scanRecord(rows *sql.Rows) (s book.Record, err error) {
	err = rows.Scan(&s.Kind, &s.ID, &s.Seq, &s.Body)
	return s, err
}

// HasRecord reports whether there is a record of that kind and id.
func (tx *Tx) HasRecord(kind, id string) (bool, error) {
	var n int64
	err := tx.queryRow("SELECT count(*) FROM standing WHERE kind = ? AND id = ?", kind, id).Scan(&n)
	return n > 0, err
}

// LastRecord is the greatest id of a kind, in the order of texts; empty where
// there is none.
func (tx *Tx) LastRecord(kind string) (id string, err error) {
	err = tx.queryRow("SELECT coalesce(max(id), '') FROM standing WHERE kind = ?", kind).Scan(&id)
	return id, err
}
