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

const selectStanding = "SELECT kind, id, seq, body FROM standing WHERE kind = ? ORDER BY id"

// Records lists the records of a kind by id.
func (b *Book) Records(ctx context.Context, kind string) ([]book.Record, error) {
	return b.standing(ctx, selectStanding, kind)
}

func (b *Book) standing(ctx context.Context, query string, args ...any) ([]book.Record, error) {
	rows, err := b.read.QueryContext(ctx, query, args...)
	if err != nil {
		return nil, b.sentence(err)
	}
	out, err := scanStanding(rows)
	return out, b.sentence(err)
}

func scanStanding(rows *sql.Rows) ([]book.Record, error) {
	defer rows.Close()
	var out []book.Record
	for rows.Next() {
		var s book.Record
		if err := rows.Scan(&s.Kind, &s.ID, &s.Seq, &s.Body); err != nil {
			return nil, err
		}
		out = append(out, s)
	}
	return out, rows.Err()
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
