package store

import (
	"context"
	"time"
)

// Draft is what a person has typed at a place of the book and the book has not
// taken as a fact. Texts is a JSON object of name to text; a draft without
// texts is none.
type Draft struct {
	Place, ID string
	At, Who   string
	Texts     string
}

const (
	putDraft  = "INSERT OR REPLACE INTO drafts (place, id, at, who, texts) VALUES (?, ?, ?, ?, ?)"
	dropDraft = "DELETE FROM drafts WHERE place = ? AND id = ?"
)

// statement is what keeps the draft, or takes it away when it has no texts.
func (d Draft) statement() (query string, args []any) {
	if d.Texts == "" {
		return dropDraft, []any{d.Place, d.ID}
	}
	return putDraft, []any{d.Place, d.ID, d.At, d.Who, d.Texts}
}

// KeepDraft keeps a draft together with the rest of the write, in place of the
// one before it; without texts the draft goes.
func (tx *Tx) KeepDraft(d Draft) error {
	query, args := d.statement()
	_, err := tx.Exec(query, args...)
	return err
}

// DropDraftsOf takes away all that was typed of one thing, at whatever place.
func (tx *Tx) DropDraftsOf(id string) error {
	_, err := tx.Exec("DELETE FROM drafts WHERE id = ?", id)
	return err
}

// jotPatience is how long a jot waits for another program's write. A person is
// typing: the next keystroke brings the same text again.
const jotPatience = 20 * time.Millisecond

// jotting is for the connection of jots. What it commits has left the program
// and outlives it, but does not wait for the disk: the next fact takes it there.
// It leaves the tidying of the log to the writer, which waits for the disk
// anyhow.
func jotting() access {
	a := writing(jotPatience)
	a["_synchronous"] = []string{"NORMAL"}
	a["_pragma"] = append(a["_pragma"], "wal_autocheckpoint(0)")
	return a
}

// Jot keeps a draft at once, at the speed of typing: it outlives the program
// being killed, and a failing computer only once something else was written.
// While another program writes the error is ErrBusy.
func (b *Book) Jot(d Draft) error {
	if b.jots == nil {
		return b.onlyRead()
	}
	query, args := d.statement()
	_, err := b.jots.Exec(query, args...)
	return b.sentence(err)
}

// Drafts are all drafts of the book, by place and id.
func (b *Book) Drafts(ctx context.Context) ([]Draft, error) {
	rows, err := b.read.QueryContext(ctx, "SELECT place, id, at, who, texts FROM drafts ORDER BY place, id")
	if err != nil {
		return nil, b.sentence(err)
	}
	defer rows.Close()
	var out []Draft
	for rows.Next() {
		var d Draft
		if err := rows.Scan(&d.Place, &d.ID, &d.At, &d.Who, &d.Texts); err != nil {
			return nil, b.sentence(err)
		}
		out = append(out, d)
	}
	return out, b.sentence(rows.Err())
}
