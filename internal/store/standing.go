package store

import (
	"context"
	"database/sql"
)

// Standing is the last word on one standing thing: an elevator, a grower, a
// meter. Body is the fact's body.
type Standing struct {
	Kind, ID string
	Seq      int64
	Body     []byte
}

// PutStanding keeps the last word on a standing thing.
func (tx *Tx) PutStanding(s Standing) error {
	_, err := tx.Exec("INSERT OR REPLACE INTO standing (kind, id, seq, body) VALUES (?, ?, ?, ?)", s.Kind, s.ID, s.Seq, string(s.Body))
	return err
}

const selectStanding = "SELECT kind, id, seq, body FROM standing WHERE kind = ? ORDER BY id"

// StandingOf lists the standing things of a kind by id.
func (b *Book) StandingOf(ctx context.Context, kind string) ([]Standing, error) {
	return b.standing(ctx, selectStanding, kind)
}

func (b *Book) standing(ctx context.Context, query string, args ...any) ([]Standing, error) {
	rows, err := b.read.QueryContext(ctx, query, args...)
	if err != nil {
		return nil, b.sentence(err)
	}
	out, err := scanStanding(rows)
	return out, b.sentence(err)
}

func scanStanding(rows *sql.Rows) ([]Standing, error) {
	defer rows.Close()
	var out []Standing
	for rows.Next() {
		var s Standing
		if err := rows.Scan(&s.Kind, &s.ID, &s.Seq, &s.Body); err != nil {
			return nil, err
		}
		out = append(out, s)
	}
	return out, rows.Err()
}

// HasStanding reports whether a standing thing has been said anything of.
func (tx *Tx) HasStanding(kind, id string) (bool, error) {
	var n int64
	err := tx.QueryRow("SELECT count(*) FROM standing WHERE kind = ? AND id = ?", kind, id).Scan(&n)
	return n > 0, err
}

// LastStanding is the greatest id of a kind, in the order of texts; empty where
// there is none.
func (tx *Tx) LastStanding(kind string) (id string, err error) {
	err = tx.QueryRow("SELECT coalesce(max(id), '') FROM standing WHERE kind = ?", kind).Scan(&id)
	return id, err
}
