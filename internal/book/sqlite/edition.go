package sqlite

import (
	"context"
	"crypto/sha256"
	"database/sql"
	"encoding/hex"
	"errors"

	"tenthpoint/internal/message"
)

const (
	selectEdition = "SELECT id, text FROM editions WHERE sha256 = ?"
	selectHashes  = "SELECT id, sha256 FROM editions"
	insertEdition = "INSERT INTO editions (sha256, id, text) VALUES (?, ?, ?)"
)

// KeepEdition keeps the text of an edition in the book, so that whoever
// disputes a ticket years later gets the very rates it was settled by. It is
// known by sha, the SHA-256 of the text in hexadecimal; keeping it again
// changes nothing. The same id with another text is another edition.
func (tx *Tx) KeepEdition(id, sha, text string) error {
	if want := hashOf(text); sha != want {
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

// Edition is the edition whose text has the hash.
func (b *Book) Edition(ctx context.Context, sha string) (id, text string, err error) {
	err = b.read.QueryRowContext(ctx, selectEdition, sha).Scan(&id, &text)
	if errors.Is(err, sql.ErrNoRows) {
		return "", "", message.Storage.Errorf("The book %s keeps no edition with the hash %s.", b.path, sha)
	}
	return id, text, b.sentence(err)
}

// EditionHashes are the hashes of the texts that the book keeps, by the id of
// the edition.
func (b *Book) EditionHashes(ctx context.Context) (map[string][]string, error) {
	rows, err := b.read.QueryContext(ctx, selectHashes)
	if err != nil {
		return nil, b.sentence(err)
	}
	defer rows.Close()
	hashes := map[string][]string{}
	for rows.Next() {
		var id, sha string
		if err := rows.Scan(&id, &sha); err != nil {
			return nil, b.sentence(err)
		}
		hashes[id] = append(hashes[id], sha)
	}
	return hashes, b.sentence(rows.Err())
}

func hashOf(text string) string {
	sum := sha256.Sum256([]byte(text))
	return hex.EncodeToString(sum[:])
}
