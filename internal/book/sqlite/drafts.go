package sqlite

import (
	"context"
	"database/sql"
	"tenthpoint/internal/book"
)

const (
	putDraft  = "INSERT OR REPLACE INTO drafts (place, id, at, who, texts) VALUES (?, ?, ?, ?, ?)"
	dropDraft = "DELETE FROM drafts WHERE place = ? AND id = ?"
)

// draftStatement returns the statement that saves the draft, or deletes it when it has no texts.
func draftStatement(d book.Draft) (query string, args []any) {
	if d.Texts == "" {
		return dropDraft, []any{d.Place, d.ID}
	}
	return putDraft, []any{d.Place, d.ID, d.At, d.Who, d.Texts}
}

// SaveDraft keeps a draft together with the rest of the write, in place of the
// one before it; without texts the draft goes.
func (tx *Tx) SaveDraft(d book.Draft) error {
	query, args := draftStatement(d)
	_, err := tx.exec(query, args...)
	return err
}

// DropDrafts deletes all drafts of one thing, at any place.
func (tx *Tx) DropDrafts(id string) error {
	_, err := tx.exec("DELETE FROM drafts WHERE id = ?", id)
	return err
}

// SaveDraft keeps a draft at once, at the speed of typing: it outlives the program
// being killed, and a failing computer only once something else was written.
// While another program writes the error is ErrBusy.
func (b *Book) SaveDraft(d book.Draft) error {
	if b.drafts == nil {
		return b.file.onlyRead()
	}
	query, args := draftStatement(d)
	_, err := b.drafts.Exec(query, args...)
	return b.file.wrote(err)
}

// draftReader reads drafts.
type draftReader struct{ reader }

// Drafts are all drafts of the book, by place and id.
func (r draftReader) Drafts(ctx context.Context) ([]book.Draft, error) {
	return list(r.during(ctx), scanDraft, "SELECT place, id, at, who, texts FROM drafts ORDER BY place, id")
}

func scanDraft(rows *sql.Rows) (d book.Draft, err error) {
	err = rows.Scan(&d.Place, &d.ID, &d.At, &d.Who, &d.Texts)
	return d, err
}
