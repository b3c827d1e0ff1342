package sqlite

import (
	"context"
	"database/sql"
	"errors"

	"tenthpoint/internal/digest"
	"tenthpoint/internal/message"
)

const (
	selectEdition = "SELECT id, text FROM editions WHERE sha256 = ?"
	selectHashes  = "SELECT id, sha256 FROM editions"
	insertEdition = "INSERT INTO editions (sha256, id, text) VALUES (?, ?, ?)"
)

// KeepEdition keeps the text of an edition in the book, so that a dispute years later has the exact
// rates the ticket was settled by. Its key is sha, the SHA-256 of the text in hexadecimal; keeping
// it again changes nothing. The same id with another text is another edition.
func (tx *Tx) KeepEdition(id, sha, text string) error {
	if want := digest.Of(text); sha != want {
		return tx.fail(message.Storage.Errorf("The edition %s was not kept: its text has the hash %s, not %s.", id, want, sha))
	}
	var keptID, keptText string
	err := tx.queryRow(selectEdition, sha).Scan(&keptID, &keptText)
	switch {
	case errors.Is(err, sql.ErrNoRows):
		_, err = tx.exec(insertEdition, sha, id, text)
		return err
	case err != nil:
		return err
	case keptID != id:
		return tx.fail(message.Storage.Errorf("The edition %s was not kept: the same text is already in the book as %s.", id, keptID))
	}
	return nil
}

// An editionReader reads the texts of the editions that settled tickets.
type editionReader struct{ reader }

// Edition is the edition whose text has the hash.
func (r editionReader) Edition(ctx context.Context, sha string) (id, text string, err error) {
	from := r.during(ctx)
	err = from.queryRow(selectEdition, sha).Scan(&id, &text)
	if errors.Is(err, sql.ErrNoRows) {
		return "", "", message.Storage.Errorf("The book %s keeps no edition with the hash %s.", r.file.path, sha)
	}
	return id, text, from.fail(err)
}

// EditionHashes are the hashes of the texts that the book keeps, by the id of
// the edition.
func (r editionReader) EditionHashes(ctx context.Context) (map[string][]string, error) {
	hashes := map[string][]string{}
	err := each(r.during(ctx), func(rows *sql.Rows) error {
		var id, sha string
		err := rows.Scan(&id, &sha)
		hashes[id] = append(hashes[id], sha)
		return err
	}, selectHashes)
	return hashes, err
}

// VerifyEditions compares every edition's text with the hash it is known by.
func (r editionReader) VerifyEditions(ctx context.Context) (problems []message.Text, count int64, err error) {
	err = each(r.during(ctx), func(rows *sql.Rows) error {
		var sha, id, text string
		if err := rows.Scan(&sha, &id, &text); err != nil {
			return err
		}
		count++
		if now := digest.Of(text); now != sha {
			problems = append(problems, message.New(
				"The edition %q was changed after it was kept: it carries hash %q, its text now gives %.12s...", id, sha, now))
		}
		return nil
	}, "SELECT sha256, id, text FROM editions ORDER BY id, sha256")
	return problems, count, err
}
